// Civil dates without a time of day, dates known in part, and calendar periods.
//
// The clock is never read here: the screening date is always an argument.
#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace stile::base {

/// A day of the proleptic Gregorian calendar, years 1 to 9999.
class Date {
 public:
  static std::optional<Date> of(int year, int month, int day);
  /// `YYYY-MM-DD` only.
  static std::optional<Date> parse(std::string_view text);

  int year() const { return year_; }
  int month() const { return month_; }
  int day() const { return day_; }
  /// Days since 1970-01-01.
  int dayNumber() const;
  static Date fromDayNumber(int dayNumber);
  std::string toText() const;      ///< 2026-11-25
  std::string toLongText() const;  ///< 25 November 2026
  auto operator<=>(const Date&) const = default;

 private:
  Date(int year, int month, int day) : year_(year), month_(month), day_(day) {}
  int year_, month_, day_;
};

/// A date of which the month or the day may be unknown: the interval of its possible days.
class PartialDate {
 public:
  PartialDate(Date day) : first_(day), last_(day), text_(day.toText()) {}
  /// `YYYY`, `YYYY-MM` or `YYYY-MM-DD`.
  static std::optional<PartialDate> parse(std::string_view text);
  Date first() const { return first_; }
  Date last() const { return last_; }
  bool isExact() const { return first_ == last_; }
  const std::string& toText() const { return text_; }  ///< as written
  bool operator==(const PartialDate&) const = default;

 private:
  PartialDate(Date first, Date last, std::string text)
      : first_(first), last_(last), text_(std::move(text)) {}
  Date first_, last_;
  std::string text_;
};

enum class CalendarUnit { Day, Week, Month, Year };

/// A length of time in calendar units.
struct Period {
  int value = 0;
  CalendarUnit unit = CalendarUnit::Day;
  bool operator==(const Period&) const = default;
};

/// Completed units from `from` to `to`; negative when `to` is before `from`. A month is complete
/// on the same day number, or on the last day of a shorter month (31 Jan -> 28 Feb is a month;
/// 29 Feb -> 28 Feb is a year: the day is clamped to the month's end).
int completedUnits(Date from, Date to, CalendarUnit unit);

/// The day `period` later, clamped to the end of the month.
Date plus(Date date, Period period);

/// `d wk mo a` and FHIRPath's calendar words.
std::optional<CalendarUnit> calendarUnit(std::string_view text);
std::string toText(Period period);  ///< "2 weeks", "1 month"

}  // namespace stile::base
