// Decimals of the full evaluator: exact where that is cheap, else rounded to 20 significant digits.
//
// FHIRPath asks for at least 28 digits with 8 of them behind the point and leaves the rest open.
// Results that do not fit are nullopt; the specification (6.6) makes them the empty collection.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/rational.h"

namespace stile::expression {

inline constexpr long long kLargestInteger = 2147483647;
inline constexpr long long kSmallestInteger = -2147483648LL;

/// A number with the decimals it was written with, so that 1.0 is printed as 1.0.
struct Decimal {
  base::Rational value;
  int scale = -1;  ///< decimals as written; -1: computed, as many as it takes

  /// Digits with an optional sign, point and exponent (JSON has those); nullopt when it does not fit.
  static std::optional<Decimal> parse(std::string_view text);
  /// The nearest decimal of 17 significant digits; nullopt for infinities and what does not fit.
  static std::optional<Decimal> ofDouble(double value);

  static std::optional<Decimal> add(const Decimal& a, const Decimal& b);
  static std::optional<Decimal> subtract(const Decimal& a, const Decimal& b);
  static std::optional<Decimal> multiply(const Decimal& a, const Decimal& b);
  static std::optional<Decimal> divide(const Decimal& a, const Decimal& b);  ///< nullopt also for b = 0

  /// Rounded to `decimals` (0 to 28) behind the point, halves away from zero.
  Decimal rounded(int decimals) const;
  /// Cut off towards zero; nullopt when it is no Integer.
  std::optional<long long> truncated() const;
  /// Decimals behind the point, trailing zeros counted where they were written.
  int decimals() const;
  std::string toText() const;
};

}  // namespace stile::expression
