#include "questionnaire/moment.h"

#include <catch2/catch.hpp>

using namespace stile::questionnaire;
using stile::expression::Truth;

namespace {

Truth compare(const char* a, const char* b, EnableOperator op) {
  const auto left = momentOf(a);
  const auto right = momentOf(b);
  REQUIRE(left);
  REQUIRE(right);
  return compareMoments(*left, *right, op);
}

}  // namespace

TEST_CASE("Dates and times are read as FHIR writes them, and nothing else") {
  for (const char* good : {"2026", "2026-11", "2026-11-25", "2024-02-29", "2026-11-25T10:30:00Z",
                           "2026-11-25T10:30:00.123+14:00", "2026-11-25T23:59:60-05:30"}) {
    CAPTURE(good);
    CHECK(momentOf(good));
  }
  for (const char* bad :
       {"", "26", "2026-13", "2026-02-29", "2026-11-25T", "2026-11-25T10:30Z", "2026-11T10:30:00Z",
        "2026-11-25T24:00:00Z", "2026-11-25T10:30:00+15:00", "2026-11-25T10:30:00.Z", "today"}) {
    CAPTURE(bad);
    CHECK_FALSE(momentOf(bad));
  }
  CHECK(timeOfDay("10:30:00"));
  CHECK(timeOfDay("10:30:00.5"));
  CHECK_FALSE(timeOfDay("10:30"));
  CHECK_FALSE(timeOfDay("10:30:00Z"));
  CHECK(hasZoneOrNoHours("2026-11-25"));
  CHECK(hasZoneOrNoHours("2026-11-25T10:30:00-05:00"));
  CHECK_FALSE(hasZoneOrNoHours("2026-11-25T10:30:00"));
}

TEST_CASE("A date known in part is every day it may mean") {
  CHECK(compare("2026", "2025-12-31", EnableOperator::Greater) == Truth::True);
  CHECK(compare("2026", "2026-06", EnableOperator::Greater) == Truth::Unknown);
  CHECK(compare("2026-06-30", "2026-06", EnableOperator::Greater) == Truth::Unknown);
  CHECK(compare("2026-07-01", "2026-06", EnableOperator::Greater) == Truth::True);
  CHECK(compare("2026-06-01", "2026-06", EnableOperator::Less) == Truth::Unknown);
  CHECK(compare("2026-07-01", "2026-06", EnableOperator::Less) == Truth::False);
  CHECK(compare("2026", "2026", EnableOperator::Equal) == Truth::True);
  CHECK(compare("2026", "2026", EnableOperator::GreaterOrEqual) == Truth::True);
  CHECK(compare("2026", "2026", EnableOperator::Less) == Truth::False);
  CHECK(compare("2026", "2026-06", EnableOperator::Equal) == Truth::Unknown);
  CHECK(compare("2026", "2027-06", EnableOperator::NotEqual) == Truth::True);
}

TEST_CASE("Moments compare across zones") {
  CHECK(compare("2026-11-25T10:00:00+01:00", "2026-11-25T09:00:00Z", EnableOperator::Equal) == Truth::True);
  CHECK(compare("2026-11-25T23:30:00-05:00", "2026-11-25", EnableOperator::Greater) == Truth::True);
  CHECK(compare("2026-11-25T09:00:00.001Z", "2026-11-25T09:00:00Z", EnableOperator::GreaterOrEqual) ==
        Truth::True);
}
