#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using Catch::Matchers::Contains;

namespace {

const std::string kStands =
    R"({"id": "stands", "title": "Chair stands", "unit": "1", "sources": ["s"], "rows": [
  {"sex": "male", "ages": [60, 64], "below": 14, "above": 19}, {"sex": "male", "ages": [65, 69], "below": 12, "above": 18},
  {"sex": "female", "ages": [60, 64], "below": 12, "above": 17}, {"sex": "female", "ages": [65, 69], "below": 11, "above": 16}]})";
const std::string kTimed =
    R"({"id": "timed", "title": "Walk", "unit": "s", "higherIsBetter": false, "sources": ["s"], "rows": [
  {"sex": "male", "ages": [60, 64], "below": 12, "above": 8}, {"sex": "female", "ages": [60, 64], "below": 12}]})";

Sample normSample() {
  return Sample(
      fact("sex", "code", choices("male female")) + "," + fact("birth", "date") + "," +
          fact("age", "integer", derived(R"("elapsed": {"since": "birth", "in": "a"})")) + "," +
          fact("stands", "integer") + "," + fact("walk", "quantity", R"("unit": "s")") + "," +
          fact("standsNorm", "code",
               derived(R"("norm": {"table": "stands", "of": "stands", "sex": "sex", "age": "age"})")) +
          "," +
          fact("walkNorm", "code",
               derived(R"("norm": {"table": "timed", "of": "walk", "sex": "sex", "age": "age"})")) +
          "," + fact("isWeak", "boolean", formula("%standsNorm = 'below'")),
      {}, {}, {{"rules/norms/stands.json", kStands}, {"rules/norms/timed.json", kTimed}});
}

}  // namespace

TEST_CASE("A result is below, within or above its row, and equal to a cut-off is within") {
  auto sample = normSample();
  const auto of = [&](int stands) {
    return *sample
                .in(sample.plain(R"({"sex": "male", "age": 62, "stands": )" + std::to_string(stands) + "}"),
                    "standsNorm")
                .value.text;
  };
  CHECK(of(13) == "below");
  CHECK(of(14) == "within");
  CHECK(of(19) == "within");
  CHECK(of(20) == "above");
}

TEST_CASE("A timed test is turned round: slower is below") {
  auto sample = normSample();
  const auto of = [&](const std::string& seconds, const std::string& sex) {
    return *sample
                .in(sample.plain(R"({"sex": ")" + sex + R"(", "age": 62, "walk": ")" + seconds + R"( s"})"),
                    "walkNorm")
                .value.text;
  };
  CHECK(of("12.1", "male") == "below");
  CHECK(of("12", "male") == "within");
  CHECK(of("8", "male") == "within");
  CHECK(of("7.9", "male") == "above");
  CHECK(of("1", "female") == "within");
}

TEST_CASE("With sex or age unknown a result is firm only where all rows agree") {
  auto sample = normSample();
  const auto say = [&](const std::string& json) { return sample.say(sample.plain(json), "standsNorm"); };
  CHECK(say(R"({"age": 62, "stands": 11})") == "below the usual range");
  CHECK(say(R"({"age": 62, "stands": 13})") == "unknown: not asked");
  CHECK(say(R"({"age": 62, "stands": 15})") == "within the usual range");
  CHECK(say(R"({"sex": "male", "birth": "1961", "stands": 13})") == "unknown: to be resolved");
  CHECK(say(R"({"sex": "male", "birth": "1961", "stands": 11})") == "below the usual range");
  CHECK(say(R"({"sex": {"unknown": "declined"}, "age": 62, "stands": 13})") == "unknown: declined");
}

TEST_CASE("Where the table says nothing the result stays unknown") {
  auto sample = normSample();
  CHECK(
      sample.in(sample.plain(R"({"sex": "male", "age": 50, "stands": 1})"), "standsNorm").value.isUnknown());
  // Unknown age may be such an age, so it must not be firmer than that age itself.
  CHECK(sample.in(sample.plain(R"({"sex": "male", "stands": 1})"), "standsNorm").value.isUnknown());
  CHECK(sample.in(sample.plain(R"({"sex": "male", "age": 62})"), "standsNorm").value.isUnknown());
  CHECK(sample.say(sample.plain(R"({"sex": "male", "age": 62, "stands": 1})"), "isWeak") == "yes");
}

TEST_CASE("Norm tables that overlap, stand in the wrong order or name no source are issues") {
  const auto text = dictionaryIssues(
      {{"rules/norms/a.json", R"({"id": "a", "title": "A", "unit": "s", "sources": [], "rows": [
    {"sex": "male", "ages": [60, 64], "below": 12, "above": 9}, {"sex": "male", "ages": [50, 59], "below": 12, "above": 13},
    {"sex": "male", "ages": [59, 62], "below": 12, "above": 13}, {"sex": "male", "ages": [70], "below": 1}]})"}});
  CHECK_THAT(text, Contains("wrong order") && Contains("shares ages") && Contains("two whole numbers") &&
                       Contains("names no source"));
}

TEST_CASE("A result equal to the cut-off is below where the source says so") {
  for (const std::string member : {"", R"("equalIsBelow": true, )"}) {
    Sample sample(
        fact("sex", "code", choices("male female")) + "," + fact("age", "integer") + "," +
            fact("walk", "quantity", R"("unit": "s")") + "," +
            fact("walkNorm", "code",
                 derived(R"("norm": {"table": "timed", "of": "walk", "sex": "sex", "age": "age"})")),
        {}, {},
        {{"rules/norms/timed.json",
          R"({"id": "timed", "title": "Walk", "unit": "s", "higherIsBetter": false, )" + member +
              R"("sources": ["s"], "rows": [
                    {"sex": "male", "ages": [18, 99], "below": 12}]})"}});
    const auto set = sample.plain(R"({"sex": "male", "age": 62, "walk": "12 s"})");
    CHECK(*sample.in(set, "walkNorm").value.text == (member.empty() ? "within" : "below"));
  }
}
