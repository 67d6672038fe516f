#include "questionnaire/canonical.h"

#include <algorithm>
#include <vector>

namespace stile::questionnaire {
namespace {

std::optional<std::vector<std::string>> parts(std::string_view version) {
  std::vector<std::string> list(1);
  for (const char c : version) {
    if (c == '.') {
      list.emplace_back();
    } else if (c >= '0' && c <= '9') {
      if (list.back() == "0") list.back().clear();  // 07 is 7
      list.back() += c;
    } else {
      return std::nullopt;
    }
  }
  const bool hasGap = std::any_of(list.begin(), list.end(), [](const auto& part) { return part.empty(); });
  if (hasGap) return std::nullopt;
  return list;
}

int comparePart(const std::string& a, const std::string& b) {
  if (a.size() != b.size()) return a.size() < b.size() ? -1 : 1;
  return a.compare(b);
}

}  // namespace

Canonical splitCanonical(std::string_view canonical) {
  canonical = canonical.substr(0, canonical.find('#'));
  const std::size_t bar = canonical.find('|');
  if (bar == std::string_view::npos) return {std::string(canonical), {}};
  return {std::string(canonical.substr(0, bar)), std::string(canonical.substr(bar + 1))};
}

std::optional<int> compareVersions(std::string_view a, std::string_view b) {
  if (a == b) return 0;
  auto left = parts(a);
  auto right = parts(b);
  if (!left || !right) return std::nullopt;
  const std::size_t length = std::max(left->size(), right->size());
  left->resize(length, "0");
  right->resize(length, "0");
  for (std::size_t i = 0; i < length; ++i) {
    if (const int order = comparePart((*left)[i], (*right)[i])) return order;
  }
  return 0;
}

}  // namespace stile::questionnaire
