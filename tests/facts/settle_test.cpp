#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using Catch::Matchers::Contains;

namespace {

std::string offered(const std::string& codes) {
  std::string options;
  std::size_t start = 0;
  while (start < codes.size()) {
    const std::size_t end = std::min(codes.find(' ', start), codes.size());
    const std::string code = codes.substr(start, end - start);
    options += (options.empty() ? "" : ", ") + option(code, code == "none");
    start = end + 1;
  }
  return "\"answerOption\": [" + options + "]";
}

/// pain -> painNew -> painWeeks, painKind, painWhere, painSince; medicines behind a question.
Sample painSample() {
  return Sample(
      fact("pain", "boolean") + "," + fact("painNew", "boolean") + "," + fact("painWeeks", "integer") + "," +
          fact("painKind", "code", choices("dull sharp") + R"(, "whenNotApplicable": "dull")") + "," +
          fact("painWhere", "code", R"("multiple": true, )" + choices("hip knee none")) + "," +
          fact("painSince", "date") + "," +
          fact("painDays", "integer", derived(R"("elapsed": {"since": "painSince", "in": "d"})")) + "," +
          fact("takesAny", "boolean") + "," + fact("name", "text", member("medicine")) + "," +
          fact("isNew", "boolean", member("medicine")) + "," +
          fact("isNewSure", "boolean", member("medicine")) + "," +
          fact("anyNew", "boolean", derived(R"("summary": {"group": "medicine", "any": "%isNew"})")) + "," +
          fact("long", "boolean", formula("%painWeeks > 6")) + "," +
          fact("notLong", "boolean", formula("%painWeeks <= 6")) + "," +
          fact("recent", "boolean", formula("%painDays < 30 or %painSince > @2026-11-01")),
      "medicine",
      item("pain", "boolean") + "," + item("painNew", "boolean", ifYes("pain")) + "," +
          item("painWeeks", "integer", ifYes("painNew")) + "," +
          item("painKind", "choice", offered("dull sharp") + ", " + ifYes("pain")) + "," +
          item("painWhere", "choice",
               R"("repeats": true, )" + offered("hip knee none") + ", " + ifYes("pain")) +
          "," + item("painSince", "date", ifYes("pain")) + "," + item("takesAny", "boolean") + "," +
          item("medicine", "group",
               R"("repeats": true, )" + ifYes("takesAny") + ", \"item\": [" + item("name", "string") + "," +
                   item("isNew", "boolean") + "," + item("isNewSure", "boolean", ifYes("isNew")) + "]"));
}

}  // namespace

TEST_CASE("A question that certainly does not apply gives its fact the value for that") {
  auto sample = painSample();
  const auto set = sample.plain(R"({"pain": false, "takesAny": false})");
  for (const char* id :
       {"painNew", "painWeeks", "painKind", "painWhere", "painWhereHip", "painSince", "painDays"}) {
    CAPTURE(id);
    CHECK(sample.in(set, id).reason == UnknownReason::NotApplicable);
  }
  CHECK(sample.say(set, "painNew") == "no");
  CHECK(sample.say(set, "painKind") == "Words for dull");
  CHECK(sample.say(set, "painWhereHip") == "no");
  CHECK(sample.say(set, "painWhereNone") == "yes");
  CHECK(sample.say(set, "painWeeks") == "does not apply");
  CHECK(sample.say(set, "long") == "no");
  CHECK(sample.say(set, "notLong") == "no");
  CHECK(sample.say(set, "recent") == "no");
  CHECK(set.repetitions("medicine") == 0);
  CHECK_FALSE(set.isOpenEnded("medicine"));
  CHECK(sample.say(set, "anyNew") == "no");
  CHECK(sample.asked.empty());
}

