#include "expression/quantity.h"

#include <algorithm>
#include <array>

#include "base/unit.h"
#include "expression/grammar_words.h"

namespace stile::expression {
namespace {

using base::Rational;

struct CalendarWord {
  std::string_view one, many, ucum;
  const char* seconds;
};

// FHIRPath 2.0.0, 4.1.8: a calendar year counts 365 days and a month 30 where they are converted.
constexpr std::array<CalendarWord, 8> kWords{{{"year", "years", "a", "31536000"},
                                              {"month", "months", "mo", "2592000"},
                                              {"week", "weeks", "wk", "604800"},
                                              {"day", "days", "d", "86400"},
                                              {"hour", "hours", "h", "3600"},
                                              {"minute", "minutes", "min", "60"},
                                              {"second", "seconds", "s", "1"},
                                              {"millisecond", "milliseconds", "ms", "0.001"}}};

const CalendarWord* wordOf(std::string_view text) {
  for (const CalendarWord& word : kWords) {
    if (text == word.one || text == word.many) return &word;
  }
  return nullptr;
}

bool isYear(const Quantity& q) {
  return q.isCalendar && q.unit == "year";
}
bool isMonth(const Quantity& q) {
  return q.isCalendar && q.unit == "month";
}
/// Longer than a week: 4.1.8 says that such a calendar duration and a definite one are not comparable.
bool isAboveWeek(const Quantity& q) {
  return q.unit == "year" || q.unit == "month" || q.unit == "a" || q.unit == "mo";
}

std::string_view ucumOf(const Quantity& q) {
  return q.isCalendar ? wordOf(q.unit)->ucum : std::string_view(q.unit);
}

std::optional<Decimal> inSeconds(const Quantity& q) {
  return Decimal::multiply(q.value, *Decimal::parse(wordOf(q.unit)->seconds));
}

/// The value of `q` in the UCUM unit `to`, exactly where that is possible.
std::optional<Rational> valueIn(const Quantity& q, const base::Unit& to) {
  const auto from = base::parseUnit(ucumOf(q));
  if (!from) return std::nullopt;
  if (const auto exact = base::convert(q.value.value, *from, to)) return exact;
  if (!base::comparable(*from, to)) return std::nullopt;
  const auto ratio = Rational::divide(from->factor, to.factor);
  if (!ratio || from->offset != Rational() || to.offset != Rational()) return std::nullopt;
  const auto product = Decimal::multiply(q.value, Decimal{*ratio, -1});
  return product ? std::optional(product->value) : std::nullopt;
}

/// Both values in one unit, where they are comparable at all.
std::optional<std::pair<Rational, Rational>> inOneUnit(const Quantity& a, const Quantity& b) {
  if (a.isCalendar && b.isCalendar) {
    if ((isYear(a) || isMonth(a)) && (isYear(b) || isMonth(b))) {
      const auto left = Decimal::multiply(a.value, Decimal{isYear(a) ? 12 : 1, 0});
      const auto right = Decimal::multiply(b.value, Decimal{isYear(b) ? 12 : 1, 0});
      if (!left || !right) return std::nullopt;
      return std::pair{left->value, right->value};
    }
    const auto left = inSeconds(a);
    const auto right = inSeconds(b);
    if (!left || !right) return std::nullopt;
    return std::pair{left->value, right->value};
  }
  const std::string_view unit = ucumOf(a);
  if (unit == ucumOf(b)) return std::pair{a.value.value, b.value.value};
  const auto to = base::parseUnit(unit);
  const auto right = to ? valueIn(b, *to) : std::nullopt;
  if (!right) return std::nullopt;
  return std::pair{a.value.value, *right};
}

/// A duration of a resource beside a calendar duration is one itself.
Quantity likeOther(const Quantity& q, const Quantity& other) {
  if (!q.isEither || q.isCalendar || !other.isCalendar) return q;
  for (const CalendarWord& word : kWords) {
    if (q.unit == word.ucum) return {q.value, std::string(word.one), true, true};
  }
  return q;
}

bool isUndecidedDuration(const Quantity& a, const Quantity& b) {
  return a.isCalendar != b.isCalendar && (isAboveWeek(a) || isAboveWeek(b));
}

bool isSpace(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

/// UCUM (section 21): units with a zero of their own, such as Cel, take no part in arithmetic.
bool isSpecial(const Quantity& q) {
  const auto unit = base::parseUnit(ucumOf(q));
  return unit && unit->offset != Rational();
}

std::optional<Quantity> combined(const Quantity& a, const Quantity& b, bool isQuotient) {
  const auto value = isQuotient ? Decimal::divide(a.value, b.value) : Decimal::multiply(a.value, b.value);
  if (!value || isSpecial(a) || isSpecial(b)) return std::nullopt;
  if (b.unit == "1") return Quantity{*value, a.unit, a.isCalendar, false};
  if (a.unit == "1" && !isQuotient) return Quantity{*value, b.unit, b.isCalendar, false};
  if (isQuotient && ucumOf(a) == ucumOf(b)) return Quantity{*value};
  // A calendar year or month has no definite length to compute with.
  if ((a.isCalendar && isAboveWeek(a)) || (b.isCalendar && isAboveWeek(b))) return std::nullopt;
  const auto left = base::parseUnit(ucumOf(a));
  const auto right = base::parseUnit(ucumOf(b));
  if (!left || !right) return std::nullopt;
  const auto unit = isQuotient ? base::divide(*left, *right) : base::multiply(*left, *right);
  if (!unit) return std::nullopt;
  // Pure numbers: cm divided by m is 0.01.
  if (unit->isPureNumber() && unit->text != "1") {
    const auto scaled = Decimal::multiply(*value, Decimal{unit->factor, -1});
    return scaled ? std::optional(Quantity{*scaled}) : std::nullopt;
  }
  return Quantity{*value, unit->text, false, false};
}

}  // namespace

Quantity Quantity::ofUnit(Decimal value, std::string_view unit, bool isCalendarWord) {
  const CalendarWord* word = isCalendarWord ? wordOf(unit) : nullptr;
  if (!word) return {value, std::string(unit), false, false};
  return {value, std::string(word->one), true, false};
}

std::optional<Quantity> Quantity::parse(std::string_view text) {
  std::size_t at = 0;
  if (text.starts_with('+') || text.starts_with('-')) ++at;
  const std::size_t firstDigit = at;
  const auto digits = [&] {
    while (at < text.size() && text[at] >= '0' && text[at] <= '9') ++at;
  };
  digits();
  if (at == firstDigit) return std::nullopt;
  if (at + 1 < text.size() && text[at] == '.' && text[at + 1] >= '0' && text[at + 1] <= '9') {
    ++at;
    digits();
  }
  const auto value = Decimal::parse(text.substr(0, at));
  if (!value) return std::nullopt;
  std::string_view unit = text.substr(at);
  while (!unit.empty() && isSpace(unit.front())) unit.remove_prefix(1);
  if (unit.empty()) return at == text.size() ? std::optional(Quantity{*value}) : std::nullopt;
  if (unit.size() > 2 && unit.front() == '\'' && unit.back() == '\'') {
    const std::string_view code = unit.substr(1, unit.size() - 2);
    if (code.find('\'') != std::string_view::npos) return std::nullopt;
    return ofUnit(*value, code, false);
  }
  return wordOf(unit) ? std::optional(ofUnit(*value, unit, true)) : std::nullopt;
}

std::string Quantity::toText() const {
  if (!isCalendar) return value.toText() + " '" + unit + "'";
  const bool isOne = value.value == Rational(1) || value.value == Rational(-1);
  return value.toText() + " " + unit + (isOne ? "" : "s");
}

std::optional<bool> areEqual(const Quantity& first, const Quantity& second) {
  const Quantity a = likeOther(first, second);
  const Quantity b = likeOther(second, first);
  if (isUndecidedDuration(a, b)) return std::nullopt;
  const auto values = inOneUnit(a, b);
  if (values) return values->first == values->second;
  // Units of different dimension are not equal; of a unit that is not known nothing can be said.
  const auto left = base::parseUnit(ucumOf(a));
  const auto right = base::parseUnit(ucumOf(b));
  if (!left || !right) return std::nullopt;
  return false;
}

std::optional<std::partial_ordering> compare(const Quantity& first, const Quantity& second) {
  const Quantity a = likeOther(first, second);
  const Quantity b = likeOther(second, first);
  if (isUndecidedDuration(a, b)) return std::nullopt;
  const auto values = inOneUnit(a, b);
  if (!values) return std::nullopt;
  return values->first <=> values->second;
}

bool areEquivalent(const Quantity& a, const Quantity& b) {
  const Quantity left{a.value, std::string(ucumOf(a)), false, false};
  const Quantity right{b.value, std::string(ucumOf(b)), false, false};
  const auto values = inOneUnit(left, right);
  if (!values) return false;
  if (left.unit != right.unit) return values->first == values->second;
  const int decimals = std::min(a.value.decimals(), b.value.decimals());
  return a.value.rounded(decimals).value == b.value.rounded(decimals).value;
}

bool areComparable(const Quantity& first, const Quantity& second) {
  const Quantity a = likeOther(first, second);
  const Quantity b = likeOther(second, first);
  if (isUndecidedDuration(a, b)) return false;
  const auto left = base::parseUnit(ucumOf(a));
  const auto right = base::parseUnit(ucumOf(b));
  return left && right && base::comparable(*left, *right);
}

std::optional<Quantity> add(const Quantity& first, const Quantity& second, bool isMinus) {
  const Quantity a = likeOther(first, second);
  const Quantity b = likeOther(second, first);
  if (isSpecial(a) || isSpecial(b)) return std::nullopt;
  const auto apply = isMinus ? &Decimal::subtract : &Decimal::add;
  if (a.unit == b.unit && a.isCalendar == b.isCalendar) {
    const auto value = apply(a.value, b.value);
    return value ? std::optional(Quantity{*value, a.unit, a.isCalendar, false}) : std::nullopt;
  }
  if (isUndecidedDuration(a, b)) return std::nullopt;
  const auto left = base::parseUnit(ucumOf(a));
  const auto right = base::parseUnit(ucumOf(b));
  if (!left || !right || !base::comparable(*left, *right)) return std::nullopt;
  const bool isLeftFiner = left->factor <= right->factor;
  const Quantity& finer = isLeftFiner ? a : b;
  const auto one = convert(a, finer.unit);
  const auto two = convert(b, finer.unit);
  const auto value = one && two ? apply(one->value, two->value) : std::nullopt;
  return value ? std::optional(Quantity{*value, finer.unit, finer.isCalendar, false}) : std::nullopt;
}

std::optional<Quantity> multiply(const Quantity& a, const Quantity& b) {
  return combined(a, b, false);
}

std::optional<Quantity> divide(const Quantity& a, const Quantity& b) {
  return combined(a, b, true);
}

std::optional<Quantity> convert(const Quantity& value, std::string_view unit) {
  const CalendarWord* word = wordOf(unit);
  if (value.unit == unit) return value;
  Quantity target = Quantity::ofUnit(Decimal{1, 0}, unit, word != nullptr);
  if (isUndecidedDuration(value, target)) return std::nullopt;
  if (value.isCalendar && target.isCalendar) {
    const auto one = inOneUnit(value, target);
    if (!one) return std::nullopt;
    const auto ratio = Decimal::divide(Decimal{one->first, -1}, Decimal{one->second, -1});
    return ratio ? std::optional(Quantity{*ratio, target.unit, true, false}) : std::nullopt;
  }
  const auto to = base::parseUnit(ucumOf(target));
  const auto converted = to ? valueIn(value, *to) : std::nullopt;
  if (!converted) return std::nullopt;
  target.value = Decimal{*converted, -1};
  return target;
}

}  // namespace stile::expression
