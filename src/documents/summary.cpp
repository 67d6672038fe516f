#include "documents/summary.h"

#include "documents/decision_drawing.h"
#include "documents/decision_words.h"
#include "documents/finding_numbers.h"
#include "documents/paper_head.h"
#include "documents/source_list.h"
#include "documents/summary_findings.h"
#include "documents/summary_limits.h"
#include "documents/summary_plan.h"
#include "documents/summary_record.h"

namespace stile::documents {
namespace {

using screening::PlanState;
using screening::Screening;

constexpr std::size_t kQuestionsShown = 12;
/// Findings in rows of their own; the rest stand compact in two columns.
constexpr std::size_t kFindingsInFull = 3;

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

/// Those with a stake in the action or a rung, at most twelve; the others change smaller things.
std::size_t questionsToShow(const Screening& screening) {
  std::size_t shown = 0;
  for (const screening::OpenQuestion& question : screening.openQuestions)
    if ((question.shutsRungs || question.couldBecome > limits::Action::None) && shown < kQuestionsShown) ++shown;
  return shown;
}

void addBlocks(Document& paper, const std::string& heading, std::vector<Block> blocks) {
  if (!blocks.empty()) paper.sections.push_back({heading, std::move(blocks), false});
}

void addRows(Document& paper, const std::string& heading, std::vector<Row> rows,
             std::size_t shown = kRowsInFull) {
  addBlocks(paper, heading, rowsThenCompact(std::move(rows), shown));
}

void addPlan(Document& paper, const Screening& screening, const screening::Content& content,
             const FindingNumbers& numbers) {
  if (screening.planState == PlanState::Made && screening.plan) {
    addBlocks(paper, "Starter plan", planBlocks(*screening.plan, content.library, content.rules, numbers));
  } else if (screening.planState == PlanState::Held && screening.heldPlan) {
    std::vector<Block> blocks{{Paragraph{
        "As if every clearance asked for were granted. It is worked out afresh when a reply comes, and "
        "is never handed to the client.",
        "Held: for the clinician only."}}};
    for (Block& block : planBlocks(*screening.heldPlan, content.library, content.rules, numbers))
      blocks.push_back(std::move(block));
    addBlocks(paper, "Held plan", std::move(blocks));
  }
}

/// Name by name in one paragraph, for a list too long to be told.
std::vector<Row> titlesOnly(const std::vector<Row>& rows) {
  std::string titles;
  for (const Row& row : rows) titles += (titles.empty() ? "" : "; ") + row.term;
  return {{"", {asSentence(titles)}, {}}};
}

class Behind {
 public:
  void add(const std::string& title, std::vector<Row> rows) {
    if (rows.empty()) return;
    Rows compact{std::move(rows), true};
    section_.blocks.push_back({Fold{title, {{std::move(compact)}}, false}});
  }
  void addTo(Document& paper) {
    if (!section_.blocks.empty()) paper.sections.push_back(std::move(section_));
  }

 private:
  Section section_{"Behind this summary", {}, false};
};

void addSignOff(Document& paper, const records::ClinicSettings& settings) {
  const std::string signer = settings.clinician.empty() ? "Clinician" : settings.clinician;
  std::vector<Block> blocks;
  blocks.push_back({WriteLine{"Set by the clinician in place of a line above (which, to what, why)", 2}});
  blocks.push_back({Columns{{{{WriteLine{signer}}}, {{WriteLine{"Date"}}}}, {3, 2}}});
  addBlocks(paper, "", std::move(blocks));
}

}  // namespace

Document summaryOf(const Screening& screening, const screening::Content& content,
                   const records::ClinicSettings& settings, const records::PaperClient& client,
                   const base::Issues& askedBack) {
  Document paper = startPaper("Screening summary", Reader::Clinician, screening, content, settings, client);
  const bool isEmergency = screening.reach.limits.action >= limits::Action::Emergency;  // then the rest can wait
  SourceList sources(content.rules);
  Behind behind;
  paper.sections.push_back(decisionSection(screening, content, settings));
  addRows(paper, "Who is to act", referralRows(screening, content.rules), 12);
  addRows(paper, "Values to confirm", askedBackRows(askedBack), 12);
  addRows(paper, "What each rung rests on", rungRows(screening));
  FindingNumbers numbers;
  addRows(paper, "Findings, by number, and what they rest on", certainFindingRows(screening, sources, numbers, false), kFindingsInFull);
  addRows(paper, "Medicines that change the prescription", certainFindingRows(screening, sources, numbers, true), kFindingsInFull);
  if (!isEmergency) {
    const std::size_t all = screening.openQuestions.size(), shown = std::min(all, questionsToShow(screening));
    addRows(paper, "Open questions", questionRows(screening, 0, shown));
    if (all > shown) {
      const std::string more = shown == 0 ? counted(all, "open question") : "and " + std::to_string(all - shown) + " more open questions";
      behind.add(more, questionRows(screening, shown, all));
    }
    std::vector<Row> open = openFindingRows(screening, sources);
    const std::string title = "Not yet known: " + counted(open.size(), "finding");
    behind.add(title, open.size() > kRowsBehind ? titlesOnly(open) : std::move(open));
  }
  LimitRows limits = limitRowsOf(screening, content.rules, numbers), checks = checkRowsOf(screening, content.rules, numbers);
  std::vector<Row> heldOpen = std::move(limits.open);
  for (Row& row : checks.open) heldOpen.push_back(std::move(row));
  addRows(paper, "Limits, with the numbers of the findings that hold them", std::move(limits.certain), 14);
  addRows(paper, "Checks and first measurements", std::move(checks.certain), 14);
  // What an open finding would ask rests on an answer nobody gave.
  if (const auto& settle = screening.reach.limits.questions; !settle.empty())
    addBlocks(paper, "To settle with the client", {{List{{settle.begin(), settle.end()}, false, false}}});
  std::vector<Block> told;
  if (auto tests = testRows(screening); !tests.empty()) told.push_back({Rows{std::move(tests)}});
  if (auto record = recordRows(screening, content.reference); !record.empty()) told.push_back({Rows{std::move(record)}});
  addBlocks(paper, "Measured and told", std::move(told));
  addRows(paper, "Clearances given", clearanceRows(screening, content.rules));
  if (auto policies = policyRows(screening); !policies.empty())
    addBlocks(paper, "Policies that decided", {{Rows{std::move(policies), true}}});
  addPlan(paper, screening, content, numbers);
  addSignOff(paper, settings);
  behind.add("Held only while answers are missing", std::move(heldOpen));
  if (const auto& plan = screening.plan ? screening.plan : screening.heldPlan)
    behind.add("Exercises left out, and why", leftOutRows(*plan, content.library));
  behind.add("Sources", sources.listed().rows);
  behind.addTo(paper);
  return paper;
}

}  // namespace stile::documents
