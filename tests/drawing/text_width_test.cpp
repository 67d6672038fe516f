#include "drawing/text_width.h"

#include <catch2/catch.hpp>

using namespace stile::drawing;

TEST_CASE("bold text is wider, and width grows with the size") {
  CHECK(textWidth("after clearance", 14, true) > textWidth("after clearance", 14));
  CHECK(textWidth("open", 30) == Approx(2 * textWidth("open", 15)));
  CHECK(textWidth("", 14) == 0);
}

TEST_CASE("letters outside ASCII count once, however many bytes they have") {
  CHECK(textWidth("\xC3\xA9", 1000) == Approx(620));
}

TEST_CASE("text breaks at spaces and never inside a word") {
  const auto lines = wrapped("two readings under 180 over 110", 90, 14);
  REQUIRE(lines.size() > 1);
  std::string joined;
  for (const auto& line : lines) {
    CHECK(textWidth(line, 14) <= 90);
    joined += (joined.empty() ? "" : " ") + line;
  }
  CHECK(joined == "two readings under 180 over 110");
  CHECK(wrapped("unbreakable", 5, 14) == std::vector<std::string>{"unbreakable"});
  CHECK(wrapped("", 90, 14).empty());
}
