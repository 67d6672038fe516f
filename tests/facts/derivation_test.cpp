#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using Catch::Matchers::Contains;

namespace {

std::string summary(const std::string& rest) {
  return derived("\"summary\": {\"group\": \"joint\", " + rest + "}");
}

Sample jointSample() {
  return Sample(fact("isHip", "boolean", member("joint")) + "," +
                    fact("ageMonths", "integer", member("joint")) + "," +
                    fact("anyHip", "boolean", summary(R"("any": "%isHip")")) + "," +
                    fact("everyHip", "boolean", summary(R"("every": "%isHip")")) + "," +
                    fact("anyFresh", "boolean", summary(R"("any": "%ageMonths < 3", "where": "%isHip")")) +
                    "," + fact("count", "integer", summary(R"("count": true)")) + "," +
                    fact("hips", "integer", summary(R"("count": true, "where": "%isHip")")) + "," +
                    fact("least", "integer", summary(R"("smallest": "%ageMonths")")) + "," +
                    fact("most", "integer", summary(R"("largest": "%ageMonths")")) + "," +
                    fact("leastHip", "integer", summary(R"("smallest": "%ageMonths", "where": "%isHip")")) +
                    "," + fact("underSix", "boolean", formula("%least < 6")) + "," +
                    fact("overTwo", "boolean", formula("%least > 2")) + "," +
                    fact("hipUnderSix", "boolean", formula("%leastHip < 6")) + "," +
                    fact("hipOverTwo", "boolean", formula("%leastHip > 2")),
                "joint");
}

}  // namespace

TEST_CASE("Of three and an unknown the smallest is under six and not known to be over two") {
  auto sample = jointSample();
  const auto set = sample.plain(R"({"joint": [{"ageMonths": 3}, {"ageMonths": null}]})");
  CHECK(sample.say(set, "least") == "at most 3");
  CHECK(sample.say(set, "underSix") == "yes");
  CHECK(sample.say(set, "overTwo") == "unknown: not answered");
  CHECK(sample.say(set, "most") == "at least 3");
}

TEST_CASE("Any, every and count are three-valued") {
  auto sample = jointSample();
  auto set = sample.plain(R"({"joint": [{"isHip": true}, {"isHip": null}]})");
  CHECK(sample.say(set, "anyHip") == "yes");
  CHECK(sample.say(set, "everyHip") == "unknown: not answered");
  CHECK(sample.say(set, "hips") == "between 1 and 2");
  CHECK(sample.say(set, "count") == "2");
  set = sample.plain(R"({"joint": [{"isHip": false}, {"isHip": {"unknown": "notSure"}}]})");
  CHECK(sample.say(set, "anyHip") == "unknown: not sure");
  CHECK(sample.say(set, "everyHip") == "no");
  set = sample.plain(R"({"joint": [{"isHip": false, "ageMonths": null}]})");
  CHECK(sample.say(set, "anyFresh") == "no");
  set = sample.plain(R"({"joint": [{"isHip": null, "ageMonths": 4}]})");
  CHECK(sample.say(set, "anyFresh") == "no");
}

TEST_CASE("A group known to be empty gives firm answers") {
  auto sample = jointSample();
  const auto set = sample.plain(R"({"joint": []})");
  CHECK(sample.say(set, "anyHip") == "no");
  CHECK(sample.say(set, "everyHip") == "yes");
  CHECK(sample.say(set, "count") == "0");
  CHECK(sample.say(set, "least") == "does not apply");
  CHECK(sample.say(set, "underSix") == "no");
  CHECK(sample.say(set, "overTwo") == "no");
}

