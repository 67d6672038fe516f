#include "facts/measured_change.h"

namespace stile::facts {

std::optional<MeasuredChange> changeOf(const Definition& definition, const base::Rational& before, const base::Rational& now) {
  const auto by = base::Rational::subtract(now, before);
  if (!by) return std::nullopt;
  const base::Rational none(0);
  MeasuredChange change{*by, std::nullopt, Turn::None};
  const auto size = *by < none ? base::Rational::subtract(before, now) : by;
  if (!size) return std::nullopt;
  if (definition.smallestChange) change.isReal = *size >= *definition.smallestChange;
  if (*by == none) return change;
  if (definition.concern == Concern::Rising) change.turn = *by > none ? Turn::Worse : Turn::Better;
  if (definition.concern == Concern::Falling) change.turn = *by > none ? Turn::Better : Turn::Worse;
  return change;
}

}  // namespace stile::facts
