// Findings by number on one summary, so that a limit can name what holds it in two characters.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "rules/finding.h"
#include "rules/rule_set.h"

namespace stile::documents {

class FindingNumbers {
 public:
  /// Gives the next number to the finding.
  void add(const rules::Finding& finding) { numbers_.emplace(&finding, static_cast<int>(numbers_.size()) + 1); }
  /// 0 for a finding without a number.
  int of(const rules::Finding& finding) const {
    const auto at = numbers_.find(&finding);
    return at == numbers_.end() ? 0 : at->second;
  }
  /// "(1, 4)" for those that have a number; "(physician's reply)" for none at all; "" when only
  /// findings without a number hold it.
  /// `most`: so many of them, the gravest, and the count of the others: "(1, 4, +3)".
  std::string cite(const std::vector<const rules::Finding*>& findings, std::size_t most = SIZE_MAX) const;
  /// The same for rules by id: every finding of the rule.
  std::string citeRules(const std::vector<std::string>& ruleIds) const;
  /// The words with "(rule-id, rule-id)" turned into what a reader knows: the numbers of the findings, and the
  /// titles of rules that have none here.
  std::string inWords(const std::string& text, const rules::RuleSet& rules) const;

 private:
  std::map<const rules::Finding*, int> numbers_;
};

}  // namespace stile::documents
