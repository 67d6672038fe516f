// lowBoundary(), highBoundary() and precision() (FHIRPath 3.0.0, trial use, utility functions).
#include <algorithm>
#include <array>

#include "expression/function_table.h"

namespace stile::expression {
namespace {

constexpr int kDefaultDecimals = 8;
constexpr int kMostDecimals = 28;

/// Half a step of the last written digit below or above, told with `decimals` digits.
std::optional<Decimal> boundaryOf(const Decimal& value, bool isHigh, int decimals) {
  const auto step = base::Rational::parse("5e-" + std::to_string(value.decimals() + 1));
  const auto moved = !step    ? std::nullopt
                     : isHigh ? base::Rational::add(value.value, *step)
                              : base::Rational::subtract(value.value, *step);
  if (!moved) return std::nullopt;
  // Told with fewer digits it must still lie outside: down for the low one, up for the high one.
  const auto scale = base::Rational::parse("1e" + std::to_string(decimals));
  const auto scaled = scale ? base::Rational::multiply(*moved, *scale) : std::nullopt;
  if (!scaled) return std::nullopt;
  const base::Rational towards = isHigh ? scaled->negated() : *scaled;
  base::Int128 whole = towards.numerator() / towards.denominator();
  if (towards.numerator() < 0 && !towards.isWhole()) --whole;
  const auto rounded = base::Rational::fraction(isHigh ? -whole : whole, 1);
  const auto result = rounded ? base::Rational::divide(*rounded, *scale) : std::nullopt;
  return result ? std::optional(Decimal{*result, decimals}) : std::nullopt;
}

Collection boundary(Call& call, bool isHigh) {
  const Item* item = call.single();
  const auto digits = call.count() > 0 ? call.integerArgument(0) : std::nullopt;
  if (!item) return {};
  if (item->isTemporal()) {
    const auto limited = digits ? std::optional(static_cast<int>(std::min(*digits, 99LL))) : std::nullopt;
    const auto value = expression::boundary(item->temporal(), isHigh, limited);
    return value ? Collection{Item::temporal(*value)} : Collection{};
  }
  const long long decimals = digits.value_or(kDefaultDecimals);
  if (decimals < 0 || decimals > kMostDecimals) return {};
  if (const auto number = item->number()) {
    const auto value = boundaryOf(*number, isHigh, static_cast<int>(decimals));
    return value ? Collection{Item::decimal(*value)} : Collection{};
  }
  if (auto quantity = item->quantity()) {
    const auto value = boundaryOf(quantity->value, isHigh, static_cast<int>(decimals));
    if (!value) return {};
    quantity->value = *value;
    return {Item::quantity(*quantity)};
  }
  call.fail(call.syntax.text + "() is asked of a number, a quantity, a date or a time only");
}

Collection lowBoundary(Call& call) {
  return boundary(call, false);
}
Collection highBoundary(Call& call) {
  return boundary(call, true);
}

Collection precision(Call& call) {
  const Item* item = call.single();
  if (!item) return {};
  if (item->isTemporal()) return {Item::integer(digitsOf(item->temporal()))};
  if (const auto number = item->number()) return {Item::integer(number->decimals())};
  if (const auto quantity = item->quantity()) return {Item::integer(quantity->value.decimals())};
  call.fail("precision() is asked of a number, a quantity, a date or a time only");
}

constexpr std::array<FunctionEntry, 3> kBoundaryFunctions{{{"lowBoundary", 0, 1, lowBoundary},
                                                   {"highBoundary", 0, 1, highBoundary},
                                                   {"precision", 0, 0, precision}}};

}  // namespace

std::span<const FunctionEntry> boundaryFunctions() {
  return kBoundaryFunctions;
}

}  // namespace stile::expression
