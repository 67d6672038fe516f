#include "documents/reply_slip.h"

#include "documents/decision_words.h"
#include "documents/limit_words.h"
#include "documents/paper_head.h"

namespace stile::documents {
namespace {

/// Words of the options of a question of the reply form.
std::vector<std::string> optionsOf(const LetterRequest& request, const char* linkId) {
  std::vector<std::string> words;
  if (const auto* form = request.content.forms.byName("clearance-reply"))
    if (const auto* item = form->find(linkId))
      for (const auto& option : item->options) words.push_back(option.display);
  return words;
}

Block cut(const LetterRequest& request) {
  const auto& phrases = request.texts.phrases;
  // Two identifiers and the record number.
  std::string who = isolated(request.client.name);
  if (!request.client.born.empty()) who += (who.empty() ? "" : ", ") + ("born " + bornWords(request.client.born));
  if (!request.client.record.empty()) who += (who.empty() ? "" : ", ") + ("record " + request.client.record);
  std::string words = phrases.say("slip", {{"client", who.empty() ? "________________" : who}, {"clinic", request.settings.name}});
  if (!request.settings.replyRoute.empty()) words += " " + phrases.say("slipRoute", {{"route", request.settings.replyRoute}});
  return {CutLine{request.texts.headings.say("reply"), words}};
}

void sign(Section& section, const PhraseBook& phrases) {
  section.blocks.push_back(
      {Columns{{{{WriteLine{phrases.say("signature")}}}, {{WriteLine{phrases.say("signatureDate")}}}}, {5, 2}}});
}

}  // namespace

Section replySlipOf(const LetterRequest& request, const std::vector<std::size_t>& toClear) {
  const auto& phrases = request.texts.phrases;
  Section section;
  section.blocks.push_back(cut(request));
  Table table;
  table.isGrid = true;
  const auto* form = request.content.forms.byName("clearance-reply");
  const auto* answer = form == nullptr ? nullptr : form->find("replyAnswer");
  table.caption = answer == nullptr ? "" : answer->text;
  table.columns.push_back(phrases.say("answerColumn"));
  for (const std::string& option : optionsOf(request, "replyAnswer")) table.columns.push_back(option);
  for (const std::size_t index : toClear) {
    const rules::Finding& finding = request.screening.findings[index];
    std::vector<Cell> cells{{titleOf(finding) + " (" + finding.rule->id + ")", CellKind::Text}};
    while (cells.size() < table.columns.size()) cells.push_back({"", CellKind::TickBox});
    table.rows.push_back(std::move(cells));
  }
  section.blocks.push_back({std::move(table)});
  section.blocks.push_back({Choices{phrases.say("covers"), optionsOf(request, "replyBay")}});
  section.blocks.push_back({Choices{phrases.say("upTo"), optionsOf(request, "replyIntensity")}});
  section.blocks.push_back(
      {Columns{{{{WriteLine{phrases.say("from")}}}, {{WriteLine{phrases.say("until")}}}}, {2, 3}}});
  section.blocks.push_back({Columns{{{{WriteLine{phrases.say("heartRate")}}},
                                     {{WriteLine{phrases.say("systolic")}}},
                                     {{WriteLine{phrases.say("load")}}}},
                                    {1, 1, 1}}});
  section.blocks.push_back({WriteLine{phrases.say("other"), 2}});
  sign(section, phrases);
  return section;
}

Section opinionSlipOf(const LetterRequest& request) {
  const auto& phrases = request.texts.phrases;
  Section section;
  section.blocks.push_back(cut(request));
  section.blocks.push_back({WriteLine{phrases.say("result"), 3}});
  section.blocks.push_back({WriteLine{phrases.say("limitsAnswer"), 2}});
  section.blocks.push_back({Choices{"", {phrases.say("cannotComment")}}});
  sign(section, phrases);
  return section;
}

}  // namespace stile::documents
