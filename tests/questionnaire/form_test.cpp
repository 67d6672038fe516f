#include "questionnaire/form.h"

#include <catch2/catch.hpp>

#include "sample_form.h"

using namespace stile;
using namespace stile::sample;
using Catch::Contains;
using questionnaire::Form;
using questionnaire::FormSet;
using questionnaire::ItemType;

TEST_CASE("A form keeps its items in order with everything they say") {
  const FormSet forms = loaded(Files{
      {"questionnaires/t.json",
       formText(
           item(
               "painGroup", "group",
               "\"item\": [" +
                   item(
                       "chestPain", "boolean",
                       R"("prefix": "1", "required": true, "item": [{"linkId": "chestPainHelp", "type": "display",
                              "text": "It matters.", "extension": [{"url":
                              "http://hl7.org/fhir/StructureDefinition/questionnaire-itemControl",
                              "valueCodeableConcept": {"coding": [{"code": "help"}]}}]}])") +
                   "]") +
           "," +
           item("sorePlaces", "choice",
                "\"repeats\": true, \"answerOption\": [" + option("hip") + "," + option("none", true) + "]") +
           "," + item("readingSystolic", "quantity", units("mm[Hg]", "kPa")))}});
  REQUIRE(forms.forms().size() == 1);
  const Form* form = forms.byName("t");
  REQUIRE(form);
  CHECK(form->url() == "https://stile.example/questionnaire/t");
  CHECK(form->version() == "2026.11");
  CHECK(form->title() == "T");
  REQUIRE(form->inOrder().size() == 4);
  const auto* pain = form->find("chestPain");
  REQUIRE(pain);
  CHECK(form->inOrder()[1] == pain);
  CHECK(pain->parent == form->find("painGroup"));
  CHECK(pain->help == "It matters.");
  CHECK(pain->helpLinkId == "chestPainHelp");
  CHECK(pain->items.empty());
  CHECK(pain->isRequired);
  CHECK(pain->prefix == "1");
  CHECK(pain->topic == form->url());
  CHECK(pain->place.file == "questionnaires/t.json");
  const auto* places = form->find("sorePlaces");
  REQUIRE(places->options.size() == 2);
  CHECK(places->options[0].code == "hip");
  CHECK_FALSE(places->options[0].isExclusive);
  CHECK(places->options[1].isExclusive);
  CHECK(places->repeats);
  CHECK(form->find("readingSystolic")->units == std::vector<std::string>{"mm[Hg]", "kPa"});
  CHECK(form->find("nothing") == nullptr);
}

TEST_CASE("A form is found by its url with or without a version") {
  const FormSet forms = loaded(item("a", "boolean"));
  CHECK(forms.byUrl("https://stile.example/questionnaire/t"));
  CHECK(forms.byUrl("https://stile.example/questionnaire/t|2026.11"));
  CHECK_FALSE(forms.byUrl("https://stile.example/questionnaire/u"));
  CHECK_FALSE(forms.byUrl(""));
}

