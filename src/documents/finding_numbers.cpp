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

std::vector<std::string> splitAtCommas(const std::string& text) {
  std::vector<std::string> parts;
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t end = std::min(text.find(", ", from), text.size());
    parts.push_back(text.substr(from, end - from));
    from = end + 2;
  }
  return parts;
}

}  // namespace

std::string FindingNumbers::inWords(const std::string& text, const rules::RuleSet& rules) const {
  std::string out;
  std::size_t at = 0;
  for (std::size_t open = text.find('('); open != std::string::npos; open = text.find('(', open + 1)) {
    const std::size_t close = text.find(')', open);
    if (close == std::string::npos) break;
    const auto ids = splitAtCommas(text.substr(open + 1, close - open - 1));
    if (std::any_of(ids.begin(), ids.end(), [&](const std::string& id) { return rules.find(id) == nullptr; })) continue;
    std::string cited = citeRules(ids);
    if (cited.empty())
      for (const std::string& id : ids) cited += (cited.empty() ? "(" : "; ") + rules.find(id)->title + (id == ids.back() ? ")" : "");
    out.append(text, at, open - at);
    out += cited;
    at = close + 1;
  }
  return out.append(text, at);
}

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
