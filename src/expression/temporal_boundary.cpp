// lowBoundary(), highBoundary() and precision() of dates and times (FHIRPath 2.0.0 utility
// functions as the FHIR test suite uses them).
#include <array>

#include "base/date.h"
#include "expression/temporal.h"

namespace stile::expression {
namespace {

constexpr int kMilliseconds = 17;

std::optional<Precision> precisionOf(TemporalKind kind, int digits) {
  constexpr std::array<int, 6> kDateDigits{4, 6, 8, 10, 12, 14};
  constexpr std::array<int, 3> kTimeDigits{2, 4, 6};
  if (kind == TemporalKind::Time) {
    for (std::size_t i = 0; i < kTimeDigits.size(); ++i) {
      if (kTimeDigits[i] == digits) return static_cast<Precision>(i + 3);
    }
    return digits == 9 ? std::optional(Precision::Second) : std::nullopt;
  }
  for (std::size_t i = 0; i < kDateDigits.size(); ++i) {
    if (kDateDigits[i] == digits && (kind == TemporalKind::DateTime || digits <= 8)) {
      return static_cast<Precision>(i);
    }
  }
  if (digits == kMilliseconds && kind == TemporalKind::DateTime) return Precision::Second;
  return std::nullopt;
}

int lastDay(int year, int month) {
  for (int day = 31; day > 28; --day) {
    if (base::Date::of(year, month, day)) return day;
  }
  return 28;
}

}  // namespace

int digitsOf(const Temporal& value) {
  const bool isTime = value.kind == TemporalKind::Time;
  if (value.precision == Precision::Second && value.fractionDigits > 0) return isTime ? 9 : kMilliseconds;
  const int step = static_cast<int>(value.precision);
  return isTime ? (step - 2) * 2 : 4 + step * 2;
}

std::optional<Temporal> boundary(const Temporal& value, bool isHigh, std::optional<int> digits) {
  const int finest = value.kind == TemporalKind::Date   ? 8
                     : value.kind == TemporalKind::Time ? 9
                                                        : kMilliseconds;
  const int wanted = digits.value_or(finest);
  const auto precision = precisionOf(value.kind, wanted);
  if (!precision) return std::nullopt;
  Temporal result = value;
  result.precision = *precision;
  if (value.precision < Precision::Month) result.month = isHigh ? 12 : 1;
  if (value.precision < Precision::Day) result.day = isHigh ? lastDay(result.year, result.month) : 1;
  if (value.precision < Precision::Hour) result.hour = isHigh ? 23 : 0;
  if (value.precision < Precision::Minute) result.minute = isHigh ? 59 : 0;
  if (value.precision < Precision::Second) result.second = isHigh ? 59 : 0;
  const bool hasFraction = wanted == kMilliseconds || wanted == 9;
  if (value.fractionDigits == 0) result.nanosecond = isHigh ? 999000000 : 0;
  result.fractionDigits = hasFraction ? 3 : 0;
  if (!hasFraction) result.nanosecond = 0;
  // Without an offset the earliest is in the easternmost zone, the latest in the westernmost.
  if (value.kind == TemporalKind::DateTime && !value.zoneMinutes && *precision >= Precision::Hour) {
    result.zoneMinutes = isHigh ? -12 * 60 : 14 * 60;
  }
  return result;
}

}  // namespace stile::expression
