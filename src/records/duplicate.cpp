#include "records/duplicate.h"

#include <algorithm>

namespace stile::records {
namespace {

/// Letters to change, add or drop, counting no further than `most` + 1.
std::size_t distance(const std::string& a, const std::string& b, std::size_t most) {
  if (a.size() > b.size() + most || b.size() > a.size() + most) return most + 1;
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t above = row[j];
      row[j] = std::min({above + 1, row[j - 1] + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1)});
      diagonal = above;
    }
  }
  return row[b.size()];
}

}  // namespace

std::string couldBeSame(const Card& one, const Card& other) {
  constexpr std::size_t kLetters = 2;
  if (!one.record.empty() && one.record == other.record) return "the record number is the same";
  const bool isSameDay = !one.born.empty() && one.born == other.born;
  const bool isNearDay = !one.born.empty() && distance(one.born, other.born, 1) == 1;
  if (!isSameDay && !isNearDay) return {};
  const std::string given = searchable(one.given), family = searchable(one.family);
  const std::string name = given + " " + family, otherName = searchable(other.given) + " " + searchable(other.family);
  if (name == otherName) return isSameDay ? "name and date of birth are the same" : "the name is the same, and the dates of birth differ in one sign";
  if (!isSameDay) return {};
  if (family + " " + given == otherName) return "date of birth is the same, and given and family name are exchanged";
  if (distance(name, otherName, kLetters) <= kLetters) return "date of birth is the same, and the names differ little";
  return {};
}

}  // namespace stile::records
