// A day as people write it.
#include "desktop/typed_date.h"

#include <catch2/catch.hpp>

using stile::base::Date;
using stile::desktop::typedDate;

TEST_CASE("a day of birth is read in figures and in words, and only when it is a whole day") {
  CHECK(typedDate("1963-03-14") == Date::parse("1963-03-14"));
  CHECK(typedDate("14 March 1963") == Date::parse("1963-03-14"));
  CHECK_FALSE(typedDate("March 1963"));
  CHECK_FALSE(typedDate("1963"));
  CHECK_FALSE(typedDate("31 February 1963"));
  CHECK_FALSE(typedDate("soon"));
  CHECK_FALSE(typedDate(""));
}
