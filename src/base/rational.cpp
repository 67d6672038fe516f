#include "base/rational.h"

#include <algorithm>
#include <limits>

namespace stile::base {
namespace {

__extension__ typedef unsigned __int128 UInt128;

constexpr UInt128 kLargest = ~UInt128{0} >> 1;
constexpr std::size_t kMaxDigits = 34;
constexpr int kMaxExponent = 30;
constexpr int kMaxDecimals = 64;

UInt128 magnitude(Int128 value) {
  return value < 0 ? UInt128{0} - static_cast<UInt128>(value) : static_cast<UInt128>(value);
}

UInt128 greatestCommonDivisor(UInt128 a, UInt128 b) {
  while (b != 0) {
    const UInt128 rest = a % b;
    a = b;
    b = rest;
  }
  return a;
}

std::optional<Int128> product(Int128 a, Int128 b) {
  Int128 result = 0;
  if (__builtin_mul_overflow(a, b, &result)) return std::nullopt;
  return result;
}

std::string digits(UInt128 value) {
  std::string text;
  do {
    text += static_cast<char>('0' + static_cast<int>(value % 10));
    value /= 10;
  } while (value != 0);
  std::reverse(text.begin(), text.end());
  return text;
}

struct Decimal {
  std::string whole;
  std::string decimals;
};

/// `value` cut off after `count` decimals and rounded half away from zero.
Decimal roundedDecimal(UInt128 numerator, UInt128 denominator, int count) {
  Decimal decimal{digits(numerator / denominator), {}};
  UInt128 rest = numerator % denominator;
  for (int i = 0; i < count && rest != 0; ++i) {
    // Ten additions instead of one product: rest * 10 can leave 128 bits, rest + rest cannot.
    UInt128 next = 0;
    char digit = '0';
    for (int step = 0; step < 10; ++step) {
      next += rest;
      if (next >= denominator) {
        next -= denominator;
        ++digit;
      }
    }
    decimal.decimals += digit;
    rest = next;
  }
  if (rest < denominator - rest) return decimal;
  std::string all = "0" + decimal.whole + decimal.decimals;
  auto digit = all.rbegin();
  for (; *digit == '9'; ++digit) *digit = '0';
  ++*digit;
  const std::size_t split = all.size() - decimal.decimals.size();
  decimal.whole = all.substr(all[0] == '0' ? 1 : 0, split - (all[0] == '0' ? 1 : 0));
  decimal.decimals = all.substr(split);
  return decimal;
}

std::strong_ordering reversed(std::strong_ordering order) {
  if (std::is_lt(order)) return std::strong_ordering::greater;
  if (std::is_gt(order)) return std::strong_ordering::less;
  return order;
}

std::strong_ordering compareMagnitudes(UInt128 a, UInt128 b, UInt128 c, UInt128 d) {
  // a/b against c/d by their continued fractions: exact, and nothing can overflow.
  bool swapped = false;
  while (true) {
    const UInt128 left = a / b;
    const UInt128 right = c / d;
    const UInt128 leftRest = a % b;
    const UInt128 rightRest = c % d;
    auto order = left <=> right;
    if (std::is_eq(order) && (leftRest == 0 || rightRest == 0)) {
      order = leftRest <=> rightRest;
      return swapped ? reversed(order) : order;
    }
    if (std::is_neq(order)) return swapped ? reversed(order) : order;
    // left rest/b against rest/d is the reverse of b/rest against d/rest.
    a = b;
    b = leftRest;
    c = d;
    d = rightRest;
    swapped = !swapped;
  }
}

}  // namespace

std::optional<Rational> Rational::fraction(Int128 numerator, Int128 denominator) {
  if (denominator == 0) return std::nullopt;
  UInt128 top = magnitude(numerator);
  UInt128 bottom = magnitude(denominator);
  const UInt128 divisor = greatestCommonDivisor(top, bottom);
  top /= divisor;
  bottom /= divisor;
  if (top > kLargest || bottom > kLargest) return std::nullopt;
  const bool isNegative = (numerator < 0) != (denominator < 0);
  Rational result;
  result.numerator_ = isNegative ? -static_cast<Int128>(top) : static_cast<Int128>(top);
  result.denominator_ = static_cast<Int128>(bottom);
  return result;
}

std::optional<Rational> Rational::parse(std::string_view text) {
  std::size_t at = 0;
  const auto isDigit = [&] { return at < text.size() && text[at] >= '0' && text[at] <= '9'; };
  const bool isNegative = !text.empty() && text[0] == '-';
  if (isNegative) ++at;

  Int128 value = 0;
  std::size_t significant = 0;
  int exponent = 0;
  const auto readDigits = [&](int exponentStep) {
    const std::size_t start = at;
    for (; isDigit(); ++at) {
      if (value != 0 || text[at] != '0') ++significant;
      if (significant > kMaxDigits || at - start > 2 * kMaxDigits) return false;
      value = value * 10 + (text[at] - '0');
      exponent += exponentStep;
    }
    return at > start;
  };
  if (!readDigits(0)) return std::nullopt;
  if (at < text.size() && text[at] == '.') {
    ++at;
    if (!readDigits(-1)) return std::nullopt;
  }
  if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
    ++at;
    bool isMinus = false;
    if (at < text.size() && (text[at] == '+' || text[at] == '-')) isMinus = text[at++] == '-';
    if (!isDigit()) return std::nullopt;
    int written = 0;
    for (; isDigit(); ++at) {
      written = written * 10 + (text[at] - '0');
      if (written > kMaxExponent) return std::nullopt;
    }
    exponent += isMinus ? -written : written;
  }
  if (at != text.size()) return std::nullopt;

