#include "answers/draft.h"

#include "validation_sample.h"

using namespace stile;
using namespace stile::sample;
using answers::Draft;
using answers::DraftItem;
using Catch::Contains;

namespace {

const std::string kNow = "2026-11-25T10:00:00+00:00";

/// The linkIds of the questions that apply, each with its number of answers.
std::string shown(const Draft& draft) {
  std::string list;
  for (const DraftItem* question : draft.questions()) {
    list += question->item->linkId + std::to_string(question->answers.size()) + " ";
  }
  return list;
}

/// The n-th question with this linkId.
const DraftItem& at(const Draft& draft, const std::string& linkId, int n = 0) {
  for (const DraftItem* question : draft.questions()) {
    if (question->item->linkId == linkId && n-- == 0) return *question;
  }
  FAIL("the question " + linkId + " does not apply");
  throw 0;
}

std::string valueOf(const Draft& draft, const std::string& linkId, int n = 0) {
  const auto& answers = at(draft, linkId, n).answers;
  return answers.empty() ? "" : answers.front().value.json;
}

const answers::CalculatedAnswer kYes{"Boolean", "true", {}};
const answers::CalculatedAnswer kNo{"Boolean", "false", {}};

answers::CalculatedAnswer whole(const std::string& digits) {
  return {"Integer", digits, {}};
}

std::string calculated(const std::string& expression) {
  return extensions(sdcExtension("calculatedExpression", fhirPath(expression)));
}

std::string valueAt(const std::string& linkId) {
  return "%resource.item.where(linkId='" + linkId + "').answer.value";
}

}  // namespace

TEST_CASE("A draft shows what applies, and keeps answers that stop to apply for later") {
  const auto forms = loadedAny(item("a", "boolean") + "," +
                               item("g", "group",
                                    enableWhen(when("a", "=", "\"answerBoolean\": true")) + ", \"item\": [" +
                                        item("b", "integer") + "]"));
  Draft draft(*forms.forms().front(), kNow);
  CHECK(shown(draft) == "a0 ");
  draft.answer(at(draft, "a"), {kYes});
  CHECK(shown(draft) == "a1 b0 ");
  draft.answer(at(draft, "b"), {whole("3")});
  draft.answer(at(draft, "a"), {kNo});
  CHECK(shown(draft) == "a1 ");
  CHECK_THAT(draft.toJson("in-progress"), !Contains("\"b\""));
  draft.answer(at(draft, "a"), {kYes});
  CHECK(shown(draft) == "a1 b1 ");
  CHECK_THAT(draft.toJson("in-progress"), Contains("\"valueInteger\": 3"));
}

TEST_CASE("Items under an answer belong to that answer") {
  const auto forms =
      loadedAny(item("q", "string", "\"repeats\": true, \"item\": [" + item("n", "integer") + "]"));
  Draft draft(*forms.forms().front(), kNow);
  CHECK(shown(draft) == "q0 ");
  draft.answer(at(draft, "q"), {{"String", "\"x\"", {}}, {"String", "\"y\"", {}}});
  CHECK(shown(draft) == "q2 n0 n0 ");
  draft.answer(at(draft, "n", 1), {whole("3")});
  draft.answer(at(draft, "q"), {{"String", "\"x\"", {}}, {"String", "\"z\"", {}}, {"String", "\"w\"", {}}});
  CHECK(shown(draft) == "q3 n0 n1 n0 ");
}

TEST_CASE("Groups repeat within groups that repeat, up to the most allowed") {
  const std::string inner = item("s", "group",
                                 "\"repeats\": true, \"item\": [" + item("a", "integer") + "], " +
                                     extensions(extension("questionnaire-maxOccurs", "\"valueInteger\": 2")));
  const auto forms = loadedAny(item("r", "group", "\"repeats\": true, \"item\": [" + inner + "]"));
  Draft draft(*forms.forms().front(), kNow);
  const auto groups = draft.repeatingGroups();
  REQUIRE(groups.size() == 2);
  CHECK(draft.repeat(*groups[1]));
  CHECK(shown(draft) == "a0 a0 ");
  CHECK_FALSE(draft.repeat(*draft.repeatingGroups()[1]));
  CHECK(draft.repeat(*draft.repeatingGroups()[0]));
  CHECK(shown(draft) == "a0 a0 a0 ");
  draft.answer(at(draft, "a", 1), {whole("2")});
  draft.answer(at(draft, "a", 2), {whole("3")});
  draft.remove(*draft.repeatingGroups().back());
  CHECK(shown(draft) == "a0 a1 a0 ");
}

TEST_CASE("Initial values, selected options and initial expressions stand there from the start") {
  const std::string chosen = R"({"initialSelected": true, "valueCoding": {"code": "x"}})";
  const auto forms = loadedAny(
      item("a", "integer", "\"initial\": [{\"valueInteger\": 3}]") + "," +
      item("b", "choice", "\"answerOption\": [" + option("hip") + "," + chosen + "]") + "," +
      item("c", "date", extensions(sdcExtension("initialExpression", fhirPath("today() + 7 days")))) + "," +
      item("d", "string", extensions(sdcExtension("initialExpression", fhirPath("%patient.name.family")))));
  const Draft draft(*forms.forms().front(), kNow);
  CHECK(valueOf(draft, "a") == "3");
  CHECK_THAT(valueOf(draft, "b"), Contains("\"x\""));
  CHECK(valueOf(draft, "c") == "\"2026-12-02\"");
  CHECK(valueOf(draft, "d").empty());
}

