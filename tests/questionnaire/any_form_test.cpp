// What strangers' forms may say beyond our own, and what is refused in them all the same.
#include <catch2/catch.hpp>

#include "questionnaire/form.h"
#include "questionnaire/own_form_checker.h"
#include "sample_form.h"

using namespace stile;
using namespace stile::sample;
using Catch::Contains;
using questionnaire::FormSet;
using questionnaire::Item;
using questionnaire::ItemType;

namespace {

/// The item "a" of the only form, which is kept for as long as the test runs.
const Item& only(FormSet forms) {
  static std::vector<FormSet> kept;
  kept.push_back(std::move(forms));
  const Item* item = kept.back().forms().front()->find("a");
  REQUIRE(item);
  return *item;
}

}  // namespace

TEST_CASE("All types of item, nesting and repetition are read") {
  for (const auto& type : {"boolean", "decimal", "integer", "date", "dateTime", "time", "string", "text",
                           "url", "choice", "open-choice", "attachment", "reference", "quantity"}) {
    CAPTURE(type);
    loadedAny(item("a", type));
  }
  const std::string nested =
      item("r", "group",
           "\"repeats\": true, \"item\": [" +
               item("s", "group", "\"repeats\": true, \"item\": [" + item("a", "boolean") + "]") + "]");
  CHECK(only(loadedAny(nested)).parent->linkId == "s");
  const auto under =
      loadedAny(item("q", "string", "\"repeats\": true, \"item\": [" + item("a", "boolean") + "]"));
  CHECK(only(under).parent->linkId == "q");
}

TEST_CASE("What our own forms may not hold is refused there and accepted from strangers") {
  const std::vector<std::pair<std::string, std::string>> cases{
      {item("a", "attachment"), "cannot be kept"},
      {R"({"linkId": "a", "type": "boolean"})", "has no text"},
      {item("a", "quantity"), "offers no unit"},
      {item("a", "choice"), "offers no options"},
      {item("a", "choice", R"("answerValueSet": "https://example.org/v")"), "value sets are not looked up"},
      {item("a", "string", R"("answerOption": [{"valueString": "x"}])"), "options do not fit"},
      {item("a", "date", extensions(extension("minValue", R"("valueDate": "2020")"))),
       "limit is not understood"},
      {item("a", "boolean", enableWhen(when("b", "exists", "\"answerBoolean\": true"))) + "," +
           item("b", "boolean"),
       "comes later"},
      {item("a", "integer", extensions(sdcExtension("calculatedExpression", fhirPath("1 + 1")))),
       "calculatedExpression is not supported"},
  };
  for (const auto& [items, reason] : cases) {
    CAPTURE(items, reason);
    loadedAny(items);
    CHECK_THAT(issuesOf(items), Contains(reason));
  }
}

TEST_CASE("Limits of every kind are kept as written") {
  const auto& text = only(loadedAny(
      item("a", "string",
           "\"maxLength\": 5, " + extensions(extension("minLength", "\"valueInteger\": 2") + "," +
                                             extension("regex", R"("valueString": "[a-z]+")") + "," +
                                             extension("entryFormat", R"("valueString": "abc")")))));
  CHECK(text.maxLength == 5);
  CHECK(text.minLength == 2);
  CHECK(text.regex == "[a-z]+");
  CHECK(text.entryFormat == "abc");
  const auto& number =
      only(loadedAny(item("a", "decimal",
                          extensions(extension("minValue", "\"valueDecimal\": 1.50") + "," +
                                     extension("maxValue", "\"valueInteger\": 3") + "," +
                                     extension("maxDecimalPlaces", "\"valueInteger\": 1")))));
  CHECK(number.least->text == "1.50");
  CHECK(*number.most->number == base::Rational(3));
  CHECK(number.maxDecimalPlaces == 1);
  const auto& repeated = only(loadedAny(item(
      "a", "date",
      "\"repeats\": true, " + extensions(extension("questionnaire-minOccurs", "\"valueInteger\": 2") + "," +
                                         extension("questionnaire-maxOccurs", "\"valueInteger\": 4") + "," +
                                         extension("maxValue", R"("valueDate": "2022-06")")))));
  CHECK(repeated.minOccurs == 2);
  CHECK(repeated.maxOccurs == 4);
  CHECK(repeated.most->text == "2022-06");
  const auto& file = only(loadedAny(item("a", "attachment",
                                         extensions(extension("maxSize", "\"valueDecimal\": 50") + "," +
                                                    extension("mimeType", R"("valueCode": "image/png")")))));
  CHECK(*file.maxSizeBytes == base::Rational(50));
  CHECK(file.mimeTypes == std::vector<std::string>{"image/png"});
}

TEST_CASE("Limits that cannot be followed are refused") {
  CHECK_THAT(issuesOfAny(item("a", "boolean", extensions(extension("minValue", "\"valueInteger\": 1")))),
             Contains("limit is not understood"));
  CHECK_THAT(issuesOfAny(item("a", "date", extensions(extension("minValue", R"("valueDate": "2020-13")")))),
             Contains("write it as the type Date asks"));
  CHECK_THAT(issuesOfAny(item("a", "choice", "\"maxLength\": 3")), Contains("maxLength does not fit"));
  CHECK_THAT(issuesOfAny(item("a", "string", "\"maxLength\": -3")), Contains("0 or more"));
}

TEST_CASE("Scores, prefixes, short words, translations and hints are kept") {
  const std::string twin =
      R"("_text": {"extension": [{"url": "http://hl7.org/fhir/StructureDefinition/translation",
      "extension": [{"url": "lang", "valueCode": "de"}, {"url": "content", "valueString": "Worte"}]}]})";
  const std::string choice =
      R"({"extension": [{"url": "http://hl7.org/fhir/StructureDefinition/questionnaire-optionPrefix",
      "valueString": "a."}], "initialSelected": true, "valueCoding": {"code": "x", "display": "X", "extension": [
      {"url": "http://hl7.org/fhir/StructureDefinition/ordinalValue", "valueDecimal": 2.5}]}})";
  const auto forms = loadedAny(
      item("a", "choice",
           twin + ", \"answerOption\": [" + choice + "], " +
               extensions(sdcExtension("shortText", R"("valueString": "W")") + "," +
                          extension("questionnaire-itemControl",
                                    R"("valueCodeableConcept": {"coding": [{"code": "drop-down"}]})") +
                          "," + extension("itemWeight", "\"valueDecimal\": 3"))));
  const auto& a = only(forms);
  CHECK(questionnaire::wordsIn("de-CH", a.text, a.translations) == "Worte");
  CHECK(questionnaire::wordsIn("fr", a.text, a.translations) == "Words");
  CHECK(a.shortText == "W");
  CHECK(a.controls == std::vector<std::string>{"drop-down"});
  CHECK(*a.weight == base::Rational(3));
  REQUIRE(a.options.size() == 1);
  CHECK(a.options[0].prefix == "a.");
  CHECK(a.options[0].isSelected);
  CHECK(a.options[0].score == base::Rational::parse("2.5"));
}

