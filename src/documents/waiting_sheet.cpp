#include "documents/waiting_sheet.h"

#include <algorithm>

#include "documents/client_boxes.h"
#include "documents/paper_head.h"

namespace stile::documents {
namespace {

using limits::Action;
using screening::PlanState;
using screening::Screening;

constexpr std::size_t kReasonsShown = 4;

std::string firstWords(const Screening& screening, const records::ClinicSettings& settings,
                       const HandoutTexts& texts) {
  const Action action = screening.reach.limits.action;
  if (action == Action::Emergency)
    return texts.phrase("callNow", {{"emergencyNumber", emergencyNumberOf(settings, texts)}});
  return texts.phrase(action == Action::SameDay ? "seenToday" : "doNotStart");
}

/// What the certain findings that shut a rung say to the client, gravest first.
std::vector<std::string> reasons(const Screening& screening, const HandoutTexts& texts) {
  std::vector<const rules::Finding*> shutting;
  for (const screening::RungView& view : screening.rungs)
    for (const screening::RungReason& reason : view.reasons) {
      const rules::Finding* finding = &screening.findings[reason.finding];
      if (finding->standing == rules::Standing::Certain &&
          std::find(shutting.begin(), shutting.end(), finding) == shutting.end())
        shutting.push_back(finding);
    }
  std::stable_sort(shutting.begin(), shutting.end(),
                   [](const auto* a, const auto* b) { return a->full.action > b->full.action; });
  std::vector<std::string> sentences;
  for (const rules::Finding* finding : shutting)
    if (sentences.size() < kReasonsShown && !finding->say.client.empty() &&
        std::find(sentences.begin(), sentences.end(), finding->say.client) == sentences.end())
      sentences.push_back(finding->say.client);
  const bool isOpen = std::any_of(
      screening.rungs.begin(), screening.rungs.end(),
      [](const screening::RungView& view) { return view.state == screening::RungState::NotYetKnown; });
  if (isOpen) sentences.push_back(texts.phrase("answersMissing"));
  return sentences;
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
      texts.phrase("toldUs", {{"by", madeBy(settings, texts)}, {"date", texts.date(screening.date)}}), ""}});
  paper.sections.push_back(std::move(first));
  add(texts.heading("whyWaiting"), reasons(screening, texts));
  if (action < Action::SameDay)
    add(texts.heading("mayGoOn"), HandoutTexts::chosen(texts.mayGoOn, screening, Choice::CertainOnly));
  const auto& calls = action == Action::Emergency              ? texts.whoCallsEmergency
                      : action == Action::SameDay              ? texts.whoCallsToday
                      : screening.planState == PlanState::Held ? texts.whoCallsHeld
                                                               : texts.whoCallsOpen;
  add(texts.heading("whoCalls"), HandoutTexts::chosen(calls, screening, Choice::CertainOnly));
  if (auto contact = contactBlocks(settings, texts); !contact.empty())
    paper.sections.push_back({"", std::move(contact), false});
  // Last, for they are the tallest: what is before them fills the page.
  paper.sections.push_back({"", stopBoxes(screening, settings, texts, Choice::CertainOnly), false});
  return paper;
}

}  // namespace stile::documents