  if (value == 0) return Rational();
  for (; exponent < 0 && value % 10 == 0; ++exponent) value /= 10;
  Int128 denominator = 1;
  for (; exponent != 0; exponent += exponent < 0 ? 1 : -1) {
    Int128& scaled = exponent < 0 ? denominator : value;
    if (__builtin_mul_overflow(scaled, Int128{10}, &scaled)) return std::nullopt;
  }
  return fraction(isNegative ? -value : value, denominator);
}

std::optional<Rational> Rational::add(const Rational& a, const Rational& b) {
  const auto divisor =
      static_cast<Int128>(greatestCommonDivisor(magnitude(a.denominator_), magnitude(b.denominator_)));
  const auto left = product(a.numerator_, b.denominator_ / divisor);
  const auto right = product(b.numerator_, a.denominator_ / divisor);
  const auto bottom = product(a.denominator_, b.denominator_ / divisor);
  Int128 top = 0;
  if (!left || !right || !bottom || __builtin_add_overflow(*left, *right, &top)) return std::nullopt;
  return fraction(top, *bottom);
}

std::optional<Rational> Rational::subtract(const Rational& a, const Rational& b) {
  return add(a, b.negated());
}

std::optional<Rational> Rational::multiply(const Rational& a, const Rational& b) {
  // Reduced crosswise first, so that only results that truly do not fit are refused.
  const auto first = fraction(a.numerator_, b.denominator_);
  const auto second = fraction(b.numerator_, a.denominator_);
  const auto top = product(first->numerator_, second->numerator_);
  const auto bottom = product(first->denominator_, second->denominator_);
  if (!top || !bottom) return std::nullopt;
  return fraction(*top, *bottom);
}

std::optional<Rational> Rational::divide(const Rational& a, const Rational& b) {
  const auto inverse = fraction(b.denominator_, b.numerator_);
  if (!inverse) return std::nullopt;
  return multiply(a, *inverse);
}

Rational Rational::negated() const {
  Rational result = *this;
  result.numerator_ = -numerator_;
  return result;
}

std::int64_t Rational::floor() const {
  Int128 whole = numerator_ / denominator_;
  if (numerator_ < 0 && numerator_ % denominator_ != 0) --whole;
  using Limits = std::numeric_limits<std::int64_t>;
  return static_cast<std::int64_t>(std::clamp<Int128>(whole, Limits::min(), Limits::max()));
}

double Rational::toDouble() const {
  return static_cast<double>(numerator_) / static_cast<double>(denominator_);
}

std::string Rational::toText(int maxDecimals) const {
  Decimal decimal = roundedDecimal(magnitude(numerator_), magnitude(denominator_),
                                   std::clamp(maxDecimals, 0, kMaxDecimals));
  const std::size_t last = decimal.decimals.find_last_not_of('0');
  decimal.decimals.erase(last == std::string::npos ? 0 : last + 1);
  std::string text = decimal.whole;
  if (!decimal.decimals.empty()) text += "." + decimal.decimals;
  return numerator_ < 0 && text != "0" ? "-" + text : text;
}

std::strong_ordering Rational::operator<=>(const Rational& other) const {
  if ((numerator_ < 0) != (other.numerator_ < 0)) {
    return numerator_ < 0 ? std::strong_ordering::less : std::strong_ordering::greater;
  }
  const auto left = product(numerator_, other.denominator_);
  const auto right = product(other.numerator_, denominator_);
  if (left && right) {
    return *left < *right   ? std::strong_ordering::less
           : *left > *right ? std::strong_ordering::greater
                            : std::strong_ordering::equal;
  }
  const auto order = compareMagnitudes(magnitude(numerator_), magnitude(denominator_),
                                       magnitude(other.numerator_), magnitude(other.denominator_));
  return numerator_ < 0 ? reversed(order) : order;
}

}  // namespace stile::base
