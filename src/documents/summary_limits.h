// Limits, checks and first measurements on the summary: one row a kind, each limit with the numbers
// of the findings that hold it.
#pragma once

#include <vector>

#include "documents/document.h"
#include "documents/finding_numbers.h"
#include "rules/rule_set.h"
#include "screening/screening.h"

namespace stile::documents {

/// Rows of what is held for certain, and those that only unanswered questions hold.
struct LimitRows {
  std::vector<Row> certain, open;
};
LimitRows limitRowsOf(const screening::Screening& screening, const rules::RuleSet& rules, const FindingNumbers& numbers);
LimitRows checkRowsOf(const screening::Screening& screening, const rules::RuleSet& rules, const FindingNumbers& numbers);

}  // namespace stile::documents