TEST_CASE("A group nobody answered may hold anything") {
  auto sample = jointSample();
  auto set = sample.plain("{}");
  CHECK(set.repetitions("joint") == 1);
  CHECK(set.isOpenEnded("joint"));
  CHECK(sample.say(set, "anyHip") == "unknown: not asked");
  CHECK(sample.say(set, "everyHip") == "unknown: not asked");
  CHECK(sample.say(set, "count") == "at least 0");
  CHECK(sample.in(set, "least").value.isUnknown());

  // One repetition is told of, more are possible.
  set.give(sample.slot("isHip"), 0, expression::Value::boolean(true), kToday);
  set.give(sample.slot("ageMonths"), 0, expression::Value::number(3), kToday);
  base::Issues issues;
  facts::settle(set, sample.forms, kToday, issues);
  CHECK(sample.say(set, "anyHip") == "yes");
  CHECK(sample.in(set, "everyHip").value.isUnknown());
  CHECK(sample.say(set, "count") == "at least 1");
  CHECK(sample.say(set, "least") == "at most 3");
  CHECK(sample.say(set, "most") == "at least 3");
  set.give(sample.slot("isHip"), 0, expression::Value::boolean(false), kToday);
  facts::settle(set, sample.forms, kToday, issues);
  CHECK(sample.in(set, "anyHip").value.isUnknown());
  CHECK(sample.say(set, "everyHip") == "no");
}

TEST_CASE("What may belong to none has no certain bound") {
  auto sample = jointSample();
  auto set = sample.plain(R"({"joint": [{"isHip": null, "ageMonths": 5}]})");
  CHECK(sample.in(set, "leastHip").value.isUnknown());
  CHECK(sample.in(set, "hipOverTwo").value.isUnknown());
  set = sample.plain(R"({"joint": [{"isHip": true, "ageMonths": 5}, {"isHip": null, "ageMonths": 3}]})");
  CHECK(sample.say(set, "leastHip") == "between 3 and 5");
  CHECK(sample.say(set, "hipOverTwo") == "yes");
  set = sample.plain(R"({"joint": [{"isHip": false, "ageMonths": 1}]})");
  CHECK(sample.say(set, "leastHip") == "does not apply");
  CHECK(sample.say(set, "hipUnderSix") == "no");
}

TEST_CASE("Elapsed time is counted in completed units, at both ends of a date known in part") {
  Sample sample(fact("since", "date") + "," +
                fact("years", "integer", derived(R"("elapsed": {"since": "since", "in": "a"})")) + "," +
                fact("ageMonths", "quantity",
                     R"("unit": "mo", )" + derived(R"("elapsed": {"since": "since", "in": "mo"})")) +
                "," + fact("early", "boolean", formula("%ageMonths < 3 'mo'")));
  auto set = sample.plain(R"({"since": "2026-08-25"})");
  CHECK(sample.say(set, "ageMonths") == "3 months");
  CHECK(sample.say(set, "early") == "no");
  CHECK(sample.say(sample.plain(R"({"since": "2026-08-26"})"), "early") == "yes");
  set = sample.plain(R"({"since": "2026-08"})");
  CHECK(sample.say(set, "ageMonths") == "between 2 and 3 months");
  CHECK(sample.in(set, "early").value.isUnknown());
  CHECK(sample.say(sample.plain(R"({"since": "2020"})"), "years") == "between 5 and 6");
  CHECK(sample.say(sample.plain("{}"), "years") == "unknown: not asked");
  set = sample.plain(R"({"since": "2026"})");
  CHECK(sample.say(set, "ageMonths") == "between 0 and 10 months");
}

TEST_CASE("A date after the screening date is refused where time since it counts") {
  Sample sample(fact("birth", "date") + "," +
                fact("age", "integer", derived(R"("elapsed": {"since": "birth", "in": "a"})")) + "," +
                fact("weeks", "integer", derived(R"("elapsed": {"since": "birth", "in": "wk"})")) + "," +
                fact("due", "date"));
  const auto text = sample.refusedPlain(R"({"birth": "2026-11-26"})");
  CHECK_THAT(text, Contains("birth") && Contains("after the screening date 2026-11-25") &&
                       Contains("facts.json:1:11"));
  CHECK(text.find("after the screening") == text.rfind("after the screening"));
  CHECK_THAT(sample.refusedPlain(R"({"birth": "2027"})"), Contains("after the screening date"));
  CHECK(sample.say(sample.plain(R"({"due": "2027-01-01", "birth": "2026-11-25"})"), "age") == "0");
}

