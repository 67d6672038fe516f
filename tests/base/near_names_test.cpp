#include "base/near_names.h"

#include <catch2/catch.hpp>

using stile::base::didYouMean;
using stile::base::nearNames;

TEST_CASE("A misspelt name has a near one") {
  const std::vector<std::string> names{"chestPain", "backPain"};
  CHECK(nearNames("chestPian", names) == std::vector<std::string>{"chestPain"});
  CHECK(nearNames("CHESTPAIN", names) == std::vector<std::string>{"chestPain"});
  CHECK(nearNames("zzz", names).empty());
  CHECK(nearNames(std::string(500, 'x'), names).empty());
}

TEST_CASE("The beginning of a name finds it, nearest first and at most three") {
  const std::vector<std::string> names{"kneeReplacementDate", "kneeReplacement", "kneeReplacements",
                                       "kneeReplacementSide", "knees"};
  const auto near = nearNames("kneeReplacement", names);
  REQUIRE(near.size() == 3);
  CHECK(near[0] == "kneeReplacement");
  CHECK(near[1] == "kneeReplacements");
}

TEST_CASE("The remedy of a misspelt name names the near ones, or says what else to do") {
  CHECK(didYouMean("chestPian", {"chestPain"}, "look again") == "did you mean \"chestPain\"?");
  CHECK(didYouMean("zzz", {"chestPain"}, "look again") == "look again");
  CHECK(didYouMean(std::vector<std::string>{"a", "b"}, "") == "did you mean \"a\" or \"b\"?");
}
