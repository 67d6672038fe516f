// The starter plan in short, for the clinician: lines, why each is so, what was left out, the weeks.
#pragma once

#include "documents/document.h"
#include "documents/finding_numbers.h"
#include "plan/library.h"
#include "plan/starter_plan.h"
#include "rules/rule_set.h"

namespace stile::documents {

/// Every line with its dose and why it is so.
std::vector<Block> planBlocks(const plan::StarterPlan& plan, const plan::Library& library,
                              const rules::RuleSet& rules, const FindingNumbers& numbers);

/// The plan in a few rows: the start, then each section with its lines by dose, what was adapted, and
/// what is not covered.
std::vector<Row> briefPlanRows(const plan::StarterPlan& plan, const plan::Library& library, const FindingNumbers& numbers,
                               std::size_t adaptedByName);

/// Exercises and purposes left out, by reason.
std::vector<Row> leftOutRows(const plan::StarterPlan& plan, const plan::Library& library, const rules::RuleSet& rules,
                             const FindingNumbers& numbers);

}  // namespace stile::documents
