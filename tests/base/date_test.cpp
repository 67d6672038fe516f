#include "base/date.h"

#include <catch2/catch.hpp>

using namespace stile::base;

namespace {

Date day(std::string_view text) {
  const auto date = Date::parse(text);
  REQUIRE(date);
  return *date;
}

int completed(std::string_view from, std::string_view to, CalendarUnit unit) {
  return completedUnits(day(from), day(to), unit);
}

std::string later(std::string_view from, int value, CalendarUnit unit) {
  return plus(day(from), {value, unit}).toText();
}

}  // namespace

TEST_CASE("only days of the calendar are dates") {
  for (const char* text : {"2000-02-29", "2024-02-29", "0001-01-01", "9999-12-31", "2026-11-25"}) {
    CAPTURE(text);
    CHECK(day(text).toText() == text);
  }
  for (const char* text : {"2023-02-29", "1900-02-29", "2100-02-29",       "2026-04-31",  "2026-00-10",
                           "2026-13-01", "2026-01-00", "2026-01-32",       "0000-01-01",  "2026-1-1",
                           "26-01-01",   "2026/01/01", "2026-01-01T00:00", " 2026-01-01", "2026-01-01 ",
                           "",           "2026-01",    "-026-01-01",       "2026-+1-01",  "20260101"}) {
    CAPTURE(text);
    CHECK_FALSE(Date::parse(text));
  }
  CHECK_FALSE(Date::of(10000, 1, 1));
  CHECK_FALSE(Date::of(2026, -1, 1));
}

TEST_CASE("day numbers count from 1970 and go back to the same day") {
  CHECK(day("1970-01-01").dayNumber() == 0);
  CHECK(day("1969-12-31").dayNumber() == -1);
  CHECK(day("2000-03-01").dayNumber() == 11017);
  for (int number = day("0001-01-01").dayNumber(); number <= day("9999-12-31").dayNumber(); number += 97) {
    REQUIRE(Date::fromDayNumber(number).dayNumber() == number);
  }
  CHECK(Date::fromDayNumber(-2000000000).toText() == "0001-01-01");
  CHECK(Date::fromDayNumber(2000000000).toText() == "9999-12-31");
}

TEST_CASE("a date is written in words without a leading zero") {
  CHECK(day("2026-11-25").toLongText() == "25 November 2026");
  CHECK(day("2026-03-05").toLongText() == "5 March 2026");
}

TEST_CASE("dates are ordered as days") {
  CHECK(day("2026-01-31") < day("2026-02-01"));
  CHECK(day("2025-12-31") < day("2026-01-01"));
  CHECK(day("2026-01-01") == day("2026-01-01"));
}

TEST_CASE("a partial date is the interval of its possible days") {
  const auto year = PartialDate::parse("2024");
  REQUIRE(year);
  CHECK(year->first().toText() == "2024-01-01");
  CHECK(year->last().toText() == "2024-12-31");
  CHECK_FALSE(year->isExact());
  CHECK(year->toText() == "2024");

  const auto month = PartialDate::parse("2024-02");
  REQUIRE(month);
  CHECK(month->first().toText() == "2024-02-01");
  CHECK(month->last().toText() == "2024-02-29");
  CHECK(PartialDate::parse("2023-02")->last().toText() == "2023-02-28");

  const auto exact = PartialDate::parse("2024-02-29");
  REQUIRE(exact);
  CHECK(exact->isExact());
  CHECK(*exact == PartialDate(day("2024-02-29")));

  for (const char* text : {"", "202", "0000", "20245", "2024-", "2024-13", "2024-00", "2024-2", "2023-02-29",
                           "abcd", "2024-02-", "2024 02"}) {
    CAPTURE(text);
    CHECK_FALSE(PartialDate::parse(text));
  }
}

TEST_CASE("completed months end on the same day or the month's last") {
  using enum CalendarUnit;
  CHECK(completed("2026-01-31", "2026-02-27", Month) == 0);
  CHECK(completed("2026-01-31", "2026-02-28", Month) == 1);
  CHECK(completed("2024-01-31", "2024-02-28", Month) == 0);
  CHECK(completed("2024-01-31", "2024-02-29", Month) == 1);
  CHECK(completed("2026-01-31", "2026-03-30", Month) == 1);
  CHECK(completed("2026-01-31", "2026-03-31", Month) == 2);
  CHECK(completed("2026-02-28", "2026-03-28", Month) == 1);
  CHECK(completed("2026-02-28", "2026-03-27", Month) == 0);
  CHECK(completed("2025-11-15", "2026-11-14", Month) == 11);
  CHECK(completed("2025-11-15", "2026-11-15", Month) == 12);
}

