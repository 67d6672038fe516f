// Exact numbers. Decisions compare rationals, never doubles; rounding is for display only.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace stile::base {

__extension__ typedef __int128 Int128;

/// A fraction in lowest terms with a positive denominator.
///
/// Arithmetic that would leave 127 bits gives nullopt from the checked functions; callers treat
/// that as "unknown" or refuse the input.
class Rational {
 public:
  Rational() = default;
  Rational(std::int64_t whole) : numerator_(whole) {}
  /// `denominator` must not be 0.
  static std::optional<Rational> fraction(Int128 numerator, Int128 denominator);
  /// Reads a decimal such as `-12.50` or `1e3` (exponent within ±30, at most 34 digits).
  /// nullopt when it is not a number or does not fit.
  static std::optional<Rational> parse(std::string_view text);

  static std::optional<Rational> add(const Rational& a, const Rational& b);
  static std::optional<Rational> subtract(const Rational& a, const Rational& b);
  static std::optional<Rational> multiply(const Rational& a, const Rational& b);
  /// nullopt also when `b` is zero.
  static std::optional<Rational> divide(const Rational& a, const Rational& b);

  Rational negated() const;
  bool isWhole() const { return denominator_ == 1; }
  /// Greatest whole number not above the value.
  std::int64_t floor() const;
  double toDouble() const;
  /// Shortest exact decimal if there is one with at most `maxDecimals`, else rounded half up to
  /// `maxDecimals`, trailing zeros removed.
  std::string toText(int maxDecimals = 6) const;

  std::strong_ordering operator<=>(const Rational& other) const;
  bool operator==(const Rational& other) const = default;

  Int128 numerator() const { return numerator_; }
  Int128 denominator() const { return denominator_; }

 private:
  Int128 numerator_ = 0;
  Int128 denominator_ = 1;
};

}  // namespace stile::base
