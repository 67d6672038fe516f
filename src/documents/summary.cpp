#include "documents/summary.h"

#include <algorithm>

#include "documents/decision_drawing.h"
#include "documents/decision_words.h"
#include "documents/limit_words.h"
#include "documents/override_words.h"
#include "documents/paper_head.h"
#include "documents/summary_annex.h"
#include "documents/summary_brief.h"
#include "documents/summary_findings.h"
#include "documents/summary_limits.h"
#include "documents/summary_plan.h"
#include "documents/summary_record.h"

namespace stile::documents {
namespace {

using screening::PlanState;
using screening::Screening;

/// Of those who are to act, so many have room beside the ladder.
constexpr std::size_t kActingBeside = 2;

void addBlocks(Document& paper, const std::string& heading, std::vector<Block> blocks) {
  if (!blocks.empty()) paper.sections.push_back({heading, std::move(blocks), false});
}

void addRows(Document& paper, const std::string& heading, std::vector<Row> rows) {
  if (!rows.empty()) addBlocks(paper, heading, {{Rows{std::move(rows), true}}});
}

/// The first of many; the annex has them all.
std::vector<Row> firstOf(std::vector<Row> rows, std::size_t most) {
  if (rows.size() <= most) return rows;
  const std::size_t more = rows.size() - most;
  rows.resize(most);
  rows.push_back({"And " + std::to_string(more) + " more in the annex", {}, {}});
  return rows;
}

/// Referrals, and beside one to a mental health service the local crisis line.
std::vector<Row> actingRows(const Screening& screening, const rules::RuleSet& rules, const records::ClinicSettings& settings, const Brief& brief) {
  std::vector<Row> rows = referralRows(screening, rules, brief.referralSentences);
  if (screening.reach.limits.referrals.contains("mentalHealth") && !settings.crisisLine.empty())
    rows.push_back({"Crisis line", {asSentence(settings.crisisLine)}, {}});
  return rows;
}

/// The clearance that is certainly wanted, and the one that open answers may still ask for.
std::string clearanceWords(limits::Clearance floor, limits::Clearance reach) {
  if (floor == reach) return wordsOf(floor);
  if (reach == limits::Clearance::None) return std::string("not yet known; perhaps ") + wordsOf(floor);
  return std::string(wordsOf(reach)) + "; perhaps " + wordsOf(floor);
}

/// `acting`: who is to act, where that is told in few words.
Section decisionSection(const Screening& screening, const records::ClinicSettings& settings, const FindingNumbers& numbers, const std::vector<Row>& acting) {
  std::vector<Block> drawings, words;
  drawings.push_back({Figure{ladderOf(screening, settings.emergencyNumber),
                             ladderInText(screening, settings.emergencyNumber)}});
  drawings.push_back({Figure{actionStripOf(screening), {}}});
  words.push_back({Paragraph{decisionSentence(screening), "", Tone::Statement}});
  words.push_back({Paragraph{intervalSentence(screening), ""}});
  const std::string action = actionSentence(screening);
  words.push_back({Paragraph{action.substr(action.find(':') + 2), "Action today:"}});
  const auto &floor = screening.floor.limits.clearance, &reach = screening.reach.limits.clearance;
  const std::string aerobic = clearanceWords(floor.aerobic, reach.aerobic), strength = clearanceWords(floor.strength, reach.strength);
  words.push_back({Paragraph{
      aerobic == strength ? asSentence(aerobic) : "aerobic " + aerobic + ", strength " + strength + ".",
      "Clearance:"}});
  if (!screening.planBecause.empty()) words.push_back({Paragraph{screening.planBecause, "Plan:"}});
  if (!screening.openQuestions.empty())
    words.push_back({Paragraph{
        counted(screening.openQuestions.size(), "question") + " can still change something.", "Open:"}});
  std::vector<Row> beside = rungRows(screening, numbers);
  beside.insert(beside.end(), acting.begin(), acting.end());
  for (const Row& row : beside) {
    std::string text;
    for (const std::string& one : row.text) text += (text.empty() ? "" : " ") + one;
    words.push_back({Paragraph{text, row.term + ".", Tone::Small}});
  }
  return {"", {{Columns{{std::move(drawings), std::move(words)}, {9, 12}}}}, false};
}

/// Tests with their small plots, beside them what else was measured and told.
std::vector<Block> measuredBlocks(const Screening& screening, const screening::Content& content) {
  std::vector<Row> tests = testRows(screening), record = recordRows(screening, content.reference);
  for (Row& test : tests) {
    test.fine = {test.term + ": " + uncapitalized(test.text.front())};
    test.text.clear();
    test.term.clear();
  }
  if (tests.empty() && record.empty()) return {};
  if (tests.empty()) return {{Rows{std::move(record), true}}};
  return {{Columns{{{{Rows{std::move(tests)}}}, {{Rows{std::move(record), true}}}}, {1, 1}}}};
}

void addPlan(Document& paper, const Screening& screening, const screening::Content& content, const FindingNumbers& numbers, const Brief& brief) {
  if (screening.planState == PlanState::Made && screening.plan) {
    addRows(paper, "Starter plan and adaptations", briefPlanRows(*screening.plan, content.library, numbers, brief.adapted));
  } else if (screening.planState == PlanState::Held && screening.heldPlan) {
    std::vector<Block> blocks{{Paragraph{
        "As if every clearance asked for were granted. It is worked out afresh when a reply comes, and "
        "is never handed to the client.",
        "Held: for the clinician only."}}};
    blocks.push_back({Rows{briefPlanRows(*screening.heldPlan, content.library, numbers, brief.adapted), true}});
    addBlocks(paper, "Held plan", std::move(blocks));
  }
}

/// What an open finding would ask rests on an answer nobody gave and is left out.
std::vector<Row> toSettleRows(const Screening& screening, std::size_t most) {
  std::vector<Row> rows;
  for (const std::string& question : screening.reach.limits.questions) rows.push_back({"", {question}, {}});
  return firstOf(std::move(rows), most);
}

/// The rows of session gates, which come first among checks.
std::vector<Row> gatesAmong(const std::vector<Row>& rows) {
  const auto end = std::find_if(rows.begin(), rows.end(), [](const Row& row) { return !row.term.empty() && row.term != kGateTerm; });
  return {rows.begin(), end};
}

/// Gates, checks, and what is to be settled with the client.
std::vector<Row> checkBrief(const Screening& screening, const screening::Content& content, const FindingNumbers& numbers, const Brief& brief) {
  LimitRows checks = checkRowsOf(screening, content.rules, numbers, brief.cited);
  // No gate is cut, and one that stands until a question is answered stands here too.
  std::vector<Row> rows = gatesAmong(checks.open);
  const std::size_t most = std::max(brief.checks, gatesAmong(checks.certain).size());
  for (Row& row : firstOf(std::move(checks.certain), most)) rows.push_back(std::move(row));
  std::vector<Row> toSettle = toSettleRows(screening, brief.toSettle);
  if (!toSettle.empty()) toSettle.front().term = "To settle with the client";
  rows.insert(rows.end(), std::make_move_iterator(toSettle.begin()), std::make_move_iterator(toSettle.end()));
  return rows;
}

std::string titleOfRule(const screening::Content& content, const std::string& id) {
  const rules::Rule* rule = content.rules.find(id);
  return rule == nullptr ? id : rule->title;
}

/// What clinicians decided and signed; a line to sign on where nobody has yet.
std::vector<Block> signOffBlocks(const records::ClinicSettings& settings, const screening::Content& content,
                                 const records::DecisionNotes& notes) {
  std::vector<Row> rows;
  for (const records::OverrideNote& note : notes.overrides)
    rows.push_back({titleOfRule(content, note.rule), {overrideWords(note)}, {}});
  for (const records::AmendmentNote& note : notes.amendments)
    rows.push_back({"Added by " + note.by + " on " + note.date.toLongText(), {asSentence(note.text)}, {}});
  for (const records::SignOffNote& note : notes.signOffs)
    rows.push_back({"Signed off", {asSentence(note.by + ", " + note.date.toLongText())}, {}});
  if (notes.overrides.empty() && !notes.signOffs.empty()) rows.push_back({"No line was overridden", {}, {}});
  std::vector<Block> blocks;
  if (!rows.empty()) blocks.push_back({Rows{std::move(rows), true}});
  if (notes.signOffs.empty()) {
    const std::string signer = settings.clinician.empty() ? "Clinician" : settings.clinician;
    blocks.push_back({WriteLine{"Set by the clinician in place of a line above (which, to what, why)"}});
    blocks.push_back({Columns{{{{WriteLine{signer}}}, {{WriteLine{"Date"}}}}, {3, 2}}});
  }
  return blocks;
}

void addEnd(Document& paper, const records::ClinicSettings& settings, const screening::Content& content,
            const records::DecisionNotes& notes) {
  auto blocks = signOffBlocks(settings, content, notes);
  std::string caution = content.intendedUse.caution;
  if (hasUnreviewedRules(content)) caution += " " + content.intendedUse.notReviewed;
  blocks.push_back({Paragraph{caution + " Every finding, answer, source and open question stands in the annex.", "", Tone::Small}});
  addBlocks(paper, "Overrides and sign-off", std::move(blocks));
}

}  // namespace

Document summaryOf(const Screening& screening, const screening::Content& content,
                   const records::ClinicSettings& settings, const records::PaperClient& client,
                   const base::Issues& askedBack, const records::DecisionNotes& notes) {
  Document paper = startPaper("Screening summary", Reader::Clinician, screening, content, settings, client);
  const FindingNumbers numbers = numbersOf(screening);
  const Brief brief = Brief::of(screening);
  std::vector<Row> acting = actingRows(screening, content.rules, settings, brief), elsewhere;
  if (acting.size() > kActingBeside) acting.swap(elsewhere);
  paper.sections.push_back(decisionSection(screening, settings, numbers, acting));
  addRows(paper, "Who is to act", std::move(elsewhere));
  addRows(paper, "Values to confirm", firstOf(askedBackRows(askedBack), brief.askedBack));
  addRows(paper, "Findings by weight", briefFindingRows(screening, numbers, notes, brief, false));
  addRows(paper, "Medicines that change the prescription", briefFindingRows(screening, numbers, notes, brief, true));
  addRows(paper, "Limits, with the numbers of the findings that hold them",
          limitRowsOf(screening, content.rules, numbers, brief.cited).certain);
  addRows(paper, "Checks and first measurements", checkBrief(screening, content, numbers, brief));
  addBlocks(paper, testRows(screening).empty() ? "Measured and told" : "Measured (further right is better) and told", measuredBlocks(screening, content));
  addPlan(paper, screening, content, numbers, brief);
  // In an emergency the rest can wait.
  if (!isEmergency(screening)) addRows(paper, "Open questions", questionRows(screening, brief.questions));
  addRows(paper, "Clearances given", clearanceRows(screening, content.rules));
  addRows(paper, "Policies that decided", firstOf(policyRows(screening, false), brief.policies));
  addEnd(paper, settings, content, notes);
  paper.sections.push_back(annexOf(screening, content, numbers, askedBack, notes));
  return paper;
}

}  // namespace stile::documents
