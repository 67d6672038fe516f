#include "documents/finding_numbers.h"

#include <algorithm>
#include <set>

namespace stile::documents {
namespace {

/// Numbers go by weight: the first are the gravest.
std::string bracketed(const std::set<int>& numbers, std::size_t most) {
  std::string text;
  std::size_t shown = 0;
  for (const int number : numbers)
    if (shown++ < most) text += (text.empty() ? "(" : ", ") + std::to_string(number);
  if (numbers.size() > most) text += ", +" + std::to_string(numbers.size() - most);
  return text.empty() ? "" : text + ")";
}

}  // namespace

std::string FindingNumbers::cite(const std::vector<const rules::Finding*>& findings, std::size_t most) const {
  if (findings.empty()) return "(physician's reply)";
  std::set<int> numbers;
  for (const rules::Finding* finding : findings)
    if (const auto at = numbers_.find(finding); at != numbers_.end()) numbers.insert(at->second);
  return bracketed(numbers, most);
}

std::string FindingNumbers::citeRules(const std::vector<std::string>& ruleIds) const {
  std::set<int> numbers;
  for (const auto& [finding, number] : numbers_)
    if (std::find(ruleIds.begin(), ruleIds.end(), finding->rule->id) != ruleIds.end()) numbers.insert(number);
  return bracketed(numbers, SIZE_MAX);
}

}  // namespace stile::documents
