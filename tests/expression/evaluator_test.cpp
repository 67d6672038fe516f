// The full evaluator beyond the official suite: what each function gives, by the specification's own
// examples where it has some, and what FHIR and its questionnaires add.
#include "expression/evaluator.h"

#include <catch2/catch.hpp>

using namespace stile;
using namespace stile::expression;

namespace {

const char* const kResponse = R"({
  "resourceType": "QuestionnaireResponse",
  "status": "completed",
  "contained": [{"resourceType": "Patient", "id": "p", "active": true}],
  "subject": {"reference": "#p"},
  "item": [
    {"linkId": "pain", "answer": [{"valueCoding": {"system": "http://s.example", "code": "often"}}]},
    {"linkId": "rest", "answer": [{"valueCoding": {"system": "http://s.example", "code": "never",
      "extension": [{"url": "http://hl7.org/fhir/StructureDefinition/itemWeight", "valueDecimal": 7}]}}]},
    {"linkId": "weight", "answer": [{"valueQuantity": {"value": 82.50, "system": "http://unitsofmeasure.org", "code": "kg"}}]},
    {"linkId": "age", "answer": [{"valueQuantity": {"value": 40, "system": "http://unitsofmeasure.org", "code": "a"}}]},
    {"linkId": "born", "answer": [{"valueDate": "1986-03"}]},
    {"linkId": "text", "answer": [{"valueString": "a"}, {"_valueString": {"extension": [{"url": "http://x.example", "valueCode": "asked-declined"}]}}]}
  ]
})";

const char* const kForm = R"({
  "resourceType": "Questionnaire", "status": "draft",
  "item": [{"linkId": "group", "type": "group", "item": [{"linkId": "pain", "type": "choice", "answerOption": [
    {"extension": [{"url": "http://hl7.org/fhir/StructureDefinition/ordinalValue", "valueDecimal": 3}],
     "valueCoding": {"system": "http://s.example", "code": "often"}},
    {"valueCoding": {"system": "http://s.example", "code": "never"}}]}]}]
})";

struct Documents {
  std::shared_ptr<const json::Document> response, form;
  Documents() {
    base::Issues issues;
    response = json::Document::parse(kResponse, "response.json", issues);
    form = json::Document::parse(kForm, "form.json", issues);
    REQUIRE(response);
    REQUIRE(form);
  }
};

Environment surroundings(const Documents& documents) {
  Environment environment;
  environment.clock = *Clock::parse("2026-11-25T23:30:00.000+02:00");
  environment.variables["questionnaire"] = itemsOf(documents.form->root(), r4Model());
  environment.variables["limit"] = {Item::integer(40)};
  return environment;
}

/// The result in words: texts bare, several joined by a bar; errors begin with an exclamation mark.
std::string given(const std::string& text, bool isStrict = false) {
  static const Documents documents;
  Environment environment = surroundings(documents);
  environment.isStrict = isStrict;
  base::Issues issues;
  const auto parsed = Expression::parse(text, "test", issues);
  const auto result =
      parsed ? parsed->evaluate(itemsOf(documents.response->root(), r4Model()), environment, issues)
             : std::nullopt;
  if (!result) return "!" + issues.all().front().message;
  std::string words;
  for (const Item& item : *result) {
    if (!words.empty()) words += "|";
    words += item.toText().value_or("{" + item.typeName().name + "}");
  }
  return words;
}

struct Row {
  const char* text;
  const char* wanted;
};

void check(std::initializer_list<Row> rows) {
  for (const Row& row : rows) {
    INFO(row.text);
    CHECK(given(row.text) == row.wanted);
  }
}

}  // namespace

TEST_CASE("choices are read without their type, and only so") {
  check({{"item.answer.value.ofType(Quantity).value", "82.50|40"},
         {"item.answer.valueQuantity", ""},
         {"item.where(linkId = 'born').answer.value is date", "true"},
         {"item.where(linkId = 'weight').answer.value.type().name", "Quantity"},
         {"item.answer.type().name.distinct()", "BackboneElement"},
         {"item.descendants().ofType(Coding).code", "often|never"},
         {"contained.type().name", "Patient"},
         {"QuestionnaireResponse.contained.ofType(Patient).active", "true"},
         {"Resource.status", "completed"},
         {"Patient.status", ""},
         {"contained.id.type().namespace | linkId.type().namespace | item.first().linkId.type().namespace",
          "System|FHIR"}});
}

