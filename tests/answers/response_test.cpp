#include "answers/response.h"

#include <catch2/catch.hpp>

#include "sample_response.h"

using namespace stile;
using namespace stile::sample;
using answers::Absence;
using answers::Response;
using Catch::Contains;
using questionnaire::FormSet;

namespace {

FormSet sampleForms() {
  return loaded(
      item("bodyGroup", "group",
           "\"item\": [" +
               item("pain", "boolean", "\"item\": [" + item("painText", "string", "\"maxLength\": 5") + "]") +
               "," +
               item("places", "choice",
                    "\"repeats\": true, \"answerOption\": [" + option("hip") + "," + option("knee") + "," +
                        option("none", true) + "]") +
               "]") +
      "," + item("words", "open-choice", "\"answerOption\": [" + option("hip") + "]") + "," +
      item("falls", "integer", R"("extension": [{"url":
      "http://hl7.org/fhir/StructureDefinition/maxValue", "valueInteger": 20}])") +
      "," + item("since", "date") + "," + item("seen", "dateTime") + "," + item("wake", "time") + "," +
      item("pressure", "quantity", units("mm[Hg]", "kPa")) + "," + item("readingNote", "display") + "," +
      item("reading", "group",
           "\"repeats\": true, \"item\": [" + item("systolic", "quantity", units("mm[Hg]")) + "," +
               item("arm", "string") + "]"));
}

std::string reading(const std::string& value) {
  return group("reading", answer("systolic", "{\"valueQuantity\": " + quantity(value, "mm[Hg]") + "}"));
}

}  // namespace

TEST_CASE("A response keeps every answer with its place and its digits") {
  const FormSet forms = sampleForms();
  const std::string nested =
      R"({"valueBoolean": true, "item": [)" + answer("painText", R"({"valueString": "dull"})") + "]}";
  const std::string items =
      group("bodyGroup",
            answer("pain", nested) + "," + answer("places", coding("hip") + "," + coding("knee"))) +
      "," + answer("words", R"({"valueString": "my elbow"})") + "," +
      answer("falls", "\n{\"valueInteger\": 2}") + "," + answer("since", R"({"valueDate": "2025-03"})") +
      "," + answer("seen", R"({"valueDateTime": "2026-11-20T23:30:00.5+01:00"})") + "," +
      answer("wake", R"({"valueTime": "07:30:00"})") + "," +
      answer("pressure", "{\"valueQuantity\": " + quantity("18.50", "kPa") + "}");
  const Response response =
      accepted(responseText(items, R"("status": "amended", "authored": "2026-11-25T09:00:00Z")"), forms);
  CHECK(response.form == forms.byName("t"));
  CHECK(response.formVersion.empty());
  CHECK(response.authored == base::Date::of(2026, 11, 25));
  CHECK(response.givenBy == "client");
  REQUIRE(response.answered.size() == 9);
  const auto& given = response.answered;
  CHECK(given[0].linkId == "pain");
  CHECK(given[0].answers[0].boolean == true);
  CHECK(given[0].repetition == -1);
  CHECK(given[1].answers[0].text == "dull");
  REQUIRE(given[2].answers.size() == 2);
  CHECK(given[2].answers[1].code == "knee");
  CHECK_FALSE(given[3].answers[0].code);
  CHECK(given[3].answers[0].text == "my elbow");
  CHECK(given[4].answers[0].number == base::Rational(2));
  CHECK(given[4].answers[0].place.line == 2);
  CHECK(given[5].answers[0].date == base::PartialDate::parse("2025-03"));
  CHECK(given[6].answers[0].date == base::PartialDate::parse("2026-11-20"));
  CHECK(given[7].answers[0].text == "07:30:00");
  CHECK(given[8].answers[0].numberText == "18.50");
  CHECK(given[8].answers[0].unit == "kPa");
  CHECK(response.repetitions.empty());
}

TEST_CASE("Repetitions of a group are numbered in document order") {
  const Response response = accepted(
      responseText(reading("150") + "," + answer("falls", R"({"valueInteger": 1})") + "," + reading("140")),
      sampleForms());
  REQUIRE(response.answered.size() == 3);
  CHECK(response.answered[0].repetition == 0);
  CHECK(response.answered[1].repetition == -1);
  CHECK(response.answered[2].repetition == 1);
  CHECK(response.repetitions.at("reading") == 2);
}

TEST_CASE("A missing answer keeps its reason, and an empty item is not answered") {
  const FormSet forms = sampleForms();
  const auto absenceOf = [&](const std::string& more) {
    return accepted(responseText(answer("falls", "", more)), forms).answered.at(0).absence;
  };
  CHECK(absenceOf(absent("not-asked")) == Absence::NotAsked);
  CHECK(absenceOf(absent("unknown")) == Absence::NotAnswered);
  CHECK(absenceOf(absent("asked-unknown")) == Absence::NotSure);
  CHECK(absenceOf(absent("asked-declined")) == Absence::Declined);
  CHECK(absenceOf("") == Absence::NotAnswered);
  CHECK_FALSE(
      accepted(responseText(answer("falls", R"({"valueInteger": 1})")), forms).answered.at(0).absence);
  CHECK_THAT(refused(responseText(answer("falls", "", absent("asked-unkown"))), forms),
             Contains("did you mean \"asked-unknown\"?"));
  CHECK_THAT(refused(responseText(answer("falls", R"({"valueInteger": 1})", absent("unknown"))), forms),
             Contains("an answer and a reason for having none"));
  const Response several = accepted(
      responseText(group("bodyGroup", answer("places", coding("hip"), absent("asked-unknown")))), forms);
  CHECK(several.answered.at(0).absence == Absence::NotSure);
  CHECK(several.answered.at(0).answers.size() == 1);
}

