#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using Catch::Matchers::Contains;

namespace {

Sample plainSample() {
  return Sample(
      fact("yes", "boolean") + "," +
          fact("falls", "integer", R"("possible": [0, 100], "plausible": [0, 20])") + "," +
          fact("share", "decimal") + "," +
          fact("pressure", "quantity", mmHg() + R"(, "possible": [40, 320], "plausible": [80, 230])") + "," +
          fact("glucose", "quantity", R"("unit": "mmol/L", "analyte": "glucose")") + "," +
          fact("side", "code", choices("left right")) + "," + fact("day", "date") + "," +
          fact("words", "text") + "," +
          fact("heart", "code", R"("multiple": true, )" + choices("angina stroke none")) + "," +
          fact("name", "text", member("medicine")) + "," + fact("dose", "integer", member("medicine")) + "," +
          fact("old", "boolean", R"("retiredFor": "yes")"),
      "medicine");
}

}  // namespace

TEST_CASE("Plain values of every type become facts with what was written, its date and its source") {
  auto sample = plainSample();
  const auto set =
      sample.plain(R"({"yes": true, "falls": 3, "share": 0.25, "pressure": "138 mm[Hg]", "side": "left",
    "day": "2025-03", "words": "as told", "glucose": {"value": 90, "unit": "mg/dL", "date": "2026-11-01", "givenBy": "carer"}})");
  CHECK(sample.say(set, "yes") == "yes");
  CHECK(sample.say(set, "falls") == "3");
  CHECK(sample.say(set, "share") == "0.25");
  CHECK(sample.say(set, "pressure") == "138 mmHg");
  CHECK(sample.say(set, "side") == "Words for left");
  CHECK(sample.say(set, "day") == "March 2025");
  CHECK(sample.say(set, "words") == "as told");
  const facts::Fact& glucose = sample.in(set, "glucose");
  CHECK(glucose.written == "90 mg/dL");
  CHECK(glucose.date->toText() == "2026-11-01");
  CHECK(glucose.givenBy == "carer");
  CHECK(glucose.source == "facts file");
  CHECK(glucose.reason == UnknownReason::None);
  CHECK(sample.in(set, "yes").date->toText() == "2026-11-25");
  CHECK(sample.asked.empty());
}

TEST_CASE("What is absent was not asked, null was not answered, and a reason may be given") {
  auto sample = plainSample();
  const auto set = sample.plain(
      R"({"falls": null, "side": {"unknown": "declined"}, "day": {"unknown": "notConfirmed"}, "words": {"value": null}})");
  CHECK(sample.in(set, "yes").reason == UnknownReason::NotAsked);
  CHECK(sample.in(set, "falls").reason == UnknownReason::NotAnswered);
  CHECK(sample.in(set, "side").reason == UnknownReason::Declined);
  CHECK(sample.in(set, "day").reason == UnknownReason::NotConfirmed);
  CHECK(sample.in(set, "words").reason == UnknownReason::NotAnswered);
}

TEST_CASE("A list of options makes the rest false, and none makes all false") {
  auto sample = plainSample();
  auto set = sample.plain(R"({"heart": ["angina"]})");
  CHECK(sample.say(set, "heartAngina") == "yes");
  CHECK(sample.say(set, "heartStroke") == "no");
  CHECK(sample.say(set, "heartNone") == "no");
  CHECK(sample.say(set, "heart") == "Words for angina");
  set = sample.plain(R"({"heart": {"value": ["none"], "date": "2026-11-01"}})");
  CHECK(sample.say(set, "heartAngina") == "no");
  CHECK(sample.say(set, "heartNone") == "yes");
  CHECK(sample.in(set, "heartAngina").date->toText() == "2026-11-01");
  set = sample.plain(R"({"heart": {"unknown": "notSure"}})");
  CHECK(sample.say(set, "heartAngina") == "unknown: not sure");
  set = sample.plain(R"({"heart": ["angina", "none"]})");
  CHECK(sample.say(set, "heartStroke") == "unknown: contradictory");
  CHECK_THAT(sample.asked, Contains("none of these and with one of these"));
}

TEST_CASE("Single option facts may be given, and contradict a list that says otherwise") {
  auto sample = plainSample();
  auto set = sample.plain(R"({"heartAngina": true})");
  CHECK(sample.say(set, "heartAngina") == "yes");
  CHECK(sample.say(set, "heartStroke") == "unknown: not asked");
  set = sample.plain(R"({"heartStroke": true, "heart": ["angina"]})");
  CHECK(sample.say(set, "heartStroke") == "unknown: contradictory");
  CHECK(sample.say(set, "heartAngina") == "yes");
  CHECK_THAT(sample.asked, Contains("two different answers"));
}

