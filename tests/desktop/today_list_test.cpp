// What the page "Today" shows, without a window.
#include "desktop/today_list.h"

#include <catch2/catch.hpp>

using stile::base::Date;
using stile::desktop::ageInWords;
using stile::desktop::dayInWords;

TEST_CASE("a day is told by its weekday, without the year") {
  CHECK(dayInWords(*Date::parse("2026-11-25")) == "Wednesday 25 November");
  CHECK(dayInWords(*Date::parse("2026-11-26")) == "Thursday 26 November");
  CHECK(dayInWords(*Date::parse("1969-12-31")) == "Wednesday 31 December");
}

TEST_CASE("an age counts completed years, and nothing is said of an unknown day of birth") {
  const Date today = *Date::parse("2026-11-25");
  CHECK(ageInWords("1963-03-14", today) == "63 years");
  CHECK(ageInWords("1963-11-26", today) == "62 years");
  CHECK(ageInWords("2025-11-25", today) == "1 year");
  CHECK(ageInWords("", today).empty());
}