TEST_CASE("While it is unknown whether a question applies its fact is unknown") {
  auto sample = painSample();
  auto set = sample.plain(R"({"pain": {"unknown": "notSure"}})");
  CHECK(sample.say(set, "painNew") == "unknown: not asked");
  CHECK(sample.in(set, "long").value.isUnknown());
  CHECK(set.isOpenEnded("medicine"));
  set = sample.plain(R"({"pain": true})");
  CHECK(sample.say(set, "painNew") == "unknown: not asked");
  CHECK(sample.in(set, "painWeeks").value.isUnknown());
  set = sample.plain(R"({"pain": true, "painNew": false})");
  CHECK(sample.say(set, "painWeeks") == "does not apply");
  // What was said stands, even where nobody asked what it hangs on.
  CHECK(sample.say(sample.plain(R"({"painNew": true, "painWeeks": 8})"), "long") == "yes");
}

TEST_CASE("An answer to a question that does not apply is contradictory, never not applicable") {
  auto sample = painSample();
  auto set = sample.plain(R"({"pain": false, "painWeeks": 8, "painNew": true, "painWhere": ["hip"]})");
  CHECK(sample.say(set, "painNew") == "unknown: contradictory");
  CHECK(sample.say(set, "painWhereHip") == "unknown: contradictory");
  CHECK(sample.say(set, "painWhereKnee") == "unknown: contradictory");
  CHECK_THAT(sample.asked,
             Contains("painNew: \"painNew\" was answered, but does not apply") && Contains("facts.json:1:"));
  // What hangs on the contradictory answer is open again.
  CHECK(sample.say(set, "painWeeks") == "8");
  set = sample.plain(R"({"takesAny": false, "medicine": [{"name": "a", "isNew": false}, {"name": "b"}]})");
  CHECK(set.repetitions("medicine") == 2);
  CHECK(sample.say(set, "name", 0) == "unknown: contradictory");
  CHECK(sample.say(set, "isNew", 1) == "unknown: contradictory");
  CHECK(sample.in(set, "anyNew").value.isUnknown());
  CHECK_THAT(sample.asked, Contains("medicine: \"Group\" was answered, but does not apply"));
}

TEST_CASE("An answer that says no more than does not apply is noted and changes nothing") {
  auto sample = painSample();
  const auto set =
      sample.plain(R"({"pain": false, "painNew": false, "painKind": "dull", "painWhere": ["none"]})");
  CHECK(sample.say(set, "painNew") == "no");
  CHECK(sample.in(set, "painNew").reason == UnknownReason::None);
  CHECK(sample.say(set, "painKind") == "Words for dull");
  CHECK(sample.say(set, "painWhereHip") == "no");
  CHECK_THAT(sample.asked, Contains("the answer changes nothing"));
}

TEST_CASE("Enablement inside a group looks at its own repetition") {
  auto sample = painSample();
  const auto set = sample.plain(R"({"takesAny": true, "medicine": [{"isNew": true}, {"isNew": false}, {}]})");
  CHECK(sample.say(set, "isNewSure", 0) == "unknown: not asked");
  CHECK(sample.say(set, "isNewSure", 1) == "no");
  CHECK(sample.in(set, "isNewSure", 1).reason == UnknownReason::NotApplicable);
  CHECK(sample.in(set, "isNewSure", 2).value.isUnknown());
}

TEST_CASE("Settling again after a change gives what settling once would have given") {
  auto sample = painSample();
  auto set = sample.plain(R"({"pain": false, "takesAny": false})");
  set.give(sample.slot("pain"), -1, expression::Value::boolean(true), kToday);
  set.forget(sample.slot("takesAny"), -1, UnknownReason::NotSure);
  base::Issues issues;
  facts::settle(set, sample.forms, kToday, issues);
  const auto once = sample.plain(R"({"pain": true, "takesAny": {"unknown": "notSure"}})");
  for (int slot = 0; slot < sample.dictionary.size(); ++slot) {
    CAPTURE(sample.dictionary.at(slot).id);
    CHECK(set.at(slot).value == once.at(slot).value);
    CHECK(set.at(slot).reason == once.at(slot).reason);
  }
  CHECK(set.repetitions("medicine") == 1);
  CHECK(set.isOpenEnded("medicine"));
}

