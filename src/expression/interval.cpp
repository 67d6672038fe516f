#include "expression/interval.h"

#include <algorithm>
#include <array>

namespace stile::expression {
namespace {

using base::Rational;

/// A number or an infinity.
struct Extended {
  int infinity = 0;  ///< -1, 0, 1
  Rational value;

  int sign() const {
    return infinity != 0 ? infinity : value < Rational() ? -1 : value == Rational() ? 0 : 1;
  }
};

bool isLess(const Extended& a, const Extended& b) {
  if (a.infinity != b.infinity) return a.infinity < b.infinity;
  return a.infinity == 0 && a.value < b.value;
}

Interval unknownOf(const Interval& a, const Interval& b) {
  return {std::nullopt, std::nullopt, a.isNotApplicable || b.isNotApplicable};
}

/// nullopt when it does not fit. Zero times infinity is zero: every number between is finite.
std::optional<Extended> times(const Extended& a, const Extended& b) {
  if (a.sign() == 0 || b.sign() == 0) return Extended{};
  if (a.infinity != 0 || b.infinity != 0) return Extended{a.sign() * b.sign(), {}};
  const auto value = Rational::multiply(a.value, b.value);
  if (!value) return std::nullopt;
  return Extended{0, *value};
}

Extended lowOf(const Interval& a) {
  return a.low ? Extended{0, *a.low} : Extended{-1, {}};
}
Extended highOf(const Interval& a) {
  return a.high ? Extended{0, *a.high} : Extended{1, {}};
}

const Rational* pointer(const std::optional<Rational>& bound) {
  return bound ? &*bound : nullptr;
}

}  // namespace

Interval negated(const Interval& a) {
  Interval result{std::nullopt, std::nullopt, a.isNotApplicable};
  if (a.high) result.low = a.high->negated();
  if (a.low) result.high = a.low->negated();
  return result;
}

Interval sum(const Interval& a, const Interval& b) {
  Interval result = unknownOf(a, b);
  if (a.low && b.low) {
    result.low = Rational::add(*a.low, *b.low);
    if (!result.low) return unknownOf(a, b);
  }
  if (a.high && b.high) {
    result.high = Rational::add(*a.high, *b.high);
    if (!result.high) return unknownOf(a, b);
  }
  return result;
}

Interval product(const Interval& a, const Interval& b) {
  if (a.isUnknown() || b.isUnknown()) return unknownOf(a, b);
  const std::array<std::optional<Extended>, 4> corners{times(lowOf(a), lowOf(b)), times(lowOf(a), highOf(b)),
                                                       times(highOf(a), lowOf(b)),
                                                       times(highOf(a), highOf(b))};
  Interval result = unknownOf(a, b);
  if (std::any_of(corners.begin(), corners.end(), [](const auto& corner) { return !corner; })) return result;
  const auto [least, greatest] = std::minmax_element(
      corners.begin(), corners.end(), [](const auto& x, const auto& y) { return isLess(*x, *y); });
  if ((*least)->infinity == 0) result.low = (*least)->value;
  if ((*greatest)->infinity == 0) result.high = (*greatest)->value;
  return result;
}

Interval quotient(const Interval& a, const Interval& b) {
  const Extended low = lowOf(b);
  const Extended high = highOf(b);
  if (low.sign() <= 0 && high.sign() >= 0) return unknownOf(a, b);
  // 1/b runs from 1/high to 1/low; one over infinity is the limit 0.
  Interval inverse{Rational(), Rational(), b.isNotApplicable};
  if (b.high) inverse.low = Rational::divide(1, *b.high);
  if (b.low) inverse.high = Rational::divide(1, *b.low);
  if (!inverse.low || !inverse.high) return unknownOf(a, b);
  return product(a, inverse);
}

Truth compare(const Interval& a, Relation relation, const Interval& b) {
  if (a.isNotApplicable || b.isNotApplicable) return Truth::False;
  return compareBounds(pointer(a.low), pointer(a.high), relation, pointer(b.low), pointer(b.high));
}

}  // namespace stile::expression
