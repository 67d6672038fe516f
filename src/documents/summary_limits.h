// Limits, checks and first measurements on the summary: one row a kind, each limit with the numbers
// of the findings that hold it.
#pragma once

#include <cstdint>

#include <vector>

#include "documents/document.h"
#include "documents/finding_numbers.h"
#include "rules/rule_set.h"
#include "screening/screening.h"

namespace stile::documents {

/// `cited`: of so many findings the numbers stand behind a limit.
/// Rows of what is held for certain, and those that only unanswered questions hold.
struct LimitRows {
  std::vector<Row> certain, open;
};
LimitRows limitRowsOf(const screening::Screening& screening, const rules::RuleSet& rules, const FindingNumbers& numbers,
                      std::size_t cited = SIZE_MAX);
LimitRows checkRowsOf(const screening::Screening& screening, const rules::RuleSet& rules, const FindingNumbers& numbers,
                      std::size_t cited = SIZE_MAX);

}  // namespace stile::documents
