#include "documents/summary_annex.h"

#include "documents/decision_words.h"
#include "documents/source_list.h"
#include "documents/summary.h"
#include "documents/summary_answers.h"
#include "documents/summary_findings.h"
#include "documents/summary_limits.h"
#include "documents/summary_plan.h"
#include "documents/summary_record.h"

namespace stile::documents {
namespace {

/// A brief that ends high on a page leaves the rest of it to the annex.
constexpr double kSharedUpTo = 0.3;

class Annex {
 public:
  void add(const std::string& title, std::vector<Row> rows) {
    if (rows.empty()) return;
    addBlocks(title, {{Rows{std::move(rows), true}}});
  }
  void addBlocks(const std::string& title, std::vector<Block> blocks) {
    if (!blocks.empty()) section_.blocks.push_back({Fold{title, std::move(blocks), false}});
  }
  Section take() { return std::move(section_); }

 private:
  Section section_{kAnnexHeading, {}, true, kSharedUpTo};
};

std::vector<Row> both(LimitRows a, LimitRows b, bool isCertain) {
  std::vector<Row> rows = std::move(isCertain ? a.certain : a.open);
  for (Row& row : isCertain ? b.certain : b.open) rows.push_back(std::move(row));
  return rows;
}

}  // namespace

Section annexOf(const screening::Screening& screening, const screening::Content& content, const FindingNumbers& numbers,
                const base::Issues& askedBack, const records::DecisionNotes& notes) {
  SourceList sources(content.rules);
  Annex annex;
  annex.add("Findings in full, with sources in brackets", fullFindingRows(screening, sources, numbers, notes));
  annex.add("Who is to act, in full", referralRows(screening, content.rules));
  annex.add("Limits and checks in full",
            both(limitRowsOf(screening, content.rules, numbers), checkRowsOf(screening, content.rules, numbers), true));
  const auto& plan = screening.plan ? screening.plan : screening.heldPlan;
  if (plan) annex.addBlocks(screening.plan ? "The plan, line by line" : "The held plan, line by line, for the clinician only",
                            planBlocks(*plan, content.library, content.rules, numbers));
  if (plan) annex.add("Exercises left out, and why", leftOutRows(*plan, content.library, content.rules, numbers));
  std::vector<Row> toSettle;
  for (const std::string& question : screening.reach.limits.questions) toSettle.push_back({"", {question}, {}});
  annex.add("To settle with the client", std::move(toSettle));
  annex.add("Every answer that was given", answerRows(screening, content));
  annex.add("Answers to confirm", askedBackRows(askedBack));
  annex.add("Every open question, not asked where nothing else is said", questionRows(screening));
  std::vector<Row> open = openFindingRows(screening, sources);
  const std::string title = "Not yet known: " + counted(openFindings(screening), "finding");
  annex.add(title, std::move(open));
  annex.add("Held only while answers are missing",
            both(limitRowsOf(screening, content.rules, numbers), checkRowsOf(screening, content.rules, numbers), false));
  annex.add("Policies that decided, and what they decide", policyRows(screening, true));
  annex.add("Sources", sources.listed().rows);
  return annex.take();
}

}  // namespace stile::documents
