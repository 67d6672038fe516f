#include "answers/validate_response.h"

#include "validation_sample.h"

using namespace stile;
using namespace stile::sample;
using Catch::Contains;

namespace {

const std::string kYes = R"({"valueBoolean": true})";
const std::string kNo = R"({"valueBoolean": false})";

std::string repeating(const std::string& linkId, const std::string& items, const std::string& more = {}) {
  return item(linkId, "group", "\"repeats\": true, " + more + "\"item\": [" + items + "]");
}

}  // namespace

TEST_CASE("A problem names its path, its place and its reason") {
  const auto forms = loadedAny(repeating("g", item("a", "integer")));
  base::Issues issues;
  const auto document =
      json::Document::parse(responseTo(group("g", answered("a", R"({"valueInteger": 1})")) + ",\n" +
                                       group("g", answered("a", R"({"valueString": "x"})"))),
                            "r.json", issues);
  const auto validation = answers::validateResponse(document->root(), forms);
  REQUIRE(validation.problems.size() == 1);
  CHECK(validation.hasErrors());
  CHECK_FALSE(validation.isAcceptable());
  CHECK(validation.problems[0].path == "QuestionnaireResponse.item[1].item[0].answer[0].valueString");
  CHECK(validation.problems[0].issue.place.line == 2);
  CHECK(validation.problems[0].issue.place.file == "r.json");
  CHECK(validation.problems[0].issue.subject == "a");
}

TEST_CASE("Items stand where the form has them, once unless they repeat") {
  const std::string form = item("g", "group", "\"item\": [" + item("a", "boolean") + "]") + "," +
                           item("q", "string", "\"item\": [" + item("n", "boolean") + "]") + "," +
                           item("d", "display");
  const auto of = [&](const std::string& items) { return problems(form, items); };
  CHECK(of(group("g", answered("a", kYes))).empty());
  CHECK(of(R"({"linkId": "q", "answer": [{"valueString": "x", "item": [)" + answered("n", kYes) + "]}]}")
            .empty());
  CHECK_THAT(of(answered("a", kYes)), Contains("item[0].linkId: \"a\" stands in the wrong place"));
  CHECK_THAT(of(answered("n", kYes)), Contains("stands in the wrong place"));
  CHECK_THAT(of(group("g", answered("a", kYes)) + "," + group("g", answered("a", kYes))),
             Contains("stands here twice"));
  CHECK_THAT(of(answered("x", kYes)), Contains("has no item \"x\""));
  CHECK_THAT(of(answered("d", kYes)), Contains("of the type display has no answers"));
  CHECK_THAT(of(answered("g", kYes)), Contains("of the type group has no answers"));
  CHECK_THAT(of(answered("q", R"({"valueString": "x"}, {"valueString": "y"})")), Contains("only one answer"));
  CHECK_THAT(of(R"({"linkId": "q", "answer": []})"), Contains("\"answer\" is empty"));
  CHECK_THAT(of(R"({"linkId": "q", "answr": []})"),
             Contains("item[0].answr: the member \"answr\" is not known"));
  CHECK_THAT(of(R"({"linkId": "q", "answer": [{}]})"), Contains("the answer has no value"));
  CHECK_THAT(
      of(R"({"linkId": "q", "answer": [{"valueString": "x"}], "item": [)" + answered("n", kYes) + "]}"),
      Contains("belong in its answer"));
  CHECK_THAT(of(answered("q", R"({"valueString": "x"})") + "," + group("g", answered("a", kYes))),
             Contains("note QuestionnaireResponse.item[1]: \"g\" stands in another order"));
}

TEST_CASE("What is required must be there once the response is complete") {
  const std::string form = item("a", "boolean", "\"required\": true") + "," +
                           item("g", "group", "\"required\": true, \"item\": [" + item("b", "boolean") + "]");
  const std::string full = answered("a", kNo) + "," + group("g", answered("b", kNo));
  CHECK(problems(form, full).empty());
  CHECK_THAT(problems(form, group("g", answered("b", kNo))),
             Contains("the required question \"a\" is not answered"));
  CHECK_THAT(problems(form, answered("a", kNo)), Contains("the required group \"g\" is missing or empty"));
  CHECK_THAT(problems(form, "", "amended"), Contains("the required question"));
  CHECK(problems(form, "", "in-progress").empty());
  CHECK(problems(form, "", "stopped").empty());
}