TEST_CASE("Who gave an answer and when it was so stand on the item") {
  const FormSet forms = sampleForms();
  const auto with = [](const std::string& extensions) {
    return responseText(answer("falls", R"({"valueInteger": 1})", "\"extension\": [" + extensions + "]"));
  };
  const std::string by = R"({"url": "https://stile.example/extension/given-by", "valueCode": "carer"})";
  const std::string on = R"({"url": "https://stile.example/extension/answer-date", "valueDate": "2026-10"})";
  const Response response = accepted(with(by + "," + on), forms);
  CHECK(response.answered.at(0).givenBy == "carer");
  CHECK(response.answered.at(0).date == base::PartialDate::parse("2026-10"));
  CHECK_THAT(refused(with(R"({"url": "https://stile.example/extension/given-by", "valueCode": "neighbour"})"),
                     forms),
             Contains("use one of client, carer"));
  CHECK_THAT(
      refused(with(R"({"url": "https://stile.example/extension/answer-date", "valueDate": "2026-13"})"),
              forms),
      Contains("\"2026-13\" is not a date"));
  CHECK_THAT(refused(with(by + "," + by), forms), Contains("stands here twice"));
  CHECK_THAT(refused(responseText(R"({"linkId": "bodyGroup", "extension": [)" + by + "]}"), forms),
             Contains("would be lost"));
  accepted(with(R"({"url": "https://example.org/anything", "valueString": "ignored"})"), forms);
}

TEST_CASE("Answers stand where the form has their question") {
  const FormSet forms = sampleForms();
  CHECK_THAT(refused(responseText(answer("fals", R"({"valueInteger": 1})")), forms),
             Contains("r.json:1:") && Contains("the form t has no item \"fals\"; did you mean \"falls\"?"));
  CHECK_THAT(refused(responseText(answer("pain", R"({"valueBoolean": true})")), forms),
             Contains("it belongs in the group \"bodyGroup\""));
  CHECK_THAT(refused(responseText(group("bodyGroup", answer("falls", R"({"valueInteger": 1})"))), forms),
             Contains("it belongs at the top of the response"));
  CHECK_THAT(
      refused(responseText(group("bodyGroup", answer("painText", R"({"valueString": "dull"})"))), forms),
      Contains("it belongs in an answer of \"pain\""));
  CHECK_THAT(refused(responseText(group(
                         "bodyGroup",
                         answer("pain", R"({"valueBoolean": true})",
                                "\"item\": [" + answer("painText", R"({"valueString": "dull"})") + "]"))),
                     forms),
             Contains("belong in its answer"));
  CHECK_THAT(refused(responseText(answer("bodyGroup", R"({"valueBoolean": true})")), forms),
             Contains("has no answers"));
  CHECK_THAT(refused(responseText(answer("readingNote", R"({"valueBoolean": true})")), forms),
             Contains("has no answers"));
  accepted(responseText(answer("readingNote", "")), forms);
}

TEST_CASE("Nothing stands twice that may stand once") {
  const FormSet forms = sampleForms();
  const std::string one = R"({"valueInteger": 1})";
  CHECK_THAT(refused(responseText(answer("falls", one) + "," + answer("falls", one)), forms),
             Contains("stands here twice"));
  CHECK_THAT(refused(responseText(answer("falls", one + "," + R"({"valueInteger": 2})")), forms),
             Contains("only one answer"));
  CHECK_THAT(
      refused(responseText(group("bodyGroup", answer("places", coding("hip") + "," + coding("hip")))), forms),
      Contains("the same answer stands twice"));
  CHECK_THAT(refused(responseText(group("bodyGroup", answer("places", coding("none") + "," + coding("hip")))),
                     forms),
             Contains("\"none\" excludes the other answers"));
  CHECK_THAT(refused(responseText(group("bodyGroup", answer("pain", "")) + "," +
                                  group("bodyGroup", answer("pain", ""))),
                     forms),
             Contains("\"bodyGroup\" stands here twice"));
}

TEST_CASE("A value fits its question") {
  const FormSet forms = sampleForms();
  const auto of = [&](const std::string& linkId, const std::string& value) {
    return refused(responseText(answer(linkId, "{" + value + "}")), forms);
  };
  CHECK_THAT(of("falls", R"("valueDecimal": 1.5)"),
             Contains("valueDecimal does not fit a question of the type integer; answer with valueInteger"));
  CHECK_THAT(of("falls", R"("valueInteger": 1.5)"), Contains("1.5 is not a whole number"));
  CHECK_THAT(of("falls", R"("valueInteger": 21)"), Contains("the value is above 20"));
  CHECK_THAT(of("falls", R"("valueInteger": "2")"), Contains("a number is needed"));
  CHECK_THAT(of("falls", R"("valueInteger": 2, "valueString": "two")"), Contains("more than one value"));
  CHECK_THAT(of("falls", R"("id": "x")"), Contains("the answer has no value"));
  CHECK_THAT(of("falls", R"("valueIntegre": 2)"), Contains("did you mean \"valueInteger\"?"));
  CHECK_THAT(of("since", R"("valueDate": "2026-02-30")"), Contains("not a date of the calendar"));
  CHECK_THAT(of("seen", R"("valueDateTime": "2026-11-20T23:30:00")"),
             Contains("no proper time of day and zone"));
  CHECK_THAT(of("wake", R"("valueTime": "24:30:00")"), Contains("no time of day"));
  CHECK_THAT(of("words", R"("valueString": " ")"), Contains("the text is empty"));
  CHECK_THAT(of("pressure", "\"valueQuantity\": " + quantity("18", "kg")), Contains("cannot be compared"));
  CHECK_THAT(of("pressure", "\"valueQuantity\": " + quantity("18", "Pa")), Contains("is not offered"));
  CHECK_THAT(of("pressure", R"("valueQuantity": {"value": 138})"), Contains("units are never guessed"));
  CHECK_THAT(
      of("pressure",
         R"("valueQuantity": {"value": 138, "comparator": "<", "system": "http://unitsofmeasure.org", "code": "kPa"})"),
      Contains("a bound, not a value"));
  CHECK_THAT(refused(responseText(group("bodyGroup", answer("places", coding("kne")))), forms),
             Contains("did you mean \"knee\"?"));
  CHECK_THAT(refused(responseText(group(
                         "bodyGroup",
                         answer("pain", R"({"valueBoolean": true, "item": [)" +
                                            answer("painText", R"({"valueString": "dull ache"})") + "]}"))),
                     forms),
             Contains("longer than 5 characters"));
  CHECK_THAT(refused(responseText(R"({"linkId": "falls", "answer": []})"), forms),
             Contains("\"answer\" is empty"));
}

TEST_CASE("The head of a response says which form it answers and how far it is") {
  const FormSet forms = sampleForms();
  const auto head = [&](const std::string& url, const std::string& more) {
    return R"({"resourceType": "QuestionnaireResponse", "questionnaire": ")" + url + "\", " + more + "}";
  };
  const std::string url = "https://stile.example/questionnaire/t";
  CHECK(accepted(head(url + "|2026.9", R"("status": "stopped")"), forms).formVersion == "2026.9");
  CHECK_THAT(refused(head(url + "|2026.12", R"("status": "completed")"), forms),
             Contains("newer than this program's content (2026.11)"));
  CHECK_THAT(refused(head(url + "|draft", R"("status": "completed")"), forms),
             Contains("cannot be compared"));
  CHECK_THAT(refused(head(url + "s", R"("status": "completed")"), forms), Contains("is not known"));
  CHECK_THAT(refused(head(url, R"("status": "entered-in-error")"), forms), Contains("entered in error"));
  CHECK_THAT(refused(head(url, R"("status": "done")"), forms), Contains("the status \"done\" is not read"));
  CHECK_THAT(refused(head(url, R"("id": "x")"), forms), Contains("\"status\" is missing"));
  CHECK_THAT(refused(head(url, R"("status": "completed", "authored": "2026-11")"), forms),
             Contains("the day of the response"));
  CHECK_THAT(
      refused(head(url, R"("status": "completed", "modifierExtension": [{"url": "https://example.org/m"}])"),
              forms),
      Contains("modifier extension"));
  CHECK_THAT(refused(head(url, R"("status": "completed", "autored": "2026-11-25")"), forms),
             Contains("did you mean \"authored\"?"));
  CHECK_THAT(refused(head("", R"("status": "completed")"), forms), Contains("\"questionnaire\" is empty"));
  CHECK_THAT(refused(head(url, R"("status": "")"), forms), Contains("\"status\" is empty"));
  CHECK_THAT(refused(R"({"resourceType": ""})", forms), Contains("\"resourceType\" is empty"));
  CHECK_THAT(refused(responseText(answer("", "")), forms), Contains("\"linkId\" is empty"));
  CHECK_THAT(refused("[]", forms), Contains("must be an object"));
  CHECK_THAT(refused(R"({"resourceType": "Bundle"})", forms), Contains("this is a Bundle"));
}

TEST_CASE("All issues of a response are collected") {
  const std::string text = refused(responseText(answer("fals", R"({"valueInteger": 1})") + "," +
                                                answer("since", R"({"valueDate": "2026-02-30"})")),
                                   sampleForms());
  CHECK_THAT(text, Contains("\"fals\"") && Contains("2026-02-30"));
}
