// Dates, dates with a time, and times of day, each known down to some precision (FHIRPath 2.0.0,
// section 4.1 for literals, 6.1 and 6.2 for comparison).
#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace stile::expression {

enum class TemporalKind { Date, DateTime, Time };

/// How far a date or time is known. Fractions of a second are part of Second (6.1: seconds and
/// milliseconds are one precision).
enum class Precision { Year, Month, Day, Hour, Minute, Second };

/// One value. Fields finer than `precision` are 0 (month and day 1). A Time has no date fields.
struct Temporal {
  TemporalKind kind = TemporalKind::Date;
  Precision precision = Precision::Year;
  int year = 1, month = 1, day = 1;
  int hour = 0, minute = 0, second = 0;
  int nanosecond = 0;
  int fractionDigits = 0;          ///< digits written behind the second
  std::optional<int> zoneMinutes;  ///< offset from UTC, of a DateTime only
  bool isZulu = false;             ///< the offset was written as Z

  /// `YYYY[-MM[-DD]]`.
  static std::optional<Temporal> parseDate(std::string_view text);
  /// A date, optionally `T` and a time with an offset or Z.
  static std::optional<Temporal> parseDateTime(std::string_view text);
  /// `hh[:mm[:ss[.fff]]]`.
  static std::optional<Temporal> parseTime(std::string_view text);
  std::string toText() const;   ///< as written in a resource, without @ and @T
  Temporal asDateTime() const;  ///< of a Date: the same without a time
};

/// The order of two values. nullopt: undecided, because one is known less precisely than the other
/// and they agree as far as both are known, or because a time is compared with a date.
/// Values without an offset are taken to be in the zone `localZoneMinutes`.
std::optional<std::strong_ordering> compare(const Temporal& a, const Temporal& b, int localZoneMinutes);

/// Same precision and same value, as `~` asks.
bool areEquivalent(const Temporal& a, const Temporal& b, int localZoneMinutes);

/// The same instant in the zone given; unchanged when there is no time or no offset.
Temporal inZone(const Temporal& value, int zoneMinutes);

/// The first and the last possible value when told down to `digits` digits (4, 6, 8 dates; 10, 12,
/// 14, 17 with time; 2, 4, 6, 9 times of day): lowBoundary() and highBoundary(). nullopt for any other
/// number.
std::optional<Temporal> boundary(const Temporal& value, bool isHigh, std::optional<int> digits);

/// Digits of the value, as precision() counts them.
int digitsOf(const Temporal& value);

}  // namespace stile::expression
