#include "documents/handout.h"

#include <algorithm>

#include "documents/client_boxes.h"
#include "documents/decision_words.h"
#include "documents/exercise_blocks.h"
#include "documents/limit_words.h"
#include "documents/not_for_now.h"
#include "documents/paper_head.h"
#include "documents/week_grid.h"
#include "facts/fact_display.h"

namespace stile::documents {
namespace {

using limits::Limits;
using screening::Screening;

class HandoutMaker {
 public:
  HandoutMaker(const Screening& screening, const screening::Content& content,
               const records::ClinicSettings& settings, const HandoutTexts& texts)
      : screening_(screening),
        content_(content),
        settings_(settings),
        texts_(texts),
        plan_(*screening.plan),
        limits_(screening.floor.limits) {}

  void addTo(Document& paper) {
    auto rows = notForNowRows(screening_, content_.rules.vocabulary, texts_);
    std::vector<Row> rest;
    if (rows.size() > kNotForNowLines) {
      rest.assign(rows.begin() + static_cast<std::ptrdiff_t>(kNotForNowLines), rows.end());
      rows.resize(kNotForNowLines);
    }
    paper.sections.push_back(firstPage(std::move(rows), !rest.empty()));
    addList(paper, "gates", gateSentences());
    addList(paper, "checks", checkSentences());
    addList(paper, "keepTo", keepToSentences());
    for (Section& section : exerciseSections(plan_, screening_, content_.library, texts_))
      paper.sections.push_back(std::move(section));
    Section effort{texts_.heading("effort"), {}, false};
    if (!plan_.effortWords.empty()) effort.blocks.push_back({List{plan_.effortWords, false, false}});
    effort.blocks.push_back({Paragraph{texts_.phrase("tooHardGeneral"), texts_.phrase("tooHardLead")}});
    paper.sections.push_back(std::move(effort));
    // A sheet of its own, to hang up.
    paper.sections.push_back({texts_.heading("week"), {{weekGrid(plan_, limits_, texts_)}}, true});
    if (!plan_.weeks.empty()) paper.sections.push_back({texts_.heading("weeksAhead"), {{weeks()}}, false});
    addList(paper, "pain", HandoutTexts::chosen(texts_.pain, screening_, Choice::CertainOnly));
    addList(paper, "badDay", plan_.badDay);
    addList(paper, "missedWeek", plan_.missedWeek);
    addList(paper, "afterIllness", plan_.afterIllness);
    addList(paper, "notes", plan_.notes);
    addList(paper, "findings", findingSentences());
    if (auto contact = contactBlocks(settings_, texts_); !contact.empty())
      paper.sections.push_back({"", std::move(contact), false});
    if (!rest.empty())
      paper.sections.push_back({texts_.heading("notForNowRest"),
                                {{Box{BoxKind::NotForNow, "", {{Rows{std::move(rest)}}}}}},
                                false});
  }

 private:
  Section firstPage(std::vector<Row> rows, bool isMoreBehind) const {
    Section section;
    section.blocks.push_back({Paragraph{texts_.phrase("madeFor", {{"by", madeBy(settings_)},
                                                                  {"date", screening_.date.toLongText()},
                                                                  {"until", until().toLongText()}}) +
                                            " " + texts_.phrase("callAgain"),
                                        ""}});
    if (!rows.empty()) {
      const std::string more = isMoreBehind ? " " + texts_.phrase("restIsOnLastPage") : "";
      Box box{BoxKind::NotForNow, texts_.heading("notForNow") + more, {{Rows{std::move(rows)}}}};
      section.blocks.push_back({std::move(box)});
    }
    for (Block& block : stopBoxes(screening_, settings_, texts_, Choice::AllFindings))
      section.blocks.push_back(std::move(block));
    return section;
  }

  /// The last day of use: the length the texts give, or the end of a clearance that comes sooner.
  base::Date until() const {
    base::Date last = plus(screening_.date, texts_.useFor);
    for (const screening::Coverage& coverage : screening_.coverage)
      if (coverage.covers && coverage.until && *coverage.until < last) last = *coverage.until;
    return last;
  }

  void addList(Document& paper, const char* heading, std::vector<std::string> items) const {
    if (!items.empty())
      paper.sections.push_back({texts_.heading(heading), {{List{std::move(items), false, false}}}, false});
  }

