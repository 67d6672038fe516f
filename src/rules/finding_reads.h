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

/// The findings of `facts`, just as evaluateRules() makes them. What no change between `before` and `facts`
/// touches is taken over from `earlier`, which evaluateRules() or this made of `before` on the same day.
std::vector<Finding> evaluateChanged(const RuleSet& ruleSet, const FindingReads& reads,
                                     const facts::FactSet& facts, base::Date today,
                                     const facts::FactSet& before, std::vector<Finding> earlier);

}  // namespace stile::rules
