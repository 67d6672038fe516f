#include "documents/finding_numbers.h"

#include <algorithm>
#include <set>

namespace stile::documents {
namespace {

std::string bracketed(const std::set<int>& numbers) {
  std::string text;
  for (const int number : numbers) text += (text.empty() ? "(" : ", ") + std::to_string(number);
  return text.empty() ? "" : text + ")";
}

}  // namespace

std::string FindingNumbers::cite(const std::vector<const rules::Finding*>& findings) const {
  if (findings.empty()) return "(physician's reply)";
  std::set<int> numbers;
  for (const rules::Finding* finding : findings)
    if (const auto at = numbers_.find(finding); at != numbers_.end()) numbers.insert(at->second);
  return bracketed(numbers);
}

std::string FindingNumbers::citeRules(const std::vector<std::string>& ruleIds) const {
  std::set<int> numbers;
  for (const auto& [finding, number] : numbers_)
    if (std::find(ruleIds.begin(), ruleIds.end(), finding->rule->id) != ruleIds.end()) numbers.insert(number);
  return bracketed(numbers);
}

}  // namespace stile::documents