TEST_CASE("A stated reason satisfies required only if the question was asked") {
  const std::string form = item("a", "boolean", "\"required\": true");
  const auto absent = [](const std::string& code) {
    return R"({"extension": [{"url": "http://hl7.org/fhir/StructureDefinition/data-absent-reason", "valueCode": ")" +
           code + R"("}], "linkId": "a"})";
  };
  CHECK(problems(form, absent("asked-unknown")).empty());
  CHECK(problems(form, absent("asked-declined")).empty());
  CHECK_THAT(problems(form, absent("not-asked")), Contains("is not answered"));
  CHECK_THAT(problems(form, absent("unknown")), Contains("is not answered"));
}

TEST_CASE("Answers and repetitions keep to the least and most") {
  const std::string occurs = extensions(extension("questionnaire-minOccurs", "\"valueInteger\": 2") + "," +
                                        extension("questionnaire-maxOccurs", "\"valueInteger\": 3"));
  const std::string form = item("a", "integer", "\"repeats\": true, " + occurs);
  const auto count = [&](int answers) {
    std::string list;
    for (int i = 0; i < answers; ++i)
      list += (i ? "," : "") + std::string("{\"valueInteger\": ") + std::to_string(i) + "}";
    return problems(form, answered("a", list));
  };
  CHECK_THAT(count(1), Contains("there are 1 answers, and at least 2 are needed"));
  CHECK(count(2).empty());
  CHECK(count(3).empty());
  CHECK_THAT(count(4), Contains("at most 3 are allowed"));
  const std::string groups = repeating("g", item("b", "boolean"), occurs + ", ");
  const std::string one = group("g", answered("b", kYes));
  CHECK_THAT(problems(groups, one), Contains("there are 1 repetitions, and at least 2 are needed"));
  CHECK(problems(groups, one + "," + one).empty());
  CHECK(problems(groups, one, "in-progress").empty());
}

TEST_CASE("An answered item must apply, and what applies may be required") {
  const std::string form =
      item("a", "boolean") + "," +
      item("b", "boolean", "\"required\": true, " + enableWhen(when("a", "=", "\"answerBoolean\": true")));
  CHECK(problems(form, answered("a", kNo)).empty());
  CHECK(problems(form, "").empty());
  CHECK(problems(form, answered("a", kYes) + "," + answered("b", kNo)).empty());
  CHECK_THAT(problems(form, answered("a", kYes)), Contains("\"b\" is not answered"));
  CHECK_THAT(problems(form, answered("a", kNo) + "," + answered("b", kNo)),
             Contains("item[1]: \"b\" is answered, but its condition says that it does not apply"));
}

TEST_CASE("An item whose enablement cannot be decided keeps a response from being complete") {
  const std::string circle = item("a", "boolean", enableWhen(when("b", "=", "\"answerBoolean\": true"))) +
                             "," +
                             item("b", "boolean", enableWhen(when("a", "=", "\"answerBoolean\": true")));
  const std::string both = answered("a", kYes) + "," + answered("b", kYes);
  CHECK_THAT(problems(circle, both),
             Contains("error") && Contains("whether \"a\" applies cannot be decided"));
  CHECK_THAT(problems(circle, both, "in-progress"), Contains("note") && !Contains("error"));
  // Without answers there is nothing to go round: neither applies.
  CHECK(problems(circle, "").empty());
  const std::string weight =
      item("a", "quantity") + "," +
      item("b", "boolean", enableWhen(when("a", ">", "\"answerQuantity\": " + quantity("3", "kg"))));
  CHECK_THAT(problems(weight, answered("a", "{\"valueQuantity\": " + quantity("3", "m") + "}")),
             Contains("whether \"b\" applies cannot be decided"));
}