TEST_CASE("completed years pass leap days") {
  using enum CalendarUnit;
  CHECK(completed("2024-02-29", "2025-02-27", Year) == 0);
  CHECK(completed("2024-02-29", "2025-02-28", Year) == 1);
  CHECK(completed("2024-02-29", "2028-02-28", Year) == 3);
  CHECK(completed("2024-02-29", "2028-02-29", Year) == 4);
  CHECK(completed("1900-03-01", "2000-02-29", Year) == 99);
  CHECK(completed("1961-11-25", "2026-11-24", Year) == 64);
  CHECK(completed("1961-11-25", "2026-11-25", Year) == 65);
  CHECK(completed("0001-01-01", "9999-12-31", Year) == 9998);
}

TEST_CASE("completed days and weeks are counted through") {
  using enum CalendarUnit;
  CHECK(completed("2024-02-28", "2024-03-01", Day) == 2);
  CHECK(completed("2023-02-28", "2023-03-01", Day) == 1);
  CHECK(completed("2026-11-01", "2026-11-07", Week) == 0);
  CHECK(completed("2026-11-01", "2026-11-08", Week) == 1);
}

TEST_CASE("completed units are negative when the second day is earlier") {
  using enum CalendarUnit;
  for (const CalendarUnit unit : {Day, Week, Month, Year}) {
    CHECK(completed("2026-11-25", "2026-11-25", unit) == 0);
    CHECK(completed("2026-11-25", "2026-11-24", unit) == -1);
  }
  CHECK(completed("2026-11-25", "2026-10-25", Month) == -1);
  CHECK(completed("2026-11-25", "2026-10-24", Month) == -2);
  CHECK(completed("2026-03-31", "2026-02-28", Month) == -1);
  CHECK(completed("2026-11-25", "2025-11-25", Year) == -1);
  CHECK(completed("2026-11-25", "2025-11-24", Year) == -2);
}

TEST_CASE("a period later is clamped to the month's end") {
  using enum CalendarUnit;
  CHECK(later("2026-01-31", 1, Month) == "2026-02-28");
  CHECK(later("2024-01-31", 1, Month) == "2024-02-29");
  CHECK(later("2024-02-29", 1, Year) == "2025-02-28");
  CHECK(later("2024-02-29", 4, Year) == "2028-02-29");
  CHECK(later("2026-03-31", -1, Month) == "2026-02-28");
  CHECK(later("2026-12-31", 2, Week) == "2027-01-14");
  CHECK(later("2026-01-15", -1, Month) == "2025-12-15");
  CHECK(later("2024-03-01", -1, Day) == "2024-02-29");
  CHECK(later("2026-11-25", 2147483647, Year) == "9999-12-31");
  CHECK(later("2026-11-25", -2147483647, Month) == "0001-01-01");
  CHECK(later("2026-11-25", 2147483647, Week) == "9999-12-31");
}

TEST_CASE("completed units are the most that can be added without passing the day") {
  using enum CalendarUnit;
  const int first = day("2023-11-20").dayNumber();
  for (int from = first; from < first + 140; ++from) {
    for (int to = first - 40; to < first + 560; to += 3) {
      for (const CalendarUnit unit : {Week, Month, Year}) {
        const Date start = Date::fromDayNumber(from);
        const Date end = Date::fromDayNumber(to);
        const int count = completedUnits(start, end, unit);
        REQUIRE(plus(start, {count, unit}) <= end);
        REQUIRE(plus(start, {count + 1, unit}) > end);
      }
    }
  }
}

TEST_CASE("completed units never grow when the start moves on") {
  // The bounds of a partial date rest on this: the ends of the interval give the ends of the count.
  const Date to = day("2024-02-29");
  for (int number = day("2022-01-01").dayNumber(); number < day("2025-01-01").dayNumber(); ++number) {
    for (const CalendarUnit unit : {CalendarUnit::Month, CalendarUnit::Year}) {
      REQUIRE(completedUnits(Date::fromDayNumber(number), to, unit) >=
              completedUnits(Date::fromDayNumber(number + 1), to, unit));
    }
  }
}

TEST_CASE("calendar units are read from UCUM codes and words") {
  CHECK(calendarUnit("wk") == CalendarUnit::Week);
  CHECK(calendarUnit("months") == CalendarUnit::Month);
  CHECK(calendarUnit("a") == CalendarUnit::Year);
  CHECK(calendarUnit("day") == CalendarUnit::Day);
  CHECK_FALSE(calendarUnit("h"));
  CHECK_FALSE(calendarUnit("Week"));
  CHECK_FALSE(calendarUnit(""));
}

TEST_CASE("a period is written with its plural") {
  CHECK(toText(Period{2, CalendarUnit::Week}) == "2 weeks");
  CHECK(toText(Period{1, CalendarUnit::Month}) == "1 month");
  CHECK(toText(Period{0, CalendarUnit::Day}) == "0 days");
}
