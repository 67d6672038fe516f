#include "answers/answer_checker.h"

#include "validation_sample.h"

using namespace stile;
using namespace stile::sample;
using Catch::Contains;

TEST_CASE("Every type of answer is accepted in its own question") {
  const std::vector<std::pair<std::string, std::string>> cases{
      {"boolean", "\"valueBoolean\": true"},
      {"decimal", "\"valueDecimal\": 1.5"},
      {"integer", "\"valueInteger\": -3"},
      {"date", "\"valueDate\": \"2026-11\""},
      {"dateTime", "\"valueDateTime\": \"2026-11-25T10:00:00+01:00\""},
      {"time", "\"valueTime\": \"10:00:00\""},
      {"string", "\"valueString\": \"x\""},
      {"text", "\"valueString\": \"x\\ny\""},
      {"url", "\"valueUri\": \"https://example.org/\""},
      {"attachment", R"("valueAttachment": {"contentType": "text/plain", "data": "eA=="})"},
      {"reference", R"("valueReference": {"reference": "Patient/1"})"},
      {"quantity", "\"valueQuantity\": " + quantity("3", "kg")},
  };
  for (const auto& [type, answer] : cases) {
    CAPTURE(type);
    CHECK(ofAnswer(item("a", type), "{" + answer + "}").empty());
    for (const auto& [other, wrong] : cases) {
      const bool isSame =
          other == type || (type == "text" && other == "string") || (type == "string" && other == "text");
      if (!isSame)
        CHECK_THAT(ofAnswer(item("a", type), "{" + wrong + "}"), Contains("does not fit a question"));
    }
  }
}

TEST_CASE("A value has the form its type asks for") {
  const std::vector<std::pair<std::string, std::string>> cases{
      {"boolean", "\"valueBoolean\": \"true\""},
      {"decimal", "\"valueDecimal\": \"1.5\""},
      {"integer", "\"valueInteger\": 1.5"},
      {"integer", "\"valueInteger\": 2147483648"},
      {"date", "\"valueDate\": \"2026-02-30\""},
      {"date", "\"valueDate\": \"2026-02-20T10:00:00Z\""},
      {"dateTime", "\"valueDateTime\": \"2026-02-20T10:00:00\""},
      {"time", "\"valueTime\": \"10:00\""},
      {"string", "\"valueString\": \" \""},
      {"url", "\"valueUri\": \"a b\""},
      {"quantity", "\"valueQuantity\": {\"unit\": \"kg\"}"},
      {"attachment", R"("valueAttachment": {"data": "e"})"},
      {"reference", R"("valueReference": {})"},
      {"reference", R"("valueReference": {"reference": "Chicken/1"})"},
      {"choice", "\"valueCoding\": {}"},
  };
  for (const auto& [type, answer] : cases) {
    CAPTURE(type, answer);
    CHECK_THAT(ofAnswer(item("a", type), "{" + answer + "}"),
               Contains("error QuestionnaireResponse.item[0].answer[0].value"));
  }
}

TEST_CASE("Numbers keep to their limits and decimals, at and beyond") {
  const std::string question = item("a", "decimal",
                                    extensions(extension("minValue", "\"valueDecimal\": 1") + "," +
                                               extension("maxValue", "\"valueDecimal\": 2") + "," +
                                               extension("maxDecimalPlaces", "\"valueInteger\": 1")));
  CHECK_THAT(ofAnswer(question, "{\"valueDecimal\": 0.9}"), Contains("the value is below 1"));
  CHECK(ofAnswer(question, "{\"valueDecimal\": 1}").empty());
  CHECK(ofAnswer(question, "{\"valueDecimal\": 2.0}").empty());
  CHECK_THAT(ofAnswer(question, "{\"valueDecimal\": 2.1}"), Contains("the value is above 2"));
  CHECK_THAT(ofAnswer(question, "{\"valueDecimal\": 1.55}"), Contains("more than 1 decimal places"));
}

TEST_CASE("Dates and times keep to their limits as far as they are known") {
  const std::string question = item("a", "date",
                                    extensions(extension("minValue", R"("valueDate": "2020")") + "," +
                                               extension("maxValue", R"("valueDate": "2022-06")")));
  CHECK_THAT(ofAnswer(question, R"({"valueDate": "2019-12-31"})"), Contains("below 2020"));
  CHECK(ofAnswer(question, R"({"valueDate": "2020-01-01"})").empty());
  CHECK(ofAnswer(question, R"({"valueDate": "2022"})").empty());
  CHECK_THAT(ofAnswer(question, R"({"valueDate": "2022-07-01"})"), Contains("above 2022-06"));
  const std::string clock =
      item("a", "time", extensions(extension("maxValue", R"("valueTime": "12:00:00")")));
  CHECK(ofAnswer(clock, R"({"valueTime": "12:00:00"})").empty());
  CHECK_THAT(ofAnswer(clock, R"({"valueTime": "12:00:01"})"), Contains("above 12:00:00"));
}

TEST_CASE("Quantities compare with their limits across units, and are refused where they cannot") {
  const std::string question = item(
      "a", "quantity", extensions(sdcExtension("maxQuantity", "\"valueQuantity\": " + quantity("5", "km"))));
  CHECK(ofAnswer(question, "{\"valueQuantity\": " + quantity("5000", "m") + "}").empty());
  CHECK_THAT(ofAnswer(question, "{\"valueQuantity\": " + quantity("5001", "m") + "}"),
             Contains("above 5 km"));
  CHECK_THAT(ofAnswer(question, "{\"valueQuantity\": " + quantity("1", "kg") + "}"),
             Contains("cannot be compared"));
  CHECK_THAT(ofAnswer(question, R"({"valueQuantity": {"value": 1, "unit": "km"}})"),
             Contains("cannot be compared"));
  const std::string offered = item("a", "quantity", units("km", "m"));
  CHECK(ofAnswer(offered, "{\"valueQuantity\": " + quantity("1", "m") + "}").empty());
  CHECK_THAT(ofAnswer(offered, "{\"valueQuantity\": " + quantity("1", "kg") + "}"),
             Contains("is not offered"));
}

