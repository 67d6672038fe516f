#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;
using Catch::Matchers::Contains;

namespace {

const std::string kGivenBy = R"({"url": "https://stile.example/extension/given-by", "valueCode": "carer"})";
const std::string kAnswerDate =
    R"({"url": "https://stile.example/extension/answer-date", "valueDate": "2026-10-01"})";

Sample clinicSample(
    const std::string& heartOffered =
        R"({"valueCoding": {"system": "https://stile.example/option", "code": "stroke", "display": "D"}},)") {
  return Sample(
      fact("pain", "boolean") + "," + fact("painNew", "boolean") + "," +
          fact("weight", "quantity", R"("unit": "kg", "possible": [20, 400], "plausible": [35, 200])") + "," +
          fact("n", "integer") + "," +
          fact("heart", "code", R"("multiple": true, )" + choices("angina stroke none")) + "," +
          fact("side", "code", choices("left right")) + "," + fact("name", "text", member("medicine")) + "," +
          fact("count", "integer", derived(R"("summary": {"group": "medicine", "count": true})")) + "," +
          fact("systolic", "quantity", mmHg() + ", " + member("reading")) + "," +
          fact("mean", "quantity", mmHg() + ", " + derived(R"("mean": {"of": "systolic", "last": 2})")),
      "medicine reading",
      item("pain", "boolean") + "," + item("painNew", "boolean", ifYes("pain")) + "," +
          item("weight", "quantity", units("kg", "[lb_av]")) + "," + item("n", "integer") + "," +
          item("heart", "open-choice",
               R"("repeats": true, "answerOption": [)" + heartOffered + option("angina") + "," +
                   option("none", true) + "]") +
          "," +
          item("side", "open-choice", "\"answerOption\": [" + option("left") + "," + option("right") + "]") +
          "," + item("medicine", "group", R"("repeats": true, "item": [)" + item("name", "string") + "]") +
          "," +
          item("reading", "group",
               R"("repeats": true, "item": [)" + item("systolic", "quantity", units("mm[Hg]")) + "]"));
}

std::string yes(const std::string& id) {
  return answer(id, R"({"valueBoolean": true})");
}
std::string no(const std::string& id) {
  return answer(id, R"({"valueBoolean": false})");
}
std::string medicine(const std::string& name) {
  return group("medicine", answer("name", R"({"valueString": ")" + name + "\"}"));
}
std::string reading(const std::string& value) {
  return group("reading", answer("systolic", "{\"valueQuantity\": " + quantity(value, "mm[Hg]") + "}"));
}
std::string words(const std::string& text) {
  return R"({"valueString": ")" + text + "\"}";
}

}  // namespace

TEST_CASE("Answers become facts with their date, giver and source") {
  auto sample = clinicSample();
  const auto set = sample.respond(
      {responseText(yes("pain") + "," +
                        answer("weight", "{\"valueQuantity\": " + quantity("154", "[lb_av]") + "}",
                               "\"extension\": [" + kGivenBy + "," + kAnswerDate + "]") +
                        "," + answer("n", R"({"valueInteger": 3})"),
                    dated("2026-11-20"))});
  CHECK(sample.say(set, "pain") == "yes");
  CHECK(sample.in(set, "pain").date->toText() == "2026-11-20");
  CHECK(sample.in(set, "pain").givenBy == "client");
  CHECK(sample.in(set, "pain").source == "t: pain");
  CHECK(sample.say(set, "weight") == "69.9 kg (given as 154 lb)");
  CHECK(sample.in(set, "weight").givenBy == "carer");
  CHECK(sample.in(set, "weight").date->toText() == "2026-10-01");
  CHECK(sample.say(set, "n") == "3");
  CHECK(sample.in(set, "side").reason == UnknownReason::NotAsked);
}