TEST_CASE("A question that applies in one of two forms may apply") {
  const auto forms = loaded(
      Files{{"a.json", formText(item("pain", "boolean") + "," + item("painNew", "boolean", ifYes("pain")) +
                                    "," + item("deep", "boolean", ifYes("painNew")),
                                "a")},
            {"b.json", formText(item("pain", "boolean") + "," + item("painNew", "boolean") + "," +
                                    item("deep", "boolean", ifYes("painNew")),
                                "b")}});
  Sample sample(fact("pain", "boolean") + "," + fact("painNew", "boolean") + "," + fact("deep", "boolean"));
  sample.forms = forms;
  auto set = sample.plain(R"({"pain": false})");
  CHECK(sample.say(set, "painNew") == "unknown: not asked");
  CHECK(sample.say(set, "deep") == "unknown: not asked");
  set.setFormsAnswered({"a"});
  base::Issues issues;
  facts::settle(set, sample.forms, kToday, issues);
  CHECK(sample.say(set, "painNew") == "no");
  CHECK(sample.say(set, "deep") == "no");
}

TEST_CASE("A chain of questions settles even where two forms ask it in different order") {
  const std::string start = item("one", "boolean") + ",";
  const std::string chain =
      item("two", "boolean", ifYes("one")) + "," + item("three", "boolean", ifYes("two"));
  const auto forms =
      loaded(Files{{"a.json", formText(start + item("four", "boolean", ifYes("one")), "a")},
                   {"b.json", formText(start + chain + "," + item("four", "boolean", ifYes("three")), "b")}});
  Sample sample(fact("one", "boolean") + "," + fact("two", "boolean") + "," + fact("three", "boolean") + "," +
                fact("four", "boolean"));
  sample.forms = forms;
  const auto set = sample.plain(R"({"one": false})");
  for (const char* id : {"two", "three", "four"})
    CHECK(sample.in(set, id).reason == UnknownReason::NotApplicable);
}

TEST_CASE("A condition may look at a derived fact and at a multiple choice") {
  Sample sample(
      fact("n", "integer") + "," + fact("many", "boolean", formula("%n > 3")) + "," +
          fact("more", "boolean") + "," +
          fact("heart", "code", R"("multiple": true, )" + choices("angina none")) + "," +
          fact("anginaNew", "boolean"),
      {},
      item("n", "integer") + "," + item("many", "boolean") + "," + item("more", "boolean", ifYes("many")) +
          "," + item("heart", "choice", R"("repeats": true, )" + offered("angina none")) + "," +
          item("anginaNew", "boolean",
               enableWhen(
                   when("heart", "=",
                        R"("answerCoding": {"system": "https://stile.example/option", "code": "angina"})"))));
  auto set = sample.plain(R"({"n": 2, "heart": ["none"]})");
  CHECK(sample.in(set, "more").reason == UnknownReason::NotApplicable);
  CHECK(sample.in(set, "anginaNew").reason == UnknownReason::NotApplicable);
  set = sample.plain(R"({"n": 4, "heartAngina": false})");
  CHECK(sample.in(set, "more").reason == UnknownReason::NotAsked);
  CHECK(sample.in(set, "anginaNew").reason == UnknownReason::NotAsked);
  set = sample.plain(R"({"heartAngina": false, "heartNone": true})");
  CHECK(sample.in(set, "anginaNew").reason == UnknownReason::NotApplicable);
}

TEST_CASE("An answer that is too old to count cannot disable a question") {
  Sample sample(
      fact("pain", "boolean", R"("freshFor": {"value": 1, "unit": "wk"})") + "," + fact("painNew", "boolean"),
      {}, item("pain", "boolean") + "," + item("painNew", "boolean", ifYes("pain")));
  CHECK(sample.say(sample.plain(R"({"pain": false})"), "painNew") == "no");
  CHECK(sample.say(sample.plain(R"({"pain": {"value": false, "date": "2026-11-01"}})"), "painNew") ==
        "unknown: not asked");
}