TEST_CASE("Texts keep to length and form, counted in letters") {
  const std::string question =
      item("a", "string",
           "\"maxLength\": 3, " + extensions(extension("minLength", "\"valueInteger\": 2") + "," +
                                             extension("regex", R"("valueString": "[a-zä]+")")));
  CHECK(ofAnswer(question, R"({"valueString": "äää"})").empty());
  CHECK_THAT(ofAnswer(question, R"({"valueString": "abcd"})"), Contains("longer than 3"));
  CHECK_THAT(ofAnswer(question, R"({"valueString": "a"})"), Contains("shorter than 2"));
  CHECK_THAT(ofAnswer(question, R"({"valueString": "a1"})"), Contains("has not the form"));
}

TEST_CASE("A pattern that is none, or would take for ever, is told and refuses nothing") {
  const auto of = [](const std::string& pattern, const std::string& text) {
    return ofAnswer(
        item("a", "string", extensions(extension("regex", "\"valueString\": \"" + pattern + "\""))),
        "{\"valueString\": \"" + text + "\"}");
  };
  CHECK_THAT(of("(", "x"), Contains("note") && Contains("cannot be checked"));
  const std::string hard = of("(a+)+(a+)+b", std::string(5000, 'a'));
  CHECK((hard.find("has not the form") != std::string::npos ||
         hard.find("cannot be checked") != std::string::npos));
}

TEST_CASE("Options of every kind are checked, and open choices take words") {
  const std::string coded = "\"answerOption\": [" + option("hip") + "," + option("none", true) + "]";
  const std::string hip = R"({"valueCoding": {"system": "https://stile.example/option", "code": "hip"}})";
  const std::string none = R"({"valueCoding": {"system": "https://stile.example/option", "code": "none"}})";
  CHECK(ofAnswer(item("a", "choice", coded), hip).empty());
  CHECK_THAT(ofAnswer(item("a", "choice", coded), R"({"valueCoding": {"system": "x", "code": "hip"}})"),
             Contains("not of the system x"));
  CHECK_THAT(ofAnswer(item("a", "choice", coded), R"({"valueCoding": {"code": "knee"}})"),
             Contains("is not offered"));
  CHECK_THAT(ofAnswer(item("a", "choice", coded), R"({"valueString": "hip"})"), Contains("does not fit"));
  CHECK(ofAnswer(item("a", "open-choice", coded), R"({"valueString": "elbow"})").empty());
  CHECK(ofAnswer(item("a", "open-choice", coded), R"({"valueCoding": {"display": "elbow"}})").empty());
  CHECK_THAT(ofAnswer(item("a", "choice", "\"repeats\": true, " + coded), hip + "," + none),
             Contains("answer[1].valueCoding: \"none\" excludes the other answers"));
  CHECK_THAT(ofAnswer(item("a", "choice", "\"repeats\": true, " + coded), hip + "," + hip),
             Contains("note") && Contains("the same answer stands twice"));
  const std::string numbers = R"("answerOption": [{"valueInteger": 1}, {"valueInteger": 2}])";
  for (const char* type : {"integer", "choice"}) {
    CHECK(ofAnswer(item("a", type, numbers), R"({"valueInteger": 2})").empty());
    CHECK_THAT(ofAnswer(item("a", type, numbers), R"({"valueInteger": 3})"), Contains("is not offered"));
  }
  CHECK(ofAnswer(item("a", "choice", R"("answerOption": [{"valueReference": {"reference": "Patient/1"}}])"),
                 R"({"valueReference": {"reference": "Patient/1"}})")
            .empty());
}

TEST_CASE("Files and references keep to the types and sizes asked for") {
  const std::string file = item("a", "attachment",
                                extensions(extension("maxSize", "\"valueDecimal\": 3") + "," +
                                           extension("mimeType", R"("valueCode": "image/png")")));
  CHECK(ofAnswer(file, R"({"valueAttachment": {"contentType": "image/png", "data": "eHh4"}})").empty());
  CHECK_THAT(ofAnswer(file, R"({"valueAttachment": {"contentType": "image/png", "data": "eHh4eHg="}})"),
             Contains("5 bytes, more than the 3 allowed"));
  CHECK_THAT(ofAnswer(file, R"({"valueAttachment": {"contentType": "image/gif", "size": 1}})"),
             Contains("image/gif is not taken here"));
  const std::string person =
      item("a", "reference",
           extensions(extension("questionnaire-referenceResource", R"("valueCode": "Patient")")));
  for (const char* good :
       {"Patient/1", "https://example.org/fhir/Patient/1/_history/2", "#p", "urn:uuid:1"}) {
    CHECK(ofAnswer(person, std::string(R"({"valueReference": {"reference": ")") + good + "\"}}").empty());
  }
  CHECK_THAT(ofAnswer(person, R"({"valueReference": {"reference": "Organization/1"}})"),
             Contains("a reference to the type Organization is not taken here"));
  CHECK_THAT(ofAnswer(person, R"({"valueReference": {"reference": "Patient/1", "type": "Group"}})"),
             Contains("its type says Group"));
}
