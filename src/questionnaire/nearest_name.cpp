#include "questionnaire/nearest_name.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace stile::questionnaire {
namespace {

constexpr std::size_t kLongestCompared = 80;
constexpr std::size_t kMostLetters = 3;  // more is no slip of the pen

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

std::string nearestName(std::string_view written, const std::vector<std::string>& names) {
  if (written.size() > kLongestCompared) return {};
  std::string nearest;
  std::size_t best = std::clamp<std::size_t>(written.size() / 3, 2, kMostLetters) + 1;
  for (const std::string& name : names) {
    if (name.size() > kLongestCompared) continue;
    const std::size_t apart = lettersApart(written, name);
    if (apart < best) {
      best = apart;
      nearest = name;
    }
  }
  return nearest;
}

std::string didYouMean(std::string_view written, const std::vector<std::string>& names,
                       std::string otherwise) {
  const std::string nearest = nearestName(written, names);
  return nearest.empty() ? std::move(otherwise) : "did you mean \"" + nearest + "\"?";
}

}  // namespace stile::questionnaire