TEST_CASE("A stated absence is the reason") {
  auto sample = clinicSample();
  const auto set = sample.respond({responseText(
      answer("pain", "", absent("asked-unknown")) + "," + answer("n", "", absent("asked-declined")) + "," +
          answer("weight", "", absent("unknown")) + "," + answer("side", "", absent("not-asked")),
      dated("2026-11-25"))});
  CHECK(sample.in(set, "pain").reason == UnknownReason::NotSure);
  CHECK(sample.in(set, "n").reason == UnknownReason::Declined);
  CHECK(sample.in(set, "weight").reason == UnknownReason::NotAnswered);
  CHECK(sample.in(set, "side").reason == UnknownReason::NotAsked);
}

TEST_CASE("Options not chosen are false only without words and without not sure") {
  auto sample = clinicSample();
  auto set = sample.respond({responseText(answer("heart", coding("angina")), dated("2026-11-25"))});
  CHECK(sample.say(set, "heartAngina") == "yes");
  CHECK(sample.say(set, "heartStroke") == "no");
  set = sample.respond({responseText(answer("heart", coding("none")), dated("2026-11-25"))});
  CHECK(sample.say(set, "heartAngina") == "no");
  CHECK(sample.say(set, "heartNone") == "yes");
  set = sample.respond(
      {responseText(answer("heart", coding("angina") + "," + words("something rare")), dated("2026-11-25"))});
  CHECK(sample.say(set, "heartAngina") == "yes");
  CHECK(sample.say(set, "heartStroke") == "unknown: to be resolved");
  CHECK_THAT(sample.asked, Contains("was answered in words: something rare"));
  set = sample.respond(
      {responseText(answer("heart", coding("angina"), absent("asked-unknown")), dated("2026-11-25"))});
  CHECK(sample.say(set, "heartAngina") == "yes");
  CHECK(sample.say(set, "heartStroke") == "unknown: not sure");
  set = sample.respond({responseText(answer("heart", "", absent("asked-declined")), dated("2026-11-25"))});
  CHECK(sample.say(set, "heartStroke") == "unknown: declined");
}

TEST_CASE("An option that was not offered is unknown, even after none of these") {
  auto sample = clinicSample("");
  const auto set = sample.respond({responseText(answer("heart", coding("none")), dated("2026-11-25"))});
  CHECK(sample.say(set, "heartAngina") == "no");
  CHECK(sample.say(set, "heartStroke") == "unknown: not asked");
}

TEST_CASE("After an older version of the form, options not chosen wait to be confirmed") {
  auto sample = clinicSample();
  std::string text = responseText(answer("heart", coding("angina")), dated("2026-11-25"));
  const std::string url = "questionnaire/t";
  text.insert(text.find(url) + url.size(), "|2026.10");
  const auto set = sample.respond({text});
  CHECK(sample.say(set, "heartAngina") == "yes");
  CHECK(sample.say(set, "heartStroke") == "unknown: not confirmed");
}

TEST_CASE("Words in place of one option are for a clinician to resolve") {
  auto sample = clinicSample();
  const auto set = sample.respond({responseText(answer("side", words("the middle")), dated("2026-11-25"))});
  CHECK(sample.say(set, "side") == "unknown: to be resolved");
  CHECK(sample.in(set, "side").written == "the middle");
}

TEST_CASE("The newest answer to a question counts") {
  auto sample = clinicSample();
  const auto older =
      responseText(no("pain") + "," + answer("n", R"({"valueInteger": 1})"), dated("2026-11-01"));
  const auto newer = responseText(yes("pain"), dated("2026-11-20"));
  for (const auto& order : {std::vector{older, newer}, std::vector{newer, older}}) {
    const auto set = sample.respond(order);
    CHECK(sample.say(set, "pain") == "yes");
    CHECK(sample.say(set, "n") == "1");
    CHECK(sample.asked.empty());
  }
  // Asked again and not answered is no longer what was said before.
  auto set =
      sample.respond({older, responseText(answer("pain", "", absent("unknown")), dated("2026-11-20"))});
  CHECK(sample.say(set, "pain") == "unknown: not answered");
  set = sample.respond({older, responseText(answer("pain", "", absent("not-asked")), dated("2026-11-20"))});
  CHECK(sample.say(set, "pain") == "no");
}

