#include "base/near_names.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace stile::base {
namespace {

constexpr std::size_t kMostNames = 3;
constexpr std::size_t kLongestCompared = 60;  // a longer name is no slip of the pen
constexpr std::size_t kShortestBeginning = 5;

std::string lowerCase(std::string_view text) {
  std::string lower(text);
  for (char& letter : lower) {
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  }
  return lower;
}

/// How many letters to change, add or drop (Levenshtein).
std::size_t lettersApart(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, changed});
    }
  }
  return row[b.size()];
}

}  // namespace

std::vector<std::string> nearNames(std::string_view written, const std::vector<std::string_view>& names) {
  if (written.size() > kLongestCompared) return {};
  const std::string wanted = lowerCase(written);
  // Two letters changed places are two changes.
  const std::size_t limit = wanted.size() < 4 ? 1 : std::max<std::size_t>(2, wanted.size() / 4);
  std::vector<std::pair<std::size_t, std::string_view>> near;
  for (const std::string_view name : names) {
    if (name.size() > kLongestCompared) continue;
    const std::string lower = lowerCase(name);
    const std::size_t shorter = std::min(lower.size(), wanted.size());
    const bool isBeginning =
        shorter >= kShortestBeginning && lower.compare(0, shorter, wanted, 0, shorter) == 0;
    const std::size_t apart = lettersApart(wanted, lower);
    if (apart <= limit) {
      near.emplace_back(apart, name);
    } else if (isBeginning) {
      near.emplace_back(limit + apart, name);
    }
  }
  std::stable_sort(near.begin(), near.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  if (near.size() > kMostNames) near.resize(kMostNames);
  std::vector<std::string> result;
  for (const auto& [apart, name] : near) result.emplace_back(name);
  return result;
}

std::vector<std::string> nearNames(std::string_view written, const std::vector<std::string>& names) {
  return nearNames(written, std::vector<std::string_view>(names.begin(), names.end()));
}

std::string didYouMean(const std::vector<std::string>& near, std::string otherwise) {
  if (near.empty()) return otherwise;
  std::string text = "did you mean ";
  for (std::size_t i = 0; i < near.size(); ++i) {
    if (i > 0) text += i + 1 == near.size() ? " or " : ", ";
    text += "\"" + near[i] + "\"";
  }
  return text + "?";
}

std::string didYouMean(std::string_view written, const std::vector<std::string>& names,
                       std::string otherwise) {
  return didYouMean(nearNames(written, names), std::move(otherwise));
}

}  // namespace stile::base
