#include "questionnaire/canonical.h"

#include <catch2/catch.hpp>


using namespace stile::questionnaire;

TEST_CASE("A canonical is a url and perhaps a version") {
  CHECK(splitCanonical("https://a.example/q|2026.11#x").url == "https://a.example/q");
  CHECK(splitCanonical("https://a.example/q|2026.11#x").version == "2026.11");
  CHECK(splitCanonical("https://a.example/q").version.empty());
}

TEST_CASE("Versions compare number by number") {
  CHECK(*compareVersions("2026.11", "2026.11") == 0);
  CHECK(*compareVersions("2026.9", "2026.11") < 0);
  CHECK(*compareVersions("2027.1", "2026.11") > 0);
  CHECK(*compareVersions("2026.11.1", "2026.11") > 0);
  CHECK(*compareVersions("2026.09", "2026.9.0") == 0);
  CHECK(*compareVersions("draft", "draft") == 0);
  CHECK_FALSE(compareVersions("draft", "2026.11"));
  CHECK_FALSE(compareVersions("2026.11", ""));
}

