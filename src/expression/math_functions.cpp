// Math (FHIRPath 2.0.0, 5.7).
#include <algorithm>
#include <array>
#include <cmath>

#include "expression/function_table.h"

namespace stile::expression {
namespace {

constexpr long long kLargestExactPower = 64;

/// The only item as a number; nullopt when the input is empty.
std::optional<Decimal> number(Call& call) {
  const Item* item = call.single();
  if (!item) return std::nullopt;
  const auto value = item->number();
  if (!value) call.fail(call.syntax.text + "() is asked of a number only");
  return value;
}

Collection wholeOr(const std::optional<base::Rational>& value) {
  const auto whole = value ? Decimal{*value, 0}.truncated() : std::nullopt;
  return whole ? Collection{Item::integer(*whole)} : Collection{};
}

Collection abs(Call& call) {
  const Item* item = call.single();
  if (!item) return {};
  if (item->isInteger()) {
    const long long value = item->integer() < 0 ? -item->integer() : item->integer();
    return value > kLargestInteger ? Collection{} : Collection{Item::integer(value)};
  }
  const auto size = [](const Decimal& value) {
    return value.value < base::Rational() ? Decimal{value.value.negated(), value.scale} : value;
  };
  if (auto quantity = item->number() ? std::nullopt : item->quantity()) {
    quantity->value = size(quantity->value);
    return {Item::quantity(*quantity)};
  }
  return decimalOr(size(*number(call)));
}

base::Int128 floorOf(const base::Rational& value) {
  const base::Int128 whole = value.numerator() / value.denominator();
  return value.numerator() < 0 && !value.isWhole() ? whole - 1 : whole;
}

Collection floor(Call& call) {
  const auto value = number(call);
  return value ? wholeOr(base::Rational::fraction(floorOf(value->value), 1)) : Collection{};
}
Collection ceiling(Call& call) {
  const auto value = number(call);
  return value ? wholeOr(base::Rational::fraction(-floorOf(value->value.negated()), 1)) : Collection{};
}
Collection truncate(Call& call) {
  const auto value = number(call);
  return value ? wholeOr(value->value) : Collection{};
}

Collection round(Call& call) {
  const auto value = number(call);
  const auto precision = call.count() > 0 ? call.integerArgument(0) : std::optional<long long>(0);
  if (!value || !precision) return {};
  if (*precision < 0) call.machine.fail(call.at(0), "round() takes a precision of 0 or more");
  return {Item::decimal(value->rounded(static_cast<int>(std::min(*precision, 28LL))))};
}

/// Results that are no number (a negative root) are empty.
Collection ofDouble(double value) {
  return decimalOr(Decimal::ofDouble(value));
}

Collection sqrt(Call& call) {
  const auto value = number(call);
  return value ? ofDouble(std::sqrt(value->value.toDouble())) : Collection{};
}
Collection exp(Call& call) {
  const auto value = number(call);
  return value ? ofDouble(std::exp(value->value.toDouble())) : Collection{};
}
Collection ln(Call& call) {
  const auto value = number(call);
  return value ? ofDouble(std::log(value->value.toDouble())) : Collection{};
}

std::optional<Decimal> numberArgument(Call& call) {
  const Collection value = call.argument(0);
  const Item* item = call.machine.single(value, call.at(0));
  if (!item) return std::nullopt;
  const auto result = item->number();
  if (!result) call.machine.fail(call.at(0), call.syntax.text + "() takes a number here");
  return result;
}

Collection log(Call& call) {
  const auto value = number(call);
  const auto base_ = numberArgument(call);
  if (!value || !base_) return {};
  return ofDouble(std::log(value->value.toDouble()) / std::log(base_->value.toDouble()));
}

/// By multiplication, for a whole exponent that is not negative and small.
std::optional<Decimal> wholePower(const Decimal& value, const Decimal& exponent) {
  const auto times = exponent.value.isWhole() ? exponent.truncated() : std::nullopt;
  if (!times || *times < 0 || *times > kLargestExactPower) return std::nullopt;
  std::optional<Decimal> result = Decimal{1, -1};
  for (long long i = 0; i < *times && result; ++i) result = Decimal::multiply(*result, value);
  return result;
}

Collection power(Call& call) {
  const Item* item = call.single();
  const auto value = number(call);
  const auto exponent = numberArgument(call);
  if (!value || !exponent) return {};
  if (const auto exact = wholePower(*value, *exponent)) {
    if (!item->isInteger()) return {Item::decimal(*exact)};
    const auto whole = exact->truncated();
    return whole ? Collection{Item::integer(*whole)} : Collection{};
  }
  const double result = std::pow(value->value.toDouble(), exponent->value.toDouble());
  const bool isWhole =
      item->isInteger() && exponent->value.isWhole() && !(exponent->value < base::Rational());
  if (!isWhole) return ofDouble(result);
  if (!(std::fabs(result) <= static_cast<double>(kLargestInteger))) return {};
  return {Item::integer(static_cast<long long>(result))};
}

constexpr std::array<FunctionEntry, 10> kMathFunctions{{{"abs", 0, 0, abs},
                                                    {"floor", 0, 0, floor},
                                                    {"ceiling", 0, 0, ceiling},
                                                    {"truncate", 0, 0, truncate},
                                                    {"round", 0, 1, round},
                                                    {"sqrt", 0, 0, sqrt},
                                                    {"exp", 0, 0, exp},
                                                    {"ln", 0, 0, ln},
                                                    {"log", 1, 1, log},
                                                    {"power", 1, 1, power}}};

}  // namespace

std::span<const FunctionEntry> mathFunctions() {
  return kMathFunctions;
}

}  // namespace stile::expression
