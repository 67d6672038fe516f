#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using Catch::Matchers::Contains;

namespace {

std::string on(const std::string& date, const std::string& value = "true") {
  return R"({"value": )" + value + R"(, "date": ")" + date + R"("})";
}

std::string freshFor(int value, const std::string& unit) {
  return R"("freshFor": {"value": )" + std::to_string(value) + R"(, "unit": ")" + unit + "\"}";
}

}  // namespace

TEST_CASE("A fact counts up to the last day of its age and is unknown after it") {
  Sample sample(fact("a", "boolean", freshFor(1, "mo")));
  CHECK(sample.say(sample.plain("{\"a\": " + on("2026-10-25") + "}"), "a") == "yes");
  const auto set = sample.plain("{\"a\": " + on("2026-10-24") + "}");
  CHECK(sample.say(set, "a") == "unknown: out of date");
  CHECK(sample.in(set, "a").asGiven == expression::Value::boolean(true));
  CHECK(sample.in(set, "a").written == "true");
}

TEST_CASE("An age of no days asks for today") {
  Sample sample(fact("a", "boolean", freshFor(0, "d")));
  CHECK(sample.say(sample.plain("{\"a\": true}"), "a") == "yes");
  CHECK(sample.say(sample.plain("{\"a\": " + on("2026-11-24") + "}"), "a") == "unknown: out of date");
  CHECK(sample.say(sample.plain(R"({"date": "2026-11-24", "a": true})"), "a") == "unknown: out of date");
}

TEST_CASE("A date known in part is fresh only if its earliest day is") {
  Sample sample(fact("a", "boolean", freshFor(1, "mo")));
  CHECK(sample.say(sample.plain("{\"a\": " + on("2026-11") + "}"), "a") == "yes");
  CHECK(sample.say(sample.plain("{\"a\": " + on("2026-10") + "}"), "a") == "unknown: out of date");
}

TEST_CASE("A fact dated in the future is refused") {
  Sample sample(fact("a", "boolean"));
  CHECK_THAT(sample.refusedPlain("{\"a\": " + on("2026-11-26") + "}"),
             Contains("lies after the screening date 2026-11-25"));
}

TEST_CASE("A rule may allow another age, looser or stricter") {
  Sample sample(fact("a", "boolean", freshFor(1, "wk")) + "," + fact("b", "boolean", formula("%a")) + "," +
                fact("c", "boolean"));
  const auto set = sample.plain("{\"a\": " + on("2026-11-10") + ", \"c\": " + on("2026-11-10") + "}");
  const int a = sample.slot("a");
  const int b = sample.slot("b");
  const int c = sample.slot("c");
  CHECK(set.at(a).reason == UnknownReason::OutOfDate);
  const std::map<int, base::Period> looser{{a, {3, base::CalendarUnit::Month}},
                                           {b, {3, base::CalendarUnit::Month}}};
  const facts::FactSlots slots(set, "", -1, &looser, kToday);
  CHECK(slots.valueOf(a).truth == expression::Truth::True);
  CHECK(slots.reasonOf(a) == UnknownReason::None);
  CHECK(slots.valueOf(b).truth == expression::Truth::True);
  const std::map<int, base::Period> stricter{{c, {1, base::CalendarUnit::Week}}};
  const facts::FactSlots strict(set, "", -1, &stricter, kToday);
  CHECK(strict.valueOf(c).isUnknown());
  CHECK(strict.reasonOf(c) == UnknownReason::OutOfDate);
  CHECK(facts::FactSlots(set, "", -1, nullptr, kToday).valueOf(c).truth == expression::Truth::True);
}

TEST_CASE("Another age works the mean out again from the readings it allows") {
  Sample sample(fact("systolic", "quantity", mmHg() + ", " + member("reading")) + "," +
                    fact("mean", "quantity",
                         mmHg() + ", " + freshFor(1, "d") + ", " +
                             derived(R"("mean": {"of": "systolic", "last": 2})")) +
                    "," + fact("high", "boolean", formula("%mean >= 140 'mm[Hg]'")),
                "reading");
  const auto set = sample.plain(R"({"reading": [{"systolic": {"value": "150 mm[Hg]", "date": "2026-10-01"}},
    {"systolic": {"value": "140 mm[Hg]", "date": "2026-10-02"}}, {"systolic": {"value": "100 mm[Hg]", "date": "2026-01-02"}}]})");
  CHECK(sample.say(set, "mean") == "unknown: out of date");
  const int mean = sample.slot("mean");
  const int high = sample.slot("high");
  const std::map<int, base::Period> months{{mean, {3, base::CalendarUnit::Month}},
                                           {high, {3, base::CalendarUnit::Month}}};
  const facts::FactSlots slots(set, "", -1, &months, kToday);
  CHECK(slots.valueOf(mean) == expression::Value::number(145));
  CHECK(slots.valueOf(high).truth == expression::Truth::True);
  CHECK(facts::FactSlots(set).valueOf(high).isUnknown());

  const auto direct = sample.plain(R"({"mean": {"value": "150 mm[Hg]", "date": "2026-10-01"}})");
  CHECK(facts::FactSlots(direct, "", -1, &months, kToday).valueOf(mean) == expression::Value::number(150));
  CHECK(facts::FactSlots(direct).valueOf(mean).isUnknown());
}

TEST_CASE("A fact is optional in a circumstance that is certainly true") {
  Sample sample(
      fact("needed", "boolean") + "," +
      fact("a", "boolean", R"("optional": {"when": "%needed = false", "because": "Not needed."})") + "," +
      fact("b", "boolean", R"("unknownAs": "optional", "optional": {"because": "Nobody can know."})"));
  const auto optional = [&](const std::string& json, const char* id) {
    return facts::isOptionalNow(sample.plain(json), sample.slot(id));
  };
  CHECK(optional(R"({"needed": false})", "a"));
  CHECK_FALSE(optional(R"({"needed": true})", "a"));
  CHECK_FALSE(optional("{}", "a"));
  CHECK(optional("{}", "b"));
}