TEST_CASE("Groups are arrays of objects, and an empty one means none") {
  auto sample = plainSample();
  auto set = sample.plain(R"({"medicine": [{"name": "a", "dose": 1}, {"name": "b"}, null]})");
  CHECK(set.repetitions("medicine") == 3);
  CHECK_FALSE(set.isOpenEnded("medicine"));
  CHECK(sample.say(set, "name", 1) == "b");
  CHECK(sample.say(set, "dose", 1) == "unknown: not asked");
  set = sample.plain(R"({"medicine": []})");
  CHECK(set.repetitions("medicine") == 0);
  set = sample.plain(R"({"medicine": {"unknown": "notSure"}})");
  CHECK(set.isOpenEnded("medicine"));
  CHECK(sample.say(set, "name", 0) == "unknown: not sure");
}

TEST_CASE("A value that cannot be taken is refused with its place and a remedy") {
  struct Case {
    const char* json;
    const char* message;
    const char* remedy;
  };
  const auto c = GENERATE(values<Case>({
      {R"({"fals": 1})", "there is no fact \"fals\"", "did you mean \"falls\"?"},
      {R"({"medicin": []})", "there is no fact", "\"medicine\""},
      {R"({"yes": "yes"})", "is of the type boolean", "true or false"},
      {R"({"falls": "3"})", "is of the type integer", "without quotes"},
      {R"({"falls": 2.5})", "whole number", "without decimals"},
      {R"({"falls": 101})", "outside the possible range", "check the value"},
      {R"({"pressure": 138})", "the unit of 138 is missing", "138 mm[Hg]"},
      {R"({"pressure": "138"})", "the unit of 138 is missing", "mm[Hg]"},
      {R"({"pressure": "138 kg"})", "cannot be converted to mm[Hg]", "give the value in mm[Hg]"},
      {R"({"pressure": "138 mmHg"})", "no unit known here", "mm[Hg]"},
      {R"({"pressure": "high mm[Hg]"})", "no number", "for example"},
      {R"({"pressure": "400 mm[Hg]"})", "outside the possible range of \"pressure\", 40 to 320 mmHg",
       "check the value"},
      {R"({"side": "lft"})", "no option", "did you mean \"left\"?"},
      {R"({"side": true})", "is of the type code", "\"left\", \"right\""},
      {R"({"day": "25.3.2025"})", "is of the type date", "2026-03"},
      {R"({"words": ""})", "is of the type text", "quotes"},
      {R"({"heart": []})", "empty list", "null"},
      {R"({"heart": "angina"})", "is of the type code", "[\"angina\"]"},
      {R"({"heart": ["angna"]})", "no option", "\"angina\""},
      {R"({"name": "a"})", "belongs to the group medicine", "\"medicine\": [{"},
      {R"({"medicine": [{"yes": true}]})", "no member of the group", "outside"},
      {R"({"medicine": {"name": "a"}})", "must be an array", "[] for none"},
      {R"({"medicine": ["a"]})", "must be an object", "factId"},
      {R"({"old": true})", "is retired", "\"yes\""},
      {R"({"yes": {"unknown": "bored"}})", "no reason", "notSure"},
      {R"({"yes": {"value": true, "unknown": "notSure"}})", "either", "value"},
      {R"({"yes": {"value": true, "when": 1}})", "when", ""},
      {R"({"falls": {"value": 1, "unit": "1"}})", "has no unit", "leave"},
      {R"({"date": "tomorrow"})", "no date", "2026-11-25"},
      {R"([1])", "must be an object", "factId"},
      {R"({"glucose": "5 mmol/mol"})", "cannot be converted", "mmol/L"},
  }));
  auto sample = plainSample();
  const auto text = sample.refusedPlain(c.json);
  CAPTURE(c.json);
  CHECK_THAT(text, Contains(c.message) && Contains(c.remedy) && Contains("facts.json:1:"));
}

TEST_CASE("An unusual value is kept and asked back") {
  auto sample = plainSample();
  auto set = sample.plain(R"({"pressure": "231 mm[Hg]"})");
  CHECK(sample.say(set, "pressure") == "231 mmHg");
  CHECK_THAT(sample.asked, Contains("is unusual") && Contains("80 to 230 mmHg"));
  sample.plain(R"({"pressure": "230 mm[Hg]"})");
  CHECK(sample.asked.empty());
  sample.plain(R"({"pressure": "79.9 mm[Hg]"})");
  CHECK_THAT(sample.asked, Contains("is unusual"));
  // Ranges are in the fact's unit, whatever unit was written.
  CHECK(sample.say(sample.plain(R"({"pressure": "18 kPa"})"), "pressure") == "135 mmHg (given as 18 kPa)");
}