  std::vector<std::string> gateSentences() const {
    std::vector<std::string> sentences;
    for (const auto& [measure, gate] : limits_.gates) {
      std::string text =
          texts_.phrase("gate", {{"measure", termWords(content_.rules.vocabulary.measures, measure, true)}});
      for (const std::string& condition : gate.client) text += " " + asSentence(condition);
      sentences.push_back(std::move(text));
    }
    return sentences;
  }

  std::vector<std::string> checkSentences() const {
    std::vector<std::string> sentences;
    for (const std::string& id : limits_.checks) {
      const auto check = content_.rules.checks.find(id);
      sentences.push_back(check == content_.rules.checks.end() ? id : check->second.say.client);
    }
    for (const auto& [key, value] : limits_.stopValues) {
      const std::string unit = facts::unitWords(key.unit);
      sentences.push_back(
          texts_.phrase(key.below ? "stopBelow" : "stopAbove",
                        {{"measure", termWords(content_.rules.vocabulary.measures, key.measure, true)},
                         {"value", value.toText(2) + (unit.empty() || unit == "%" ? "" : " ") + unit}}));
    }
    return sentences;
  }

  std::vector<std::string> keepToSentences() const {
    std::vector<std::string> sentences;
    if (limits_.loadKilograms)
      sentences.push_back(texts_.phrase("loadKilograms", {{"kilograms", limits_.loadKilograms->toText(1)}}));
    if (limits_.loadPercentOfMaximum)
      sentences.push_back(
          texts_.phrase("loadPercent", {{"percent", limits_.loadPercentOfMaximum->toText(0)}}));
    if (limits_.heartRatePerMinute)
      sentences.push_back(texts_.phrase("heartRate", {{"perMinute", limits_.heartRatePerMinute->toText(0)}}));
    if (limits_.effortGuide == limits::EffortGuide::EffortOnly)
      sentences.push_back(texts_.phrase("effortOnly"));
    for (const std::string& id : limits_.timing)
      sentences.push_back(
          texts_.phrase("timing", {{"timing", termWords(content_.rules.vocabulary.timing, id, true)}}));
    if (limits_.supervision == limits::Supervision::InPerson)
      sentences.push_back(texts_.phrase("supervisionInPerson"));
    if (limits_.supervision == limits::Supervision::TelephoneCheck)
      sentences.push_back(texts_.phrase("supervisionTelephone"));
    return sentences;
  }

  /// What the certain findings say to the client, and what is still wanted of those that are open.
  std::vector<std::string> findingSentences() const {
    std::vector<std::string> sentences;
    for (const rules::Finding& finding : screening_.findings) {
      if (finding.say.client.empty() || finding.floor == Limits{}) continue;
      if (std::find(sentences.begin(), sentences.end(), finding.say.client) == sentences.end())
        sentences.push_back(finding.say.client);
    }
    return sentences;
  }

  /// Weeks with the same words stand together.
  Table weeks() const {
    Table table{
        texts_.heading("weeksAhead"), {texts_.phrase("weekColumn"), texts_.phrase("planColumn")}, {}, false};
    for (std::size_t first = 0, next = 0; first < plan_.weeks.size(); first = next) {
      next = first + 1;
      while (next < plan_.weeks.size() && plan_.weeks[next].words == plan_.weeks[first].words) ++next;
      const std::string from = std::to_string(plan_.weeks[first].number),
                        to = std::to_string(plan_.weeks[next - 1].number);
      table.rows.push_back(
          {{from == to ? from : texts_.phrase("weeks", {{"from", from}, {"to", to}}), CellKind::Text},
           {plan_.weeks[first].words, CellKind::Text}});
    }
    return table;
  }

  const Screening& screening_;
  const screening::Content& content_;
  const records::ClinicSettings& settings_;
  const HandoutTexts& texts_;
  const plan::StarterPlan& plan_;
  const Limits& limits_;
};

}  // namespace

std::optional<Document> handoutOf(const Screening& screening, const screening::Content& content,
                                  const records::ClinicSettings& settings, const records::PaperClient& client,
                                  const HandoutTexts& texts) {
  if (screening.planState != screening::PlanState::Made || !screening.plan) return std::nullopt;
  Document paper = startPaper(texts.handoutTitle, Reader::Client, screening, content, settings, client);
  HandoutMaker(screening, content, settings, texts).addTo(paper);
  return paper;
}

}  // namespace stile::documents