TEST_CASE("Conditions, constraints and calculated values in FHIRPath are followed") {
  const std::string condition =
      item("a", "integer") + "," +
      item("b", "boolean",
           extensions(sdcExtension("enableWhenExpression",
                                   fhirPath("%resource.item.where(linkId='a').answer.value > 3"))));
  CHECK(problems(condition, answered("a", R"({"valueInteger": 4})") + "," + answered("b", kYes)).empty());
  CHECK_THAT(problems(condition, answered("a", R"({"valueInteger": 3})") + "," + answered("b", kYes)),
             Contains("\"b\" is answered, but"));
  const std::string broken =
      item("b", "boolean", extensions(sdcExtension("enableWhenExpression", fhirPath("%patient.active"))));
  CHECK_THAT(problems(broken, ""),
             Contains("whether \"b\" applies cannot be decided: ") && Contains("patient"));

  const auto constraint = [](const std::string& severity, const std::string& expression) {
    return item(
        "a", "integer",
        extensions(
            R"({"url": "http://hl7.org/fhir/StructureDefinition/questionnaire-constraint", "extension": [
        {"url": "key", "valueId": "k"}, {"url": "severity", "valueCode": ")" +
            severity +
            R"("}, {"url": "human", "valueString": "Too small."}, {"url": "expression", "valueString": ")" +
            expression + "\"}]}"));
  };
  const std::string three = answered("a", R"({"valueInteger": 3})");
  CHECK(problems(constraint("error", "answer.value >= 3"), three).empty());
  CHECK_THAT(problems(constraint("error", "answer.value > 3"), three),
             Contains("error QuestionnaireResponse.item[0]: Too small."));
  CHECK_THAT(problems(constraint("warning", "answer.value > 3"), three),
             Contains("note QuestionnaireResponse.item[0]: Too small."));
  CHECK_THAT(problems(constraint("error", "%nothing > 3"), three),
             Contains("error") && Contains("cannot be evaluated"));

  const std::string sum = item("a", "integer",
                               extensions(sdcExtension("calculatedExpression", fhirPath("1 + %one")) + "," +
                                          extension("variable", fhirPath("1", "one"))));
  CHECK(problems(sum, answered("a", R"({"valueInteger": 2})")).empty());
  CHECK_THAT(problems(sum, three), Contains("note") && Contains("the form calculates 2 here"));
}

TEST_CASE("The head of a response is checked") {
  const auto forms =
      loadedAny(item("a", "boolean"), R"("effectivePeriod": {"start": "2026", "end": "2026-11"})");
  const auto of = [&](const std::string& members) {
    return problemsOf(forms, "{\"resourceType\": \"QuestionnaireResponse\", " + members + "}");
  };
  const std::string ours =
      R"("questionnaire": "https://stile.example/questionnaire/t", "status": "completed")";
  CHECK(of(ours).empty());
  CHECK_THAT(of(R"("questionnaire": "https://stile.example/questionnaire/u", "status": "completed")"),
             Contains("note QuestionnaireResponse.questionnaire") && Contains("is not among those given"));
  CHECK_THAT(of(R"("questionnaire": "https://stile.example/questionnaire/t|1", "status": "completed")"),
             Contains("note") && Contains("answers version 1 of the form"));
  CHECK_THAT(of(R"("status": "completed")"), Contains("does not say which form it answers"));
  CHECK_THAT(of(R"("questionnaire": "https://stile.example/questionnaire/t", "status": "draft")"),
             Contains("error QuestionnaireResponse.status"));
  CHECK_THAT(of(ours + R"(, "authored": "2026-13-01")"), Contains("error") && Contains("calendar"));
  CHECK_THAT(of(ours + R"(, "authored": "2026-12-01")"), Contains("note") && Contains("until 2026-11"));
  CHECK_THAT(of(ours + R"(, "authored": "2025-12-01")"), Contains("note") && Contains("from 2026"));
  CHECK_THAT(of(ours + R"(, "modifierExtension": [{"url": "https://example.org/m"}])"),
             Contains("modifier extension"));
  CHECK_THAT(of(ours + R"(, "sttus": "x")"),
             Contains("QuestionnaireResponse.sttus: the member \"sttus\" is not known"));
  CHECK_THAT(problemsOf(forms, R"({"resourceType": "Patient"})"), Contains("this is a Patient"));
}
