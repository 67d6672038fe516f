// The starter plan in short, for the clinician: lines, why each is so, what was left out, the weeks.
#pragma once

#include "documents/document.h"
#include "documents/finding_numbers.h"
#include "plan/library.h"
#include "plan/starter_plan.h"
#include "rules/rule_set.h"

namespace stile::documents {

std::vector<Block> planBlocks(const plan::StarterPlan& plan, const plan::Library& library,
                              const rules::RuleSet& rules, const FindingNumbers& numbers);

/// Exercises and purposes left out, by reason.
std::vector<Row> leftOutRows(const plan::StarterPlan& plan, const plan::Library& library);

}  // namespace stile::documents
