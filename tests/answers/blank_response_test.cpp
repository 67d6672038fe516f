#include <catch2/catch.hpp>

#include "sample_response.h"

using namespace stile;
using namespace stile::sample;
using answers::Absence;

TEST_CASE("A blank response holds every question once, not asked, and can be read back") {
  const auto forms = loaded(
      item("someNote", "display") + "," +
      item("bodyGroup", "group",
           "\"item\": [" + item("pain", "boolean", "\"item\": [" + item("painText", "string") + "]") + "]") +
      "," + item("wordsGroup", "group", "\"item\": [" + item("wordsNote", "display") + "]") + "," +
      item("reading", "group",
           "\"repeats\": true, \"item\": [" + item("systolic", "quantity", units("mm[Hg]")) + "]"));
  const std::string text = answers::blankResponse(*forms.byName("t"), *base::Date::of(2026, 11, 25));
  CHECK(text.ends_with("}\n"));
  CHECK(text.find("Note") == std::string::npos);
  const auto response = accepted(text, forms);
  CHECK(response.formVersion == "2026.11");
  CHECK(response.authored == base::Date::of(2026, 11, 25));
  REQUIRE(response.answered.size() == 3);
  for (const auto& answered : response.answered) {
    CAPTURE(answered.linkId);
    CHECK(answered.answers.empty());
    CHECK(answered.absence == Absence::NotAsked);
  }
  CHECK(response.answered[1].linkId == "painText");
  CHECK(response.answered[2].repetition == 0);
  CHECK(response.repetitions.at("reading") == 1);
}

TEST_CASE("A blank response to a form of displays alone has no items") {
  const auto forms = loaded(item("someNote", "display"));
  CHECK(accepted(answers::blankResponse(*forms.byName("t"), *base::Date::of(2026, 11, 25)), forms)
            .answered.empty());
}