TEST_CASE("a primitive that has extensions only is there, without a value") {
  const std::string last = "item.where(linkId = 'text').answer.value.last()";
  CHECK(given(last + ".exists()") == "true");
  CHECK(given(last + ".hasValue()") == "false");
  CHECK(given(last + ".extension('http://x.example').value") == "asked-declined");
  CHECK(given("item.where(linkId = 'text').answer.value.first().hasValue()") == "true");
  CHECK(given("item.where(linkId = 'text').answer.value.first().getValue().type().namespace") == "System");
}

TEST_CASE("durations of a resource go with calendar durations and definite ones") {
  const std::string age = "item.where(linkId = 'age').answer.value";
  CHECK(given(age + " = 40 years") == "true");
  CHECK(given(age + " > 39 'a'") == "true");
  CHECK(given(age + " >= 480 months") == "true");
  CHECK(given("@2026-11-25 - " + age + ".ofType(Quantity)") == "1986-11-25");
  CHECK(given("1 year = 1 'a'") == "");
  CHECK(given("1 year ~ 1 'a'") == "true");
  CHECK(given("1 year = 12 months") == "true");
  CHECK(given("1 week = 7 'd'") == "true");
  CHECK(given("item.where(linkId = 'weight').answer.value > 180 '[lb_av]'") == "true");
  CHECK(given("item.where(linkId = 'weight').answer.value / (1.8 'm' * 1.8 'm') > 25 'kg/m2'") == "true");
}

TEST_CASE("scores come from the answer or from the option of the form") {
  CHECK(given("item.where(linkId = 'pain').answer.value.weight()") == "3");
  CHECK(given("item.where(linkId = 'pain').answer.weight()") == "3");
  CHECK(given("item.where(linkId = 'rest').answer.value.ordinal()") == "7");
  CHECK(given("item.answer.weight().sum()") == "10");
  CHECK(given("item.where(linkId = 'weight').answer.value.weight()") == "");
}

TEST_CASE("variables, the clock and references") {
  check({{"%limit + 2", "42"},
         {"%questionnaire.item.item.linkId", "pain"},
         {"%ucum", "http://unitsofmeasure.org"},
         {"%`ext-patient-birthTime`", "http://hl7.org/fhir/StructureDefinition/patient-birthTime"},
         {"%'vs-administrative-gender'", "http://hl7.org/fhir/ValueSet/administrative-gender"},
         {"%resource.status & %context.status & %rootResource.status", "completedcompletedcompleted"},
         {"%limits", "!there is no variable %limits"},
         {"today()", "2026-11-25"},
         {"now()", "2026-11-25T23:30:00.000+02:00"},
         {"timeOfDay()", "23:30:00.000"},
         {"now() = @2026-11-25T21:30:00Z", "true"},
         // Without an offset a moment is in the zone of the clock.
         {"now() = @2026-11-25T23:30:00", "true"},
         {"subject.resolve().id", "p"},
         {"subject.reference.resolve().active", "true"},
         {"'Patient/9'.resolve()", ""},
         {"defineVariable('n', item.count()).item.first().select(%n)", "6"},
         {"item.defineVariable('n').select(%n.count()).first()", "6"},
         {"item.select(defineVariable('l', linkId).select(%l)).first()", "pain"},
         {"(1).defineVariable('a').select(%a) + %a", "!there is no variable %a"},
         {"defineVariable('limit')", "!%limit is defined already"}});
}

TEST_CASE("a strict evaluation refuses what the types do not have") {
  CHECK(given("item.linkIt") == "");
  CHECK(given("item.linkIt", true) == "!BackboneElement has no element linkIt");
  CHECK(given("item.answer.valueQuantity", true) == "!BackboneElement has no element valueQuantity");
  CHECK(given("item.answer.value.unit", true) != "");
  CHECK(given("item.linkId", true) == "pain|rest|weight|age|born|text");
  CHECK(given("1 is Strin") == "!there is no type Strin");
}

