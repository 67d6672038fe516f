// Numbers known between bounds, and what can be said of sums, products and comparisons of them.
// For src/expression only.
#pragma once

#include <optional>

#include "base/rational.h"
#include "expression/value.h"

namespace stile::expression {

/// All numbers from `low` to `high`, both included; a missing bound means "no limit known".
///
/// Arithmetic is never narrower than the truth. A result that does not fit is unknown, and so is
/// anything made of an interval of which nothing is known (even times zero): a comparison that is
/// decided has read something known of every fact in it.
struct Interval {
  std::optional<base::Rational> low, high;
  bool isNotApplicable = false;  ///< some fact in it certainly does not apply

  static Interval of(const base::Rational& value) { return {value, value}; }
  bool isUnknown() const { return !low && !high; }
  bool isSettled() const { return low && high && *low == *high; }
};

Interval negated(const Interval& a);
Interval sum(const Interval& a, const Interval& b);
Interval product(const Interval& a, const Interval& b);
/// Unknown when `b` contains zero.
Interval quotient(const Interval& a, const Interval& b);

enum class Relation { Equal, NotEqual, Less, LessOrEqual, Greater, GreaterOrEqual };

/// True or False only if it holds or fails for every pair of values of the two. A comparison with
/// something that does not apply is False.
Truth compare(const Interval& a, Relation relation, const Interval& b);

/// The same over anything ordered: `aLow` to `aHigh` against `bLow` to `bHigh`; null = no limit.
template <class T>
Truth compareBounds(const T* aLow, const T* aHigh, Relation relation, const T* bLow, const T* bHigh) {
  const auto isBelow = [](const T* high, const T* low) { return high && low && *high < *low; };
  const auto isAtMost = [](const T* high, const T* low) { return high && low && !(*low < *high); };
  const auto either = [](bool holds, bool fails) {
    return holds ? Truth::True : fails ? Truth::False : Truth::Unknown;
  };
  switch (relation) {
    case Relation::Less:
      return either(isBelow(aHigh, bLow), isAtMost(bHigh, aLow));
    case Relation::LessOrEqual:
      return either(isAtMost(aHigh, bLow), isBelow(bHigh, aLow));
    case Relation::Greater:
      return compareBounds(bLow, bHigh, Relation::Less, aLow, aHigh);
    case Relation::GreaterOrEqual:
      return compareBounds(bLow, bHigh, Relation::LessOrEqual, aLow, aHigh);
    case Relation::Equal:
      return either(isAtMost(aHigh, bLow) && isAtMost(bHigh, aLow),
                    isBelow(aHigh, bLow) || isBelow(bHigh, aLow));
    case Relation::NotEqual:
      return truthNot(compareBounds(aLow, aHigh, Relation::Equal, bLow, bHigh));
  }
  return Truth::Unknown;
}

}  // namespace stile::expression
