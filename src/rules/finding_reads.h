// On which facts the findings of each rule rest, words included, and findings that follow changing facts.
#pragma once

#include <vector>

#include "facts/fact_changes.h"
#include "rules/finding.h"

namespace stile::rules {

/// Worked out once for a rule set.
class FindingReads {
 public:
  FindingReads(const RuleSet& ruleSet, const facts::Dictionary& dictionary);
  /// By rule, in their order: whether something differs on which its findings, or that it has none, rest.
  std::vector<bool> touchedBy(const facts::FactChanges& changes) const;

 private:
  std::size_t rules_;                               ///< how many
  std::vector<std::vector<int>> bySlot_, byGroup_;  ///< rules
};

/// Makes `findings` those of `facts`, just as evaluateRules() does. Of rules not in `touched` they stay what they
/// are: evaluateRules() or this made them of the facts before, on the same day, and FindingReads::touchedBy() tells
/// which rules the changes since then touch.
void evaluateChanged(const RuleSet& ruleSet, const std::vector<bool>& touched, const facts::FactSet& facts,
                     base::Date today, std::vector<Finding>& findings);

}  // namespace stile::rules