TEST_CASE("Initial values fit their question, and stand where they may") {
  CHECK(only(loadedAny(item("a", "integer", "\"initial\": [{\"valueInteger\": 3}]"))).initial.size() == 1);
  CHECK_THAT(issuesOfAny(item("a", "integer", "\"initial\": [{\"valueString\": \"3\"}]")),
             Contains("start with valueInteger"));
  CHECK_THAT(issuesOfAny(item("a", "integer", "\"initial\": [{\"valueInteger\": 3}, {\"valueInteger\": 4}]")),
             Contains("only a question that repeats"));
  CHECK_THAT(
      issuesOfAny(item("g", "group",
                       "\"initial\": [{\"valueInteger\": 3}], \"item\": [" + item("a", "boolean") + "]")),
      Contains("a group cannot have an initial value"));
  CHECK_THAT(issuesOfAny(item("a", "choice",
                              "\"answerOption\": [" + option("x") +
                                  "], \"initial\": [{\"valueCoding\": {\"code\": \"x\"}}]")),
             Contains("use initialSelected"));
}

TEST_CASE("Expressions are parsed when the form is loaded, and refused with their place") {
  const auto forms = loadedAny(item("a", "integer",
                                    extensions(sdcExtension("calculatedExpression", fhirPath("%x + 1")) +
                                               "," + extension("variable", fhirPath("2", "x")))),
                               extensions(extension("variable", fhirPath("3", "y"))));
  CHECK(only(forms).calculatedExpression->program);
  CHECK(only(forms).variables.front().name == "x");
  CHECK(forms.forms().front()->variables().front().name == "y");
  CHECK_THAT(
      issuesOfAny(item("a", "integer", extensions(sdcExtension("calculatedExpression", fhirPath("1 +"))))),
      Contains("t.json:1:"));
  CHECK_THAT(issuesOfAny(item("a", "integer",
                              extensions(sdcExtension(
                                  "enableWhenExpression",
                                  R"("valueExpression": {"language": "text/cql", "expression": "true"})")))),
             Contains("text/cql, which is not evaluated here"));
  CHECK_THAT(issuesOfAny(item("a", "integer", extensions(extension("variable", fhirPath("3"))))),
             Contains("the variable has no name"));
}

TEST_CASE("A form that calls an unknown extension critical for showing it is refused") {
  const auto critical = [](const std::string& url) {
    return R"("modifierExtension": [{"url":
        "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-rendering-criticalExtension", "valueCanonical": ")" +
           url + "\"}]";
  };
  CHECK_THAT(issuesOfAny(item("a", "boolean"), critical("https://example.org/colour")),
             Contains("does not follow the extension https://example.org/colour"));
  loadedAny(item("a", "boolean"), critical("http://hl7.org/fhir/StructureDefinition/questionnaire-hidden"));
  CHECK_THAT(issuesOfAny(item("a", "boolean"), R"("modifierExtension": [{"url": "https://example.org/m"}])"),
             Contains("modifier extension https://example.org/m is not understood"));
}
