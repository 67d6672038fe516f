#include "documents/summary.h"

#include "documents/decision_drawing.h"
#include "documents/decision_words.h"
#include "documents/limit_words.h"
#include "documents/paper_head.h"
#include "documents/source_list.h"
#include "documents/summary_findings.h"
#include "documents/summary_plan.h"
#include "documents/summary_record.h"

namespace stile::documents {
namespace {

using screening::PlanState;
using screening::Screening;

constexpr std::size_t kQuestionsShown = 12;

Section decisionSection(const Screening& screening, const screening::Content& content,
                        const records::ClinicSettings& settings) {
  std::vector<Block> drawings, words;
  drawings.push_back({Figure{ladderOf(screening, settings.emergencyNumber),
                             ladderInText(screening, settings.emergencyNumber)}});
  drawings.push_back({Figure{actionStripOf(screening), {}}});
  words.push_back({Paragraph{decisionSentence(screening), "", Tone::Statement}});
  words.push_back({Paragraph{intervalSentence(screening), ""}});
  const std::string action = actionSentence(screening);
  words.push_back({Paragraph{action.substr(action.find(':') + 2), "Action today:"}});
  const auto& clearance = screening.floor.limits.clearance;
  const std::string aerobic = wordsOf(clearance.aerobic), strength = wordsOf(clearance.strength);
  words.push_back({Paragraph{
      aerobic == strength ? asSentence(aerobic) : "aerobic " + aerobic + ", strength " + strength + ".",
      "Clearance:"}});
  if (!screening.planBecause.empty()) words.push_back({Paragraph{screening.planBecause, "Plan:"}});
  if (!screening.openQuestions.empty())
    words.push_back({Paragraph{
        counted(screening.openQuestions.size(), "question") + " can still change something.", "Open:"}});
  if (hasUnreviewedRules(content))
    words.push_back({Paragraph{content.intendedUse.notReviewed, "", Tone::Small}});
  return {"", {{Columns{{std::move(drawings), std::move(words)}, {11, 10}}}}, false};
}

void addRows(Document& paper, const std::string& heading, std::vector<Row> rows,
             std::size_t shown = kRowsBeforeFold) {
  if (!rows.empty()) paper.sections.push_back({heading, foldedRows(std::move(rows), shown), false});
}

/// Rows that certain findings hold, and apart those that only missing answers hold.
void addLimits(Document& paper, const std::string& heading, std::vector<LimitRow> limits) {
  std::vector<Row> certain, open;
  for (LimitRow& limit : limits) (limit.isCertain ? certain : open).push_back(std::move(limit.row));
  if (certain.empty() && open.empty()) return;
  Section section{heading, {}, false};
  if (!certain.empty()) section.blocks.push_back({Rows{std::move(certain)}});
  if (!open.empty()) {
    const std::string title = "Held only while answers are missing: " + counted(open.size(), "line");
    // Few enough to read at once: shown. More would bury what is certain.
    if (open.size() <= kRowsBeforeFold) {
      section.blocks.push_back({Paragraph{"", title}});
      section.blocks.push_back({Rows{std::move(open)}});
    } else {
      const bool isScreenOnly = open.size() > kRowsPrinted;
      section.blocks.push_back({Fold{title, {{Rows{std::move(open)}}}, isScreenOnly}});
    }
  }
  paper.sections.push_back(std::move(section));
}

void addPlan(Document& paper, const Screening& screening, const screening::Content& content) {
  if (screening.planState == PlanState::Made && screening.plan) {
    paper.sections.push_back(
        {"Starter plan", planBlocks(*screening.plan, content.library, content.rules), false});
  } else if (screening.planState == PlanState::Held && screening.heldPlan) {
    Box box{BoxKind::Held, "Held: for the clinician only", {}};
    box.blocks.push_back(
        {Paragraph{"As if every clearance asked for were granted. It is worked out afresh when a reply "
                   "comes, and is never handed to the client.",
                   ""}});
    for (Block& block : planBlocks(*screening.heldPlan, content.library, content.rules))
      box.blocks.push_back(std::move(block));
    paper.sections.push_back({"Held plan", {{std::move(box)}}, false});
  }
}

}  // namespace

Document summaryOf(const Screening& screening, const screening::Content& content,
                   const records::ClinicSettings& settings, const records::PaperClient& client,
                   const base::Issues& askedBack) {
  Document paper = startPaper("Screening summary", Reader::Clinician, screening, content, settings, client);
  SourceList sources(content.rules);
  paper.sections.push_back(decisionSection(screening, content, settings));
  addRows(paper, "Who is to act", referralRows(screening, content.rules), 12);
  addRows(paper, "Values to confirm", askedBackRows(askedBack), 12);
  addRows(paper, "What each rung rests on", rungRows(screening));
  addRows(paper, "Findings and what they rest on", certainFindingRows(screening, sources));
  if (screening.reach.limits.action < limits::Action::Emergency) {  // then the rest can wait
    addRows(paper, "Open questions", questionRows(screening), kQuestionsShown);
    addRows(paper, "Not yet known", openFindingRows(screening, sources));
  }
  addLimits(paper, "Limits", limitRowsOf(screening, content.rules));
  addLimits(paper, "Checks and first measurements", checkRowsOf(screening, content.rules));
  // What an open finding would ask rests on an answer nobody gave.
  const auto& settle = screening.reach.limits.questions;
  if (!settle.empty())
    paper.sections.push_back(
        {"To settle with the client", {{List{{settle.begin(), settle.end()}, false, false}}}, false});
  addRows(paper, "Measured and told", recordRows(screening, content.reference));
  addRows(paper, "Clearances given", clearanceRows(screening, content.rules));
  addRows(paper, "Policies that decided", policyRows(screening));
  addPlan(paper, screening, content);
  if (!sources.empty()) {
    List list = sources.listed();
    const std::string title = counted(list.items.size(), "source");
    Section section{"Sources", {}, false};
    if (list.items.size() <= kRowsBeforeFold)
      section.blocks.push_back({std::move(list)});
    else
      section.blocks.push_back({Fold{title, {{std::move(list)}}, false}});
    paper.sections.push_back(std::move(section));
  }
  const std::string signer = settings.clinician.empty() ? "Clinician" : settings.clinician;
  paper.sections.push_back({"", {{Columns{{{{WriteLine{signer}}}, {{WriteLine{"Date"}}}}, {3, 2}}}}, false});
  return paper;
}

}  // namespace stile::documents