TEST_CASE("dates and times known in part") {
  check(
      {{"@2020 = @2020-01", ""},
       {"@2020 < @2021-01", "true"},
       {"@2020-03 + 1 day", "2020-03"},
       {"@2020-01-31 + 1 month", "2020-02-29"},
       {"@2020-02-29 - 1 year", "2019-02-28"},
       {"@2014 + 24 months", "2016"},
       {"@2014 - 24 months", "2012"},
       {"@2016 + 365 days", "2017"},
       {"@2020-01-01T10:00:00.000Z + 1500 milliseconds", "2020-01-01T10:00:01.500Z"},
       {"@T23:30 + 45 minutes", "00:15"},
       {"@T10:00 + 1 day", "!1 day cannot be added to a time of day"},
       {"@2020-01-01 + 1 'mo'",
        "!1 'mo' cannot be added to a date or time: write a calendar duration such as 1 year"},
       {"@2012-04-15T15:00:00Z = @2012-04-15T10:00:00-05:00", "true"},
       {"@2018-03-01T10:30:00 ~ @2018-03-01T10:30", "false"},
       {"@2020-02.lowBoundary()", "2020-02-01"},
       {"@2020-02.highBoundary()", "2020-02-29"},
       {"@2020-02T.highBoundary()", "2020-02-29T23:59:59.999-12:00"},
       {"@T10:30.lowBoundary()", "10:30:00.000"},
       {"1.587.lowBoundary()", "1.58650000"},
       {"1.587.highBoundary(2)", "1.59"},
       {"(-1.587).lowBoundary(2)", "-1.59"},
       {"@2014.precision() | @2014-01-05T10:30:00.000.precision() | @T10:30.precision() | "
        "1.58700.precision()",
        "4|17|5"},
       {"@2020-05-17T10:20:30.400+05:30.yearOf() | @2020-05-17.monthOf() | @2020-05-17.dayOf()", "2020|5|17"},
       {"@2020-05-17T10:20:30.400+05:30.timezoneOffsetOf()", "5.5"},
       {"@2020-05-17T10:20:30.400+05:30.timeOf()", "10:20:30.400"},
       {"@2020-05-17T10:20:30.400+05:30.dateOf()", "2020-05-17"},
       {"@2020-05.dayOf()", ""}});
}

TEST_CASE("texts") {
  check({{"'abcdefg'.substring(7, 1)", ""},
         {"'caf\xC3\xA9'.length()", "4"},
         {"'caf\xC3\xA9'.upper()", "CAF\xC3\x89"},
         {"'\xC3\x84\xC3\x96'.lower()", "\xC3\xA4\xC3\xB6"},
         {"'\xC3\x84 b' ~ '\xC3\xA4\\tB'", "true"},
         {"'caf\xC3\xA9s'.indexOf('s')", "4"},
         {"'abcabc'.lastIndexOf('bc')", "4"},
         {"'abc'.lastIndexOf('')", "3"},
         {"'11/30/1972'.replaceMatches('\\\\b(?<month>\\\\d{1,2})/(?<day>\\\\d{1,2})/"
          "(?<year>\\\\d{2,4})\\\\b', '${day}-${month}-${year}')",
          "30-11-1972"},
         {"'abc'.replaceMatches('', 'x')", "abc"},
         {"'abc'.replaceMatches('x*', '-')", "-a-b-c-"},
         {"'aBc'.matches('abc', 'i')", "true"},
         {"'abc'.matchesFull('b')", "false"},
         {"'a,b'.split(',').join('-')", "a-b"},
         {"'a\xC3\xA9'.encode('hex')", "61c3a9"},
         {"'subjects?_d'.encode('base64').decode('base64')", "subjects?_d"},
         {"'?\?>'.encode('urlbase64')", "Pz8-"},
         {"'ff'.decode('hex')", ""},
         {"'<a href=\"x\">'.escape('html').unescape('html')", "<a href=\"x\">"},
         {"'\"1<2\"'.escape('json')", "\\\"1<2\\\""},
         {"('a' | 'b').upper()", "!one item is needed here, and there are 2"},
         {"1.upper()", "!upper() is asked of a text only"}});
}

