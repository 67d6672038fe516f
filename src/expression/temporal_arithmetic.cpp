// Adding durations to dates and times (FHIRPath 2.0.0, 6.7 "Date/Time Arithmetic").
#include <algorithm>
#include <array>

#include "base/date.h"
#include "expression/quantity.h"

namespace stile::expression {
namespace {

constexpr long long kNanosecondsPerSecond = 1000000000LL;
constexpr long long kSecondsPerDay = 86400;
constexpr long long kLargestAmount = 1000000000000LL;

enum class CalendarStep { Year, Month, Week, Day, Hour, Minute, Second, Millisecond };

struct StepWord {
  std::string_view word, ucum;
  CalendarStep step;
  long long seconds;
};

// Only a calendar year or month may be added: a definite one (`a`, `mo`) has a length that no
// calendar has. A duration read from a resource may be taken as either.
constexpr std::array<StepWord, 8> kSteps{{{"year", "a", CalendarStep::Year, 31536000},
                                          {"month", "mo", CalendarStep::Month, 2592000},
                                          {"week", "wk", CalendarStep::Week, 604800},
                                          {"day", "d", CalendarStep::Day, 86400},
                                          {"hour", "h", CalendarStep::Hour, 3600},
                                          {"minute", "min", CalendarStep::Minute, 60},
                                          {"second", "s", CalendarStep::Second, 1},
                                          {"millisecond", "ms", CalendarStep::Millisecond, 0}}};

const StepWord* stepOf(const Quantity& quantity) {
  for (const StepWord& step : kSteps) {
    if (quantity.unit != (quantity.isCalendar ? step.word : step.ucum)) continue;
    const bool isDefinite = !quantity.isCalendar && !quantity.isEither;
    return isDefinite && step.step <= CalendarStep::Month ? nullptr : &step;
  }
  return nullptr;
}

/// The whole part of value * scale, within bounds that keep all sums small.
std::optional<long long> whole(const Decimal& value, long long scale) {
  const auto scaled = Decimal::multiply(value, Decimal{scale, 0});
  if (!scaled) return std::nullopt;
  const base::Int128 cut = scaled->value.numerator() / scaled->value.denominator();
  if (cut > static_cast<base::Int128>(kLargestAmount) * kNanosecondsPerSecond ||
      cut < -static_cast<base::Int128>(kLargestAmount) * kNanosecondsPerSecond) {
    return std::nullopt;
  }
  const long long result = static_cast<long long>(cut);
  if (scale == 1 && (result > kLargestAmount || result < -kLargestAmount)) return std::nullopt;
  return result;
}

long long floorDivided(long long a, long long b) {
  return a / b - (a % b != 0 && (a < 0) != (b < 0));
}

std::optional<Temporal> plusMonths(const Temporal& value, long long months) {
  const long long all = value.year * 12LL + (value.month - 1) + months;
  if (all < 12 || all >= 120000) return std::nullopt;
  Temporal result = value;
  result.year = static_cast<int>(all / 12);
  result.month = static_cast<int>(all % 12) + 1;
  while (!base::Date::of(result.year, result.month, result.day)) --result.day;
  return result;
}

/// Seconds and nanoseconds; a Time runs round the clock.
std::optional<Temporal> plusNanoseconds(const Temporal& value, long long seconds, long long nanoseconds) {
  Temporal result = value;
  long long fraction = value.nanosecond + nanoseconds;
  long long all = value.hour * 3600LL + value.minute * 60LL + value.second + seconds;
  all += floorDivided(fraction, kNanosecondsPerSecond);
  fraction -= floorDivided(fraction, kNanosecondsPerSecond) * kNanosecondsPerSecond;
  const long long days = floorDivided(all, kSecondsPerDay);
  const long long rest = all - days * kSecondsPerDay;
  result.hour = static_cast<int>(rest / 3600);
  result.minute = static_cast<int>(rest / 60 % 60);
  result.second = static_cast<int>(rest % 60);
  // Seconds and milliseconds are one precision (6.1): they appear where they are needed.
  if (fraction % kNanosecondsPerSecond != 0) result.fractionDigits = std::max(value.fractionDigits, 3);
  long long unit = kNanosecondsPerSecond;
  for (int i = 0; i < result.fractionDigits; ++i) unit /= 10;
  result.nanosecond = static_cast<int>(unit > 0 ? fraction - fraction % unit : fraction);
  if (value.kind == TemporalKind::Time || days == 0) return result;
  const auto date = base::Date::of(value.year, value.month, value.day);
  const long long day = date->dayNumber() + days;
  if (day < base::Date::of(1, 1, 1)->dayNumber() || day > base::Date::of(9999, 12, 31)->dayNumber()) {
    return std::nullopt;
  }
  const base::Date moved = base::Date::fromDayNumber(static_cast<int>(day));
  result.year = moved.year();
  result.month = moved.month();
  result.day = moved.day();
  return result;
}

/// `amount` steps as whole units of the value's own precision, cut off.
long long inPrecision(const StepWord& step, long long amount, Precision precision) {
  if (step.step == CalendarStep::Month) return amount / 12;
  const long long seconds = step.step == CalendarStep::Millisecond ? amount / 1000 : amount * step.seconds;
  switch (precision) {
    case Precision::Year:
      return seconds / 31536000;
    case Precision::Month:
      return seconds / 2592000;
    case Precision::Day:
      return seconds / kSecondsPerDay;
    case Precision::Hour:
      return seconds / 3600;
    case Precision::Minute:
      return seconds / 60;
    case Precision::Second:
      return seconds;
  }
  return 0;
}

Precision precisionOf(CalendarStep step) {
  switch (step) {
    case CalendarStep::Year:
      return Precision::Year;
    case CalendarStep::Month:
      return Precision::Month;
    case CalendarStep::Week:
    case CalendarStep::Day:
      return Precision::Day;
    case CalendarStep::Hour:
      return Precision::Hour;
    case CalendarStep::Minute:
      return Precision::Minute;
    case CalendarStep::Second:
    case CalendarStep::Millisecond:
      return Precision::Second;
  }
  return Precision::Second;
}

std::optional<Temporal> plusUnits(const Temporal& value, Precision unit, long long amount) {
  switch (unit) {
    case Precision::Year:
      return plusMonths(value, amount * 12);
    case Precision::Month:
      return plusMonths(value, amount);
    case Precision::Day:
      return plusNanoseconds(value, amount * kSecondsPerDay, 0);
    case Precision::Hour:
      return plusNanoseconds(value, amount * 3600, 0);
    case Precision::Minute:
      return plusNanoseconds(value, amount * 60, 0);
    case Precision::Second:
      return plusNanoseconds(value, amount, 0);
  }
  return std::nullopt;
}

}  // namespace

std::string whyNotAddable(const Temporal& to, const Quantity& quantity) {
  const StepWord* step = stepOf(quantity);
  if (!step) {
    return quantity.toText() + " cannot be added to a date or time: write a calendar duration such as 1 year";
  }
  if (to.kind == TemporalKind::Time && step->step < CalendarStep::Hour) {
    return quantity.toText() + " cannot be added to a time of day";
  }
  return {};
}

std::optional<Temporal> plus(const Temporal& value, const Quantity& quantity, bool isMinus) {
  const StepWord& step = *stepOf(quantity);
  const Decimal amount{isMinus ? quantity.value.value.negated() : quantity.value.value, -1};
  if (step.step >= CalendarStep::Second && value.precision == Precision::Second) {
    const auto nanoseconds =
        whole(amount, step.step == CalendarStep::Second ? kNanosecondsPerSecond : kNanosecondsPerSecond / 1000);
    if (!nanoseconds) return std::nullopt;
    return plusNanoseconds(value, *nanoseconds / kNanosecondsPerSecond, *nanoseconds % kNanosecondsPerSecond);
  }
  const auto count = whole(amount, 1);
  if (!count) return std::nullopt;
  const long long limited = *count;
  if (limited > 400000000000LL || limited < -400000000000LL) return std::nullopt;
  const Precision unit = precisionOf(step.step);
  if (value.precision < unit) {
    return plusUnits(value, value.precision, inPrecision(step, limited, value.precision));
  }
  return plusUnits(value, unit, step.step == CalendarStep::Week ? limited * 7 : limited);
}

}  // namespace stile::expression