TEST_CASE("A score counts what is true and bounds what is unknown") {
  Sample sample(fact("a", "boolean") + "," + fact("b", "boolean") + "," + fact("c", "boolean") + "," +
                fact("sum", "integer", derived(R"("score": ["a", "b", "c"])")));
  CHECK(sample.say(sample.plain(R"({"a": true, "b": false})"), "sum") == "between 1 and 2");
  CHECK(sample.say(sample.plain(R"({"a": true, "b": false, "c": true})"), "sum") == "2");
}

TEST_CASE("Derived facts of a group are worked out in each repetition") {
  Sample sample(fact("since", "date", member("joint")) + "," +
                    fact("ageMonths", "integer",
                         member("joint") + ", " + derived(R"("elapsed": {"since": "since", "in": "mo"})")) +
                    "," + fact("limit", "integer") + "," +
                    fact("isFresh", "boolean", member("joint") + ", " + formula("%ageMonths < %limit")) +
                    "," + fact("anyFresh", "boolean", summary(R"("any": "%isFresh")")),
                "joint");
  const auto set = sample.plain(R"({"limit": 3, "joint": [{"since": "2026-10-01"}, {"since": "2020"}]})");
  CHECK(sample.say(set, "ageMonths", 0) == "1");
  CHECK(sample.say(set, "isFresh", 0) == "yes");
  CHECK(sample.say(set, "isFresh", 1) == "no");
  CHECK(sample.say(set, "anyFresh") == "yes");
  CHECK(sample.in(set, "anyFresh").source == "derived");
}

TEST_CASE("A derived fact may be given directly, and is contradictory when its inputs disagree") {
  Sample sample(fact("birth", "date") + "," +
                fact("age", "integer", derived(R"("elapsed": {"since": "birth", "in": "a"})")) + "," +
                fact("a", "boolean") + "," + fact("b", "boolean", formula("%a")) + "," +
                fact("w", "quantity", R"("unit": "kg")") + "," +
                fact("twice", "quantity", R"("unit": "kg", )" + formula("%w * 2")) + "," +
                fact("heavy", "boolean", formula("%twice >= 20 'kg'")));
  auto set = sample.plain(R"({"age": 70, "b": true})");
  CHECK(sample.say(set, "age") == "70");
  CHECK(sample.say(set, "b") == "yes");
  CHECK(sample.say(set, "a") == "unknown: not asked");
  set = sample.plain(R"({"age": 70, "birth": "1956"})");
  CHECK(sample.say(set, "age") == "70");
  set = sample.plain(R"({"age": 70, "birth": "1950", "b": true, "a": false})");
  CHECK(sample.say(set, "age") == "unknown: contradictory");
  CHECK(sample.say(set, "b") == "unknown: contradictory");
  CHECK_THAT(sample.asked, Contains("disagrees with the facts it follows from"));
  // Rounding is no disagreement, and decides nothing between the two.
  set = sample.plain(R"({"w": "9.98 kg", "twice": "20 kg"})");
  CHECK(sample.in(set, "twice").reason == UnknownReason::None);
  CHECK(sample.in(set, "heavy").value.isUnknown());
}

TEST_CASE("What keeps a derived fact open leads back to the questions") {
  Sample sample(fact("a", "boolean") + "," + fact("b", "boolean") + "," +
                    fact("c", "boolean", formula("%a or %b")) + "," +
                    fact("d", "boolean", formula("%c and %a")) + "," + fact("x", "boolean", member("joint")) +
                    "," + fact("anyX", "boolean", summary(R"("any": "%x and %a")")),
                "joint");
  const auto set = sample.plain(R"({"b": false, "joint": [{"x": false}, {"x": null}]})");
  const int a = sample.slot("a");
  CHECK(facts::openInputs(set, sample.slot("d")) == std::vector<facts::FactRef>{{a, -1}});
  CHECK(facts::openInputs(set, sample.slot("b")).empty());
  CHECK(facts::openInputs(set, sample.slot("anyX")) ==
        std::vector<facts::FactRef>{{sample.slot("x"), 1}, {a, -1}});
}