TEST_CASE("Calculated values follow their answers through each other, and what depends on them") {
  const auto forms =
      loadedAny(item("a", "integer") + "," + item("c", "integer", calculated(valueAt("b") + " * 2")) + "," +
                item("b", "integer", calculated(valueAt("a") + " + 1")) + "," +
                item("d", "boolean", enableWhen(when("c", ">", "\"answerInteger\": 6"))));
  Draft draft(*forms.forms().front(), kNow);
  CHECK(shown(draft) == "a0 c0 b0 ");
  draft.answer(at(draft, "a"), {whole("2")});
  CHECK(valueOf(draft, "b") == "3");
  CHECK(valueOf(draft, "c") == "6");
  draft.answer(at(draft, "a"), {whole("3")});
  CHECK(shown(draft) == "a1 c1 b1 d0 ");
  CHECK(draft.unsettled().empty());
}

TEST_CASE("A calculated value that the user changed stays until it is emptied") {
  const auto forms =
      loadedAny(item("a", "integer") + "," + item("b", "integer", calculated(valueAt("a") + " + 1")));
  Draft draft(*forms.forms().front(), kNow);
  draft.answer(at(draft, "a"), {whole("2")});
  draft.answer(at(draft, "b"), {whole("9")});
  draft.answer(at(draft, "a"), {whole("4")});
  CHECK(valueOf(draft, "b") == "9");
  draft.answer(at(draft, "b"), {});
  CHECK(valueOf(draft, "b") == "5");
}

TEST_CASE("Calculations in a circle are found, named, and keep the response from being complete") {
  const auto forms = loadedAny(
      item("a", "integer", calculated("iif(" + valueAt("b") + ".exists(), " + valueAt("b") + ", 0) + 1")) +
      "," +
      item("b", "integer", calculated("iif(" + valueAt("a") + ".exists(), " + valueAt("a") + ", 0) + 1")));
  Draft draft(*forms.forms().front(), kNow);
  CHECK_FALSE(draft.unsettled().empty());
  base::Issues issues;
  CHECK_FALSE(draft.complete(issues));
  REQUIRE(issues.hasErrors());
  CHECK_THAT(base::toText(issues.all().front()), Contains("it depends on itself"));
  // The user's own value breaks the circle.
  draft.answer(at(draft, "a"), {whole("1")});
  CHECK(draft.unsettled().empty());
  CHECK(valueOf(draft, "b") == "2");
}

TEST_CASE("A response is completed only if all is decided and the form is satisfied") {
  const auto forms = loadedAny(
      item("a", "integer", "\"required\": true") + "," +
      item("b", "boolean", extensions(sdcExtension("enableWhenExpression", fhirPath("%patient.active")))));
  Draft open(*forms.forms().front(), kNow);
  CHECK(open.undecided().size() == 1);
  base::Issues issues;
  CHECK_FALSE(open.complete(issues));
  CHECK_THAT(base::toText(issues.all().front()), Contains("whether \"b\" applies cannot be decided"));

  const auto simple = loadedAny(item("a", "integer", "\"required\": true"));
  Draft draft(*simple.forms().front(), kNow);
  base::Issues missing;
  CHECK_FALSE(draft.complete(missing));
  CHECK_THAT(base::toText(missing.all().front()), Contains("\"a\" is not answered"));
  draft.setAbsent(at(draft, "a"), "asked-declined");
  base::Issues none;
  const auto text = draft.complete(none);
  REQUIRE(text);
  CHECK_THAT(*text, Contains("\"status\": \"completed\"") && Contains("asked-declined"));
  CHECK(problemsOf(simple, *text).empty());
}

TEST_CASE("Answers are told by their text, options, units and types") {
  const auto forms = loadedAny(
      item("a", "quantity",
           units("kg").substr(0, units("kg").size() - 1) + "," +
               sdcExtension("calculatedExpression", fhirPath("2.5")) + "]") +
      "," + item("b", "choice", "\"answerOption\": [" + option("hip") + "], " + calculated("'hip'")) + "," +
      item("c", "string", calculated("'x' + 1.toString()")) + "," + item("d", "decimal", calculated("1")) +
      "," + item("e", "boolean", calculated("1 = 1")) + "," + item("f", "integer", calculated("'x'")) + "," +
      item("g", "dateTime", calculated("now()")));
  const Draft draft(*forms.forms().front(), kNow);
  CHECK_THAT(valueOf(draft, "a"), Contains("2.5") && Contains("\"kg\""));
  CHECK_THAT(valueOf(draft, "b"), Contains("https://stile.example/option"));
  CHECK(valueOf(draft, "c") == "\"x1\"");
  CHECK(valueOf(draft, "d") == "1");
  CHECK(valueOf(draft, "e") == "true");
  CHECK(valueOf(draft, "f").empty());
  CHECK_THAT(valueOf(draft, "g"), Contains("2026-11-25T10:00:00"));
}