TEST_CASE("numbers") {
  check({{"1 / 3 * 3 = 1", "true"},
         {"0.1 + 0.2 = 0.3", "true"},
         {"5 mod 3 | -5 mod 3 | 5.5 mod 0.7", "2|-2|0.6"},
         {"-5 div 2", "-2"},
         {"2.5.round() | (-2.5).round() | 2.45.round(1)", "3|-3|2.5"},
         {"2147483647 + 1", ""},
         {"12345678901", "!this is larger than the largest Integer, 2147483647"},
         {"2.power(10) | 2.power(0.5).round(6) | 2.power(-1)", "1024|1.414214|0.5"},
         {"1.0.toString() | (1.0 + 1.0).toString()", "1.0|2"},
         {"(3 | 1 | 2).sort()", "1|2|3"},
         {"(3 | 1 | 2).sort(-$this)", "3|2|1"},
         {"item.sort(linkId).linkId", "age|born|pain|rest|text|weight"},
         {"(1 | 2 | 3 | 6).avg()", "3"},
         {"('a' | 'c' | 'b').max()", "c"},
         {"(1 'kg' | 500 'g').sum()", "1500 'g'"},
         {"coalesce({}, item.where(false), 'x')", "x"},
         {"true + 1", "!+ does not go with System.Boolean and System.Integer"},
         {"{} + true", ""},
         {"20 'Cel' * 2", ""},
         {"10 'kg' / 2 years", ""},
         {"('a' | 'b') + {}", ""},
         {"('a' | 'b').sum()", "!sum() is asked of numbers and quantities only"},
         {"(1 'kg' | 2 'm').sort()", "!the order of two of these items is undecided"}});
}

TEST_CASE("what is wrong with an expression is found before it is evaluated") {
  check({{"item.frist()", "!there is no function frist()"},
         {"item.where()", "!where() takes 1 argument, not 0"},
         {"item.first(1)", "!first() takes 0 arguments, not 1"},
         {"iif(true, 1, item.frist())", "!there is no function frist()"},
         {"item.answer.value.memberOf('x')",
          "!memberOf() needs a terminology or profile service, and there is none here"}});
  base::Issues issues;
  const auto parsed =
      Expression::parse("%a + %b.where(%a > %c) + defineVariable('d').select(%d)", "test", issues);
  REQUIRE(parsed);
  CHECK(parsed->variablesRead() == std::vector<std::string>{"a", "b", "c"});
}

TEST_CASE("an error stands where it arose") {
  base::Issues issues;
  const auto parsed = Expression::parse("1 + (2\n  + ('a' | 'b'))", "rule", issues);
  REQUIRE(parsed);
  CHECK_FALSE(parsed->evaluate({}, {}, issues));
  CHECK(base::toText(issues.all().front()).starts_with("rule:1:6: one item is needed here"));
  base::Issues later;
  const auto call = Expression::parse("status.lower()\n  .substring('a')", "rule", later);
  REQUIRE(call);
  CHECK_FALSE(call->evaluate({Item::text("x")}, {}, later).has_value());
}

TEST_CASE("a result as a condition") {
  CHECK(asCondition({}) == false);
  CHECK(asCondition({Item::boolean(false)}) == false);
  CHECK(asCondition({Item::boolean(true)}) == true);
  CHECK(asCondition({Item::text("no")}) == true);
  CHECK_FALSE(asCondition({Item::boolean(true), Item::boolean(true)}).has_value());
}

TEST_CASE("trace tells what it saw and changes nothing") {
  const Documents documents;
  Environment environment = surroundings(documents);
  std::vector<Traced> traces;
  environment.traces = &traces;
  base::Issues issues;
  const auto parsed = Expression::parse("item.trace('ids', linkId).count()", "test", issues);
  REQUIRE(parsed);
  const auto result = parsed->evaluate(itemsOf(documents.response->root(), r4Model()), environment, issues);
  REQUIRE(result);
  CHECK(result->front().integer() == 6);
  REQUIRE(traces.size() == 1);
  CHECK(traces[0].name == "ids");
  CHECK(traces[0].items.size() == 6);
}
