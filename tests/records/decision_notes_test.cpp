#include "records/decision_notes.h"

#include <catch2/catch.hpp>

using namespace stile::records;

TEST_CASE("what was added to one screening is gathered, and to no other") {
  const std::vector<Entry> entries{
      {"s1", "screening", 1, "ines", "", R"({"date": "2026-11-25"})"},
      {"o1", "override", 2, "ines", "ines", R"({"date": "2026-11-25", "screening": "s1", "rule": "hip", "instead": "light", "reason": "seen", "needsSecond": true})"},
      {"o2", "override", 3, "ines", "ines", R"({"date": "2026-11-25", "screening": "s0", "rule": "hip", "instead": "light", "reason": "seen"})"},
      {"x1", "secondSignature", 4, "ines", "ines", R"({"date": "2026-11-25", "override": "o1"})"},
      {"a1", "amendment", 5, "tomas", "tomas", R"({"date": "2026-11-26", "screening": "s1", "text": "rang"})"},
      {"f1", "signOff", 6, "ines", "ines", R"({"date": "2026-11-26", "screening": "s1"})"}};
  DecisionNotes notes = decisionNotesOf(entries, "s1");
  REQUIRE(notes.overrides.size() == 1);
  CHECK(notes.overrides.front().rule == "hip");
  CHECK(notes.overrides.front().needsSecond);
  CHECK(notes.overrides.front().secondBy.empty());  // nobody is their own second
  REQUIRE(notes.signOffs.size() == 1);
  CHECK(notes.signOffs.front().date.toText() == "2026-11-26");
  REQUIRE(notes.amendments.size() == 1);
  CHECK(notes.amendments.front().by == "tomas");
  auto more = entries;
  more.push_back({"x2", "secondSignature", 7, "tomas", "tomas", R"({"date": "2026-11-26", "override": "o1"})"});
  CHECK(decisionNotesOf(more, "s1").overrides.front().secondBy == "tomas");
  CHECK(decisionNotesOf(entries, "s2").signOffs.empty());
}
