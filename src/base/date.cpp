#include "base/date.h"

#include <algorithm>
#include <array>
#include <chrono>
#include <utility>

namespace stile::base {
namespace {

constexpr int kFirstYear = 1;
constexpr int kLastYear = 9999;

int daysInMonth(int year, int month) {
  using namespace std::chrono;
  const year_month_day_last last{std::chrono::year{year},
                                 month_day_last{std::chrono::month{static_cast<unsigned>(month)}}};
  return static_cast<int>(static_cast<unsigned>(last.day()));
}

/// Exactly `count` digits at `at`, or nullopt.
std::optional<int> digitsAt(std::string_view text, std::size_t at, std::size_t count) {
  if (text.size() < at + count) return std::nullopt;
  int value = 0;
  for (const char c : text.substr(at, count)) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

std::string padded(int value, std::size_t width) {
  const std::string digits = std::to_string(value);
  return std::string(width - std::min(width, digits.size()), '0') + digits;
}

long long floorDivided(long long a, long long b) {
  return a / b - (a % b != 0 && (a < 0) != (b < 0));
}

/// The same day `months` later, clamped to the month's end and to the years a Date can have.
Date plusMonths(Date date, long long months) {
  const long long all = date.year() * 12LL + (date.month() - 1) + months;
  if (all < kFirstYear * 12LL) return *Date::of(kFirstYear, 1, 1);
  if (all >= (kLastYear + 1) * 12LL) return *Date::of(kLastYear, 12, 31);
  const int year = static_cast<int>(all / 12);
  const int month = static_cast<int>(all % 12) + 1;
  return *Date::of(year, month, std::min(date.day(), daysInMonth(year, month)));
}

Date plusDays(Date date, long long days) {
  const long long first = Date::of(kFirstYear, 1, 1)->dayNumber();
  const long long last = Date::of(kLastYear, 12, 31)->dayNumber();
  return Date::fromDayNumber(static_cast<int>(std::clamp(date.dayNumber() + days, first, last)));
}

}  // namespace

std::optional<Date> Date::of(int year, int month, int day) {
  if (year < kFirstYear || year > kLastYear || month < 1 || month > 12) return std::nullopt;
  if (day < 1 || day > daysInMonth(year, month)) return std::nullopt;
  return Date(year, month, day);
}

std::optional<Date> Date::parse(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digitsAt(text, 0, 4);
  const auto month = digitsAt(text, 5, 2);
  const auto day = digitsAt(text, 8, 2);
  if (!year || !month || !day) return std::nullopt;
  return of(*year, *month, *day);
}

int Date::dayNumber() const {
  using namespace std::chrono;
  const sys_days days = std::chrono::year{year_} / static_cast<int>(month_) / static_cast<int>(day_);
  return static_cast<int>(days.time_since_epoch().count());
}

Date Date::fromDayNumber(int dayNumber) {
  using namespace std::chrono;
  static const int kFirst = of(kFirstYear, 1, 1)->dayNumber();
  static const int kLast = of(kLastYear, 12, 31)->dayNumber();
  const year_month_day date{sys_days{days{std::clamp(dayNumber, kFirst, kLast)}}};
  return Date(static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
              static_cast<int>(static_cast<unsigned>(date.day())));
}

std::string Date::toText() const {
  return padded(year_, 4) + "-" + padded(month_, 2) + "-" + padded(day_, 2);
}

std::string Date::toLongText() const {
  static constexpr std::array<std::string_view, 12> kMonths{"January",   "February", "March",    "April",
                                                            "May",       "June",     "July",     "August",
                                                            "September", "October",  "November", "December"};
  return std::to_string(day_) + " " + std::string(kMonths[static_cast<std::size_t>(month_ - 1)]) + " " +
         std::to_string(year_);
}

std::optional<PartialDate> PartialDate::parse(std::string_view text) {
  if (const auto day = Date::parse(text)) return PartialDate(*day);
  const bool hasMonth = text.size() == 7 && text[4] == '-';
  if (text.size() != 4 && !hasMonth) return std::nullopt;
  const auto year = digitsAt(text, 0, 4);
  if (!year || *year < kFirstYear) return std::nullopt;
  if (!hasMonth) return PartialDate(*Date::of(*year, 1, 1), *Date::of(*year, 12, 31), std::string(text));
  const auto month = digitsAt(text, 5, 2);
  if (!month || *month < 1 || *month > 12) return std::nullopt;
  return PartialDate(*Date::of(*year, *month, 1), *Date::of(*year, *month, daysInMonth(*year, *month)),
                     std::string(text));
}

int completedUnits(Date from, Date to, CalendarUnit unit) {
  // The greatest n with from + n units <= to, so a day too early is already -1.
  if (unit == CalendarUnit::Day) return to.dayNumber() - from.dayNumber();
  if (unit == CalendarUnit::Week) {
    return static_cast<int>(floorDivided(to.dayNumber() - from.dayNumber(), 7));
  }
  long long months = (to.year() - from.year()) * 12LL + (to.month() - from.month());
  if (std::min(from.day(), daysInMonth(to.year(), to.month())) > to.day()) --months;
  return static_cast<int>(unit == CalendarUnit::Month ? months : floorDivided(months, 12));
}

Date plus(Date date, Period period) {
  switch (period.unit) {
    case CalendarUnit::Day:
      return plusDays(date, period.value);
    case CalendarUnit::Week:
      return plusDays(date, 7LL * period.value);
    case CalendarUnit::Month:
      return plusMonths(date, period.value);
    case CalendarUnit::Year:
      return plusMonths(date, 12LL * period.value);
  }
  return date;
}

std::optional<CalendarUnit> calendarUnit(std::string_view text) {
  if (text == "d" || text == "day" || text == "days") return CalendarUnit::Day;
  if (text == "wk" || text == "week" || text == "weeks") return CalendarUnit::Week;
  if (text == "mo" || text == "month" || text == "months") return CalendarUnit::Month;
  if (text == "a" || text == "year" || text == "years") return CalendarUnit::Year;
  return std::nullopt;
}

std::string toText(Period period) {
  static constexpr std::array<std::string_view, 4> kWords{"day", "week", "month", "year"};
  std::string text = std::to_string(period.value) + " ";
  text += kWords[static_cast<std::size_t>(period.unit)];
  return period.value == 1 || period.value == -1 ? text : text + "s";
}

}  // namespace stile::base