TEST_CASE("Two values for one occasion are contradictory and asked back") {
  auto sample = clinicSample();
  auto set = sample.respond(
      {responseText(no("pain"), dated("2026-11-20")), responseText(yes("pain"), dated("2026-11-20"))});
  CHECK(sample.say(set, "pain") == "unknown: contradictory");
  CHECK_THAT(sample.asked, Contains("two different answers"));
  set = sample.respond(
      {responseText(yes("pain"), dated("2026-11-20")), responseText(yes("pain"), dated("2026-11-20"))});
  CHECK(sample.say(set, "pain") == "yes");
  set = sample.respond({responseText(yes("pain"), dated("2026-11-20")),
                        responseText(answer("pain", "", absent("asked-unknown")), dated("2026-11-20"))});
  CHECK(sample.say(set, "pain") == "unknown: not sure");
}

TEST_CASE("A newer answer supersedes what hung on the older one") {
  auto sample = clinicSample();
  const auto older = responseText(yes("pain") + "," + yes("painNew"), dated("2026-11-01"));
  auto set = sample.respond({older, responseText(no("pain"), dated("2026-11-20"))});
  CHECK(sample.in(set, "painNew").reason == UnknownReason::NotApplicable);
  CHECK(sample.asked.empty());
  set =
      sample.respond({older, responseText(answer("pain", "", absent("asked-unknown")), dated("2026-11-20"))});
  CHECK(sample.say(set, "painNew") == "unknown: not confirmed");
  set = sample.respond({older, responseText(yes("pain"), dated("2026-11-20"))});
  CHECK(sample.say(set, "painNew") == "yes");
  set = sample.respond({responseText(no("pain") + "," + yes("painNew"), dated("2026-11-20"))});
  CHECK(sample.say(set, "painNew") == "unknown: contradictory");
}

TEST_CASE("Of lists the newest counts; a series takes all readings") {
  auto sample = clinicSample();
  const auto older =
      responseText(medicine("a") + "," + medicine("b") + "," + reading("150"), dated("2026-11-01"));
  const auto newer = responseText(medicine("c") + "," + reading("140"), dated("2026-11-20"));
  const auto set = sample.respond({newer, older});
  CHECK(set.repetitions("medicine") == 1);
  CHECK(sample.say(set, "name", 0) == "c");
  CHECK(sample.say(set, "count") == "1");
  CHECK(set.repetitions("reading") == 2);
  CHECK(sample.say(set, "mean") == "145 mmHg");
  CHECK(sample.in(set, "mean").date->toText() == "2026-11-20");
}

TEST_CASE("A group without a repetition or with one that was not asked is unanswered") {
  auto sample = clinicSample();
  auto set = sample.respond({responseText(yes("pain"), dated("2026-11-20"))});
  CHECK(set.isOpenEnded("medicine"));
  CHECK(sample.say(set, "count") == "at least 0");
  set = sample.respond(
      {responseText(group("medicine", answer("name", "", absent("not-asked"))), dated("2026-11-20"))});
  CHECK(set.isOpenEnded("medicine"));
  set = sample.respond(
      {responseText(group("medicine", answer("name", "", absent("unknown"))), dated("2026-11-20"))});
  CHECK_FALSE(set.isOpenEnded("medicine"));
  CHECK(sample.say(set, "count") == "1");
}

TEST_CASE("Impossible values and dates to come are refused, unusual ones asked back") {
  auto sample = clinicSample();
  const auto issues = [&](const std::string& text) {
    base::Issues found;
    facts::factsFromResponses(sample.dictionary, sample.forms, {accepted(text, sample.forms)}, kToday, found);
    return textOf(found);
  };
  const auto weight = [](const std::string& kg) {
    return answer("weight", "{\"valueQuantity\": " + quantity(kg, "kg") + "}");
  };
  CHECK_THAT(issues(responseText(weight("401"), dated("2026-11-25"))),
             Contains("outside the possible range"));
  CHECK_THAT(issues(responseText(weight("201"), dated("2026-11-25"))), Contains("is unusual"));
  CHECK(issues(responseText(weight("200"), dated("2026-11-25"))).empty());
  CHECK_THAT(issues(responseText(yes("pain"), dated("2026-11-26"))), Contains("after the screening date"));
}
