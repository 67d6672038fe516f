#include "questionnaire/form_checker.h"

#include <catch2/catch.hpp>

#include "sample_form.h"

using namespace stile;
using namespace stile::sample;
using Catch::Contains;

namespace {

const std::string kQuestions =
    item("pain", "boolean") + "," + item("falls", "integer") + "," + item("weight", "decimal") + "," +
    item("since", "date") + "," + item("name", "string") + "," +
    item("place", "choice", "\"answerOption\": [" + option("hip") + "," + option("knee") + "]") + "," +
    item("pressure", "quantity", units("mm[Hg]", "kPa"));

std::string dependent(const std::string& question, const std::string& op, const std::string& answer) {
  return kQuestions + "," + item("x", "boolean", enableWhen(when(question, op, answer)));
}

const std::string kHipOfSystem = R"("answerCoding": {"system": "https://stile.example/option", "code": "hip"})";

}  // namespace

TEST_CASE("Conditions that fit their question are accepted") {
  loaded(dependent("pain", "=", "\"answerBoolean\": true"));
  loaded(dependent("pain", "exists", "\"answerBoolean\": false"));
  loaded(dependent("place", "exists", "\"answerBoolean\": true"));
  loaded(dependent("falls", ">=", "\"answerInteger\": 2"));
  loaded(dependent("weight", "<", "\"answerDecimal\": 2.5"));
  loaded(dependent("since", ">", "\"answerDate\": \"2026-01\""));
  loaded(dependent("name", "!=", "\"answerString\": \"Ann\""));
  loaded(dependent("place", "=", kHipOfSystem));
  loaded(dependent("pressure", ">", "\"answerQuantity\": " + quantity("18", "kPa")));
}

TEST_CASE("A condition names an earlier question") {
  CHECK_THAT(issuesOf(dependent("pian", "=", "\"answerBoolean\": true")), Contains("did you mean \"pain\"?"));
  CHECK_THAT(issuesOf(item("x", "boolean", enableWhen(when("x", "=", "\"answerBoolean\": true")))),
             Contains("comes later in the form t"));
  CHECK_THAT(
      issuesOf(item("someNote", "display") + "," +
               item("x", "boolean", enableWhen(when("someNote", "exists", "\"answerBoolean\": true")))),
      Contains("which is no question"));
}

TEST_CASE("The answer compared with has the type of the question") {
  CHECK_THAT(issuesOf(dependent("pain", "=", "\"answerInteger\": 1")),
             Contains("compare with answerBoolean"));
  CHECK_THAT(issuesOf(dependent("falls", "=", "\"answerDecimal\": 1.5")),
             Contains("compare with answerInteger"));
  CHECK_THAT(issuesOf(dependent("place", "=", "\"answerString\": \"hip\"")),
             Contains("compare with answerCoding"));
  CHECK_THAT(issuesOf(dependent("pressure", ">", "\"answerInteger\": 140")),
             Contains("compare with answerQuantity"));
  CHECK_THAT(issuesOf(dependent("pain", "exists", "\"answerInteger\": 1")),
             Contains("exists needs answerBoolean"));
  CHECK_THAT(issuesOf(dependent("pain", ">", "\"answerBoolean\": true")), Contains("have no order"));
  CHECK_THAT(issuesOf(dependent("since", ">", "\"answerDate\": \"2026-02-30\"")), Contains("not a date"));
}

TEST_CASE("The option compared with is offered, the unit fits") {
  CHECK_THAT(
      issuesOf(dependent("place", "=",
                         R"("answerCoding": {"system": "https://stile.example/option", "code": "kne"})")),
      Contains("\"kne\" is no option of \"place\"; did you mean \"knee\"?"));
  CHECK_THAT(
      issuesOf(dependent("place", "=", R"("answerCoding": {"system": "http://loinc.org", "code": "hip"})")),
      Contains("is of the system https://stile.example/option"));
  CHECK_THAT(issuesOf(dependent("pressure", ">", "\"answerQuantity\": " + quantity("18", "kg"))),
             Contains("the unit kg cannot be compared with mm[Hg]"));
}

TEST_CASE("Two conditions need a behaviour, and a condition one answer") {
  const std::string two =
      when("pain", "=", "\"answerBoolean\": true") + "," + when("falls", "=", "\"answerInteger\": 1");
  CHECK_THAT(issuesOf(kQuestions + "," + item("x", "boolean", enableWhen(two))),
             Contains("need an enableBehavior"));
  loaded(kQuestions + "," + item("x", "boolean", enableWhen(two) + ", \"enableBehavior\": \"any\""));
  CHECK_THAT(
      issuesOf(kQuestions + "," + item("x", "boolean", enableWhen(two) + ", \"enableBehavior\": \"some\"")),
      Contains("must be all or any"));
  CHECK_THAT(issuesOf(dependent("pain", "=", "\"answerBoolean\": true, \"answerInteger\": 1")),
             Contains("more than one answer"));
  CHECK_THAT(issuesOf(dependent("pain", "==", "\"answerBoolean\": true")), Contains("is no operator"));
}

TEST_CASE("A condition does not look into a repeating group from outside") {
  const std::string group =
      item("fallGroup", "group",
           "\"repeats\": true, \"item\": [" + item("hurt", "boolean") + "," +
               item("where", "string", enableWhen(when("hurt", "=", "\"answerBoolean\": true"))) + "]");
  loaded(group);
  CHECK_THAT(
      issuesOf(group + "," + item("x", "boolean", enableWhen(when("hurt", "=", "\"answerBoolean\": true")))),
      Contains("into the repeating group \"fallGroup\" from outside"));
}
