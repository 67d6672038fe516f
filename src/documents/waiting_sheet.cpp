#include "documents/waiting_sheet.h"

#include <algorithm>

#include "documents/client_boxes.h"
#include "documents/decision_words.h"
#include "documents/not_for_now.h"
#include "documents/paper_head.h"

namespace stile::documents {
namespace {

using limits::Action;
using screening::PlanState;
using screening::Screening;

constexpr std::size_t kSentencesShown = 4;

std::string firstWords(const Screening& screening, const records::ClinicSettings& settings,
                       const HandoutTexts& texts) {
  const Action action = screening.reach.limits.action;
  if (action == Action::Emergency)
    return texts.phrase("callNow", {{"emergencyNumber", emergencyNumberOf(settings, texts)}});
  return texts.phrase(action == Action::SameDay ? "seenToday" : "doNotStart");
}

void addOnce(std::vector<std::string>& sentences, const std::string& sentence) {
  if (!sentence.empty() && std::find(sentences.begin(), sentences.end(), sentence) == sentences.end())
    sentences.push_back(sentence);
}

/// What the certain findings that keep the client from starting say, gravest first. What shuts only
/// harder work, or says how to work, is no reason to wait.
std::vector<std::string> reasons(const Screening& screening, const HandoutTexts& texts) {
  std::vector<const rules::Finding*> shutting;
  const auto add = [&](const rules::Finding& finding) {
    if (finding.standing == rules::Standing::Certain &&
        std::find(shutting.begin(), shutting.end(), &finding) == shutting.end())
      shutting.push_back(&finding);
  };
  for (const screening::RungView& view : screening.rungs)
    if (view.rung == limits::Rung::Light)
      for (const screening::RungReason& reason : view.reasons) add(screening.findings[reason.finding]);
  for (const rules::Finding& finding : screening.findings)
    if (finding.full.action >= Action::SameDay) add(finding);
  std::stable_sort(shutting.begin(), shutting.end(),
                   [](const auto* a, const auto* b) { return a->full.action > b->full.action; });
  std::vector<std::string> sentences;
  for (const rules::Finding* finding : shutting)
    if (sentences.size() < kSentencesShown) addOnce(sentences, finding->say.client);
  const bool isOpen = std::any_of(
      screening.rungs.begin(), screening.rungs.end(),
      [](const screening::RungView& view) { return view.state == screening::RungState::NotYetKnown; });
  if (isOpen) sentences.push_back(texts.phrase("answersMissing"));
  return sentences;
}

/// True for what binds daily life and not only exercise: precautions after an operation, certain or
/// with only its date or kind still unknown.
bool bindsDailyLife(const rules::Finding& finding, const facts::Dictionary& dictionary) {
  const auto isTold = [&](const rules::Reason& reason) {
    return !reason.isUnknown && !dictionary.at(reason.slot).isPolicy();
  };
  return finding.rule->surgical &&
         (finding.standing == rules::Standing::Certain ||
          std::any_of(finding.reasons.begin(), finding.reasons.end(), isTold));
}

/// Those precautions: what the findings say, what their limits forbid, and the signs to watch for.
std::vector<std::string> precautions(const ClientRequest& request) {
  const Screening& screening = request.screening;
  const rules::RuleSet& rules = request.content.rules;
  std::vector<std::string> sentences;
  limits::Limits limits;
  for (const rules::Finding& finding : screening.findings) {
    if (!bindsDailyLife(finding, screening.facts.dictionary())) continue;
    addOnce(sentences, finding.say.client);
    limits::tighten(limits, finding.floor);
  }
  for (const std::string& one : movementsToLeaveOut(screening, limits, rules.vocabulary, request.texts))
    addOnce(sentences, request.texts.phrase("leaveOut", {{"what", uncapitalized(one)}}));
  for (const std::string& id : limits.checks)
    if (const auto check = rules.checks.find(id); check != rules.checks.end()) addOnce(sentences, check->second.say.client);
  return sentences;
}

/// True when somebody told something besides who they are: a sheet for a client who answered nothing says so.
bool isAnythingTold(const Screening& screening) {
  const auto& dictionary = screening.facts.dictionary();
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const auto& definition = dictionary.at(slot);
    if (definition.topic != "person" && definition.group.empty() && !definition.isDerived() &&
        !definition.isPolicy() && screening.facts.at(slot).reason == facts::UnknownReason::None)
      return true;
  }
  return false;
}

}  // namespace

std::optional<Document> waitingSheetOf(const ClientRequest& request) {
  const Screening& screening = request.screening;
  const HandoutTexts& texts = request.texts;
  const records::ClinicSettings& settings = request.settings;
  if (screening.planState == PlanState::Made) return std::nullopt;
  Document paper = startClientPaper(texts.waitingTitle, request);
  const auto add = [&](const std::string& heading, std::vector<std::string> items) {
    if (!items.empty()) paper.sections.push_back({heading, {{List{std::move(items), false, false}}}, false});
  };
  const Action action = screening.reach.limits.action;
  Section first;
  first.blocks.push_back({Paragraph{firstWords(screening, settings, texts), "", Tone::Statement}});
  first.blocks.push_back({Paragraph{
      texts.phrase(isAnythingTold(screening) ? "toldUs" : "madeOn", {{"by", madeBy(settings, texts)}, {"date", texts.date(screening.date)}}), ""}});
  paper.sections.push_back(std::move(first));
  add(texts.heading("whyWaiting"), reasons(screening, texts));
  add(texts.heading("keepWhileWaiting"), precautions(request));
  if (action < Action::SameDay)
    add(texts.heading("mayGoOn"), HandoutTexts::chosen(texts.mayGoOn, screening, Choice::CertainOnly));
  const auto& calls = action == Action::Emergency              ? texts.whoCallsEmergency
                      : action == Action::SameDay              ? texts.whoCallsToday
                      : screening.planState == PlanState::Held ? texts.whoCallsHeld
                                                               : texts.whoCallsOpen;
  add(texts.heading("whoCalls"), HandoutTexts::chosen(calls, screening, Choice::CertainOnly));
  auto boxes = stopBoxes(screening, settings, texts, Choice::CertainOnly);
  // Whom to ask stands with the milder box: so neither it nor the foot is alone on the last page.
  Section last;
  last.staysWhole = true;
  last.blocks.push_back(std::move(boxes.back()));
  boxes.pop_back();
  paper.sections.push_back({"", std::move(boxes), false});
  for (Block& block : contactBlocks(settings, texts)) last.blocks.push_back(std::move(block));
  paper.sections.push_back(std::move(last));
  return paper;
}

}  // namespace stile::documents
