#include "expression/decimal.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace stile::expression {
namespace {

using base::Rational;

constexpr int kSignificant = 20;
constexpr int kFewSignificant = 15;  ///< two such factors fit 127 bits
constexpr int kPrintedDecimals = 20;
constexpr base::Int128 kLongDenominator = static_cast<base::Int128>(1000000000000000000LL) * 100;

/// Rounded to so many significant digits; nullopt beyond the largest number there is.
std::optional<Rational> shortened(const Rational& value, int significant) {
  const double size = std::fabs(value.toDouble());
  if (size == 0) return value;
  const int exponent = static_cast<int>(std::floor(std::log10(size)));
  return Rational::parse(value.toText(std::clamp(significant - 1 - exponent, 0, 33)));
}

std::optional<Decimal> result(std::optional<Rational> value) {
  if (value && value->denominator() > kLongDenominator) value = shortened(*value, kSignificant);
  if (!value) return std::nullopt;
  return Decimal{*value, -1};
}

using Operation = std::optional<Rational> (*)(const Rational&, const Rational&);

/// Exactly, or on shortened operands where the exact numbers do not fit.
std::optional<Decimal> apply(Operation operation, const Decimal& a, const Decimal& b) {
  if (const auto exact = operation(a.value, b.value)) return result(exact);
  const auto left = shortened(a.value, kFewSignificant);
  const auto right = shortened(b.value, kFewSignificant);
  if (!left || !right) return std::nullopt;
  return result(operation(*left, *right));
}

}  // namespace

std::optional<Decimal> Decimal::parse(std::string_view text) {
  const auto value = Rational::parse(text.starts_with('+') ? text.substr(1) : text);
  if (!value) return std::nullopt;
  if (text.find_first_of("eE") != std::string_view::npos) return Decimal{*value, -1};
  const std::size_t point = text.find('.');
  return Decimal{*value, point == std::string_view::npos ? 0 : static_cast<int>(text.size() - point - 1)};
}

std::optional<Decimal> Decimal::ofDouble(double value) {
  if (!std::isfinite(value)) return std::nullopt;
  char text[40];
  std::snprintf(text, sizeof text, "%.17g", value);
  auto read = Rational::parse(text);
  // Smaller than the smallest exponent there is.
  if (!read && std::fabs(value) < 1e-25) read = Rational();
  return result(read);
}

std::optional<Decimal> Decimal::add(const Decimal& a, const Decimal& b) {
  return apply(&Rational::add, a, b);
}
std::optional<Decimal> Decimal::subtract(const Decimal& a, const Decimal& b) {
  return apply(&Rational::subtract, a, b);
}
std::optional<Decimal> Decimal::multiply(const Decimal& a, const Decimal& b) {
  return apply(&Rational::multiply, a, b);
}
std::optional<Decimal> Decimal::divide(const Decimal& a, const Decimal& b) {
  if (b.value == Rational()) return std::nullopt;
  return apply(&Rational::divide, a, b);
}

Decimal Decimal::rounded(int decimals) const {
  const auto value_ = Rational::parse(value.toText(std::clamp(decimals, 0, 28)));
  return Decimal{value_.value_or(value), -1};
}

std::optional<long long> Decimal::truncated() const {
  const base::Int128 whole = value.numerator() / value.denominator();
  if (whole > kLargestInteger || whole < kSmallestInteger) return std::nullopt;
  return static_cast<long long>(whole);
}

int Decimal::decimals() const {
  if (scale >= 0) return scale;
  const std::string text = toText();
  const std::size_t point = text.find('.');
  return point == std::string::npos ? 0 : static_cast<int>(text.size() - point - 1);
}

std::string Decimal::toText() const {
  std::string text = value.toText(std::max(scale, kPrintedDecimals));
  if (scale <= 0) return text;
  const std::size_t point = text.find('.');
  const std::size_t written = point == std::string::npos ? 0 : text.size() - point - 1;
  if (point == std::string::npos) text += '.';
  if (written < static_cast<std::size_t>(scale)) text.append(static_cast<std::size_t>(scale) - written, '0');
  return text;
}

}  // namespace stile::expression
