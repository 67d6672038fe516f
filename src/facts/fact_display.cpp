#include "facts/fact_display.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace stile::facts {
namespace {

using base::Rational;
using expression::Truth;
using expression::Value;
using expression::ValueKind;

constexpr std::array<std::pair<std::string_view, std::string_view>, 24> kUnits{{
    {"1", ""},          {"mm[Hg]", "mmHg"},   {"Cel", "°C"},
    {"[degF]", "°F"},   {"deg", "°"},         {"[in_i]", "in"},
    {"[ft_i]", "ft"},   {"[mi_i]", "miles"},  {"[lb_av]", "lb"},
    {"[oz_av]", "oz"},  {"[stone_av]", "stone"}, {"[MET]", "METs"},
    {"kg/m2", "kg/m²"}, {"10*9/L", "×10⁹/L"}, {"mL/min/{1.73_m2}", "mL/min per 1.73 m²"},
    {"d", "days"},      {"wk", "weeks"},      {"mo", "months"},
    {"a", "years"},     {"h", "hours"},       {"min", "min"},
    {"[pH]", ""},       {"[iU]", "IU"},       {"U", "units"},
}};

/// Words for exactly one of something.
std::string_view singular(std::string_view words) {
  if (words == "days") return "day";
  if (words == "weeks") return "week";
  if (words == "months") return "month";
  if (words == "years") return "year";
  if (words == "hours") return "hour";
  if (words == "units") return "unit";
  if (words == "METs") return "MET";
  return words == "miles" ? "mile" : words;
}

/// `isWorkedOut`: by a formula; from a hundred on its decimals would say more than it knows.
std::string numberText(const Rational& number, bool isWorkedOut) {
  const Rational size = number < Rational() ? number.negated() : number;
  if (isWorkedOut && size >= Rational(100)) return number.toText(0);
  return number.toText(size < Rational(10) ? 2 : 1);
}

std::string withUnit(const std::string& number, const std::string& unit) {
  if (unit.empty()) return number;
  const bool isClose = unit == "%" || unit == "°";
  const std::string words = number == "1" ? std::string(singular(unit)) : unit;
  return number + (isClose ? "" : " ") + words;
}

std::string numberWords(const Definition& definition, const Value& value) {
  const std::string unit = unitWords(definition.valueType.unit.text);
  const bool isWorkedOut = definition.derived.kind == DerivedKind::Expression;
  const auto textOf = [isWorkedOut](const Rational& number) { return numberText(number, isWorkedOut); };
  if (value.low && value.high) {
    if (*value.low == *value.high) return withUnit(textOf(*value.low), unit);
    const std::string low = textOf(*value.low);
    const std::string high = textOf(*value.high);
    return low == high ? "about " + withUnit(low, unit) : "between " + low + " and " + withUnit(high, unit);
  }
  return value.low ? "at least " + withUnit(textOf(*value.low), unit)
                   : "at most " + withUnit(textOf(*value.high), unit);
}

std::string dateWords(const base::PartialDate& date) {
  if (date.isExact()) return date.first().toLongText();
  const bool isYear = date.first().month() != date.last().month();
  if (isYear) return std::to_string(date.first().year());
  const std::string day = date.first().toLongText();
  return day.substr(day.find(' ') + 1);
}

/// The words of each of several codes "a, b".
std::string codeWords(const Definition& definition, const std::string& codes) {
  std::string words;
  std::size_t start = 0;
  while (start <= codes.size()) {
    const std::size_t end = std::min(codes.find(", ", start), codes.size());
    const std::string code = codes.substr(start, end - start);
    const OptionDefinition* option = definition.option(code);
    words += (words.empty() ? "" : "; ") + (option ? option->display : code);
    start = end + 2;
  }
  return words;
}

/// What was written, when that was in another unit.
std::string otherUnit(const Definition& definition, const Fact& fact) {
  if (definition.type != FactType::Quantity || !fact.isGiven()) return {};
  const std::size_t space = fact.written.find(' ');
  if (space == std::string::npos) return {};
  const std::string unit = fact.written.substr(space + 1);
  if (unit == definition.valueType.unit.text || unitWords(unit) == unitWords(definition.valueType.unit.text))
    return {};
  return " (given as " + withUnit(fact.written.substr(0, space), unitWords(unit)) + ")";
}

}  // namespace

std::string unitWords(std::string_view ucum) {
  const auto found =
      std::find_if(kUnits.begin(), kUnits.end(), [&](const auto& unit) { return unit.first == ucum; });
  if (found != kUnits.end()) return std::string(found->second);
  std::string words;
  bool inBraces = false;
  for (const char letter : ucum) {
    if (letter == '{') inBraces = true;
    if (!inBraces) words += letter;
    if (letter == '}') inBraces = false;
  }
  if (words.starts_with('/')) return "per " + words.substr(1);
  return words;
}

std::string display(const Definition& definition, const Fact& fact) {
  const Value& value = fact.value;
  if (value.notApplicable) return toText(UnknownReason::NotApplicable);
  if (value.isUnknown())
    return toText(fact.reason == UnknownReason::None ? UnknownReason::NotAsked : fact.reason);
  switch (value.kind) {
    case ValueKind::Boolean:
      return value.truth == Truth::True ? "yes" : "no";
    case ValueKind::Number:
      return numberWords(definition, value) + otherUnit(definition, fact);
    case ValueKind::Text:
      return *value.text;
    case ValueKind::Code:
      return codeWords(definition, *value.text);
    case ValueKind::Date:
      return dateWords(*value.date);
  }
  return {};
}

}  // namespace stile::facts