TEST_CASE("Members of the standard that are not used here are accepted") {
  loaded(Files{
      {"t.json",
       formText(item("a", "string",
                     R"("id": "x", "definition": "d", "code": [{"code": "c"}], "_text": {"extension": []},
      "maxLength": 20, "initial": [{"valueString": "s"}], "readOnly": false,
      "extension": [{"url": "https://example.org/anything", "valueString": "ignored"}])"),
                "t",
                R"("id": "t", "meta": {}, "language": "en", "text": {"status": "generated"},
      "contained": [], "identifier": [], "name": "T", "_title": {"id": "x"}, "experimental": true,
      "subjectType": ["Patient"], "date": "2026-11-25", "publisher": "p", "contact": [], "description": "d",
      "useContext": [], "jurisdiction": [], "purpose": "p", "copyright": "c", "approvalDate": "2026-11-25",
      "lastReviewDate": "2026-11-25", "effectivePeriod": {}, "code": [], "derivedFrom": [])")}});
}

TEST_CASE("Anything the standard does not know is an issue with place and remedy") {
  const std::string text = issuesOf(item("a", "boolean", "\n\"requierd\": true"));
  CHECK_THAT(
      text, Contains("t.json:2:1: a: the member \"requierd\" is not known here; did you mean \"required\"?"));
  CHECK_THAT(issuesOf(Files{{"t.json", formText(item("a", "boolean"), "t", "\"titel\": \"T\"")}}),
             Contains("\"titel\""));
  CHECK_THAT(issuesOf(item("a", "bolean")),
             Contains("\"bolean\" is no item type; did you mean \"boolean\"?"));
  CHECK_THAT(issuesOf(item("a", "attachment")), Contains("cannot be kept"));
  CHECK_THAT(issuesOf("{\"type\": \"boolean\", \"text\": \"T\"}"), Contains("\"linkId\" is missing"));
  CHECK_THAT(issuesOf("{\"type\": \"boolean\", \"linkId\": \"a\"}"), Contains("the item has no text"));
  CHECK_THAT(issuesOf("{\"linkId\": \"a\", \"text\": \"T\"}"), Contains("\"type\" is missing"));
  CHECK_THAT(issuesOf(item("", "boolean")), Contains("\"linkId\" is empty"));
  CHECK_THAT(issuesOf("3"), Contains("must be an object"));
  CHECK_THAT(issuesOf(""), Contains("the form has no items"));
  CHECK_THAT(issuesOf(Files{{"t.json", "{\"resourceType\": \"Patient\"}"}}), Contains("this is a Patient"));
}

TEST_CASE("What would change the meaning of a form is refused") {
  CHECK_THAT(issuesOf(item("a", "boolean", R"("modifierExtension": [{"url": "https://example.org/m"}])")),
             Contains("modifier extension https://example.org/m is not understood"));
  CHECK_THAT(issuesOf(Files{
                 {"t.json", formText(item("a", "boolean"), "t", R"("implicitRules": "https://x.example")")}}),
             Contains("implicit rules"));
  CHECK_THAT(issuesOf(item("a", "boolean", R"("extension": [{"url":
      "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-enableWhenExpression",
      "valueExpression": {"language": "text/fhirpath", "expression": "true"}}])")),
             Contains("enableWhenExpression is not supported"));
  CHECK_THAT(issuesOf(item("a", "choice", R"("answerValueSet": "https://example.org/v")")),
             Contains("value sets"));
}

TEST_CASE("Options need a code and words, and a code of their own") {
  const auto choice = [](const std::string& options) {
    return issuesOf(item("a", "choice", "\"answerOption\": [" + options + "]"));
  };
  CHECK_THAT(choice(""), Contains("offers no options"));
  CHECK_THAT(choice(R"({"valueCoding": {"display": "D"}})"), Contains("\"code\" is missing"));
  CHECK_THAT(choice(R"({"valueCoding": {"code": "c"}})"), Contains("the option \"c\" has no text"));
  CHECK_THAT(choice("{}"), Contains("the option has no value"));
  CHECK_THAT(choice(option("hip") + "," + option("hip")), Contains("the option \"hip\" stands twice"));
  CHECK_THAT(issuesOf(item("a", "integer", "\"answerOption\": [" + option("hip") + "]")),
             Contains("do not fit"));
}

TEST_CASE("Quantities need units that are known, and limits that fit them") {
  CHECK_THAT(issuesOf(item("a", "quantity")), Contains("offers no unit"));
  CHECK_THAT(issuesOf(item("a", "quantity", units("mmHg"))), Contains("the unit \"mmHg\" is not known"));
  const auto limit = [](const std::string& unit) {
    return item(
        "a", "quantity",
        R"("extension": [{"url": "http://hl7.org/fhir/StructureDefinition/questionnaire-unit", "valueCoding":
      {"system": "http://unitsofmeasure.org", "code": "km"}}, {"url":
      "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-maxQuantity", "valueQuantity": )" +
            quantity("5000", unit) + "}]");
  };
  const FormSet forms = loaded(limit("m"));
  CHECK(forms.byName("t")->find("a")->maxValue == base::Rational(5));
  CHECK_THAT(issuesOf(limit("kg")), Contains("does not fit the units"));
}

TEST_CASE("Groups hold items and display items do not") {
  CHECK_THAT(issuesOf(item("a", "group")), Contains("the group is empty"));
  CHECK_THAT(issuesOf(item("a", "display", "\"item\": [" + item("b", "boolean") + "]")),
             Contains("cannot hold items"));
  CHECK_THAT(issuesOf(item("a", "display", "\"required\": true")), Contains("cannot have required"));
  const std::string inner = item("b", "group", "\"repeats\": true, \"item\": [" + item("c", "boolean") + "]");
  CHECK_THAT(issuesOf(item("a", "group", "\"repeats\": true, \"item\": [" + inner + "]")),
             Contains("a repeating group stands within a repeating group"));
  CHECK_THAT(issuesOf(item("a", "string", "\"repeats\": true, \"item\": [" + item("c", "boolean") + "]")),
             Contains("cannot hold items"));
}

TEST_CASE("The innermost repeating group of an item is found through plain groups") {
  const FormSet forms =
      loaded(item("r", "group",
                  "\"repeats\": true, \"item\": [" +
                      item("plainGroup", "group", "\"item\": [" + item("c", "boolean") + "]") + "]") +
             "," + item("d", "boolean"));
  const Form& form = *forms.byName("t");
  CHECK(Form::repeatingGroupOf(*form.find("c")) == form.find("r"));
  CHECK(Form::repeatingGroupOf(*form.find("r")) == nullptr);
  CHECK(Form::repeatingGroupOf(*form.find("d")) == nullptr);
}
