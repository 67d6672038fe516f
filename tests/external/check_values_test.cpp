// Published check values (tests/external/check_values.json, each with its source) against the
// program: formulas and classes of rules/reference.json, derived facts, and the rules themselves.
#include <catch2/catch.hpp>
#include <functional>
#include <map>

#include "../support/content.h"
#include "application/screen_client.h"

using namespace stile;
using base::Rational;

namespace {

const base::Date kDay = *base::Date::of(2026, 11, 25);

Rational numberIn(json::Node object, const char* key) { return *object.find(key)->number(); }
std::string wordIn(json::Node object, const char* key) { return object.find(key)->string(); }
std::string textIn(json::Node object, const char* key) { return object.find(key)->numberText(); }

void checkNear(const std::optional<Rational>& actual, json::Node expected, json::Node entry) {
  REQUIRE(actual.has_value());
  CHECK(actual->toDouble() == Approx(expected.number()->toDouble()).margin(numberIn(entry, "tolerance").toDouble() + 1e-9));
}

std::string classed(const std::string& id, const facts::Reference::Inputs& inputs) {
  const auto* row = test::content().reference.classOf(id, inputs);
  return row == nullptr ? "none" : row->code;
}

facts::FactSet factsOf(const std::string& json) {
  base::Issues issues;
  const auto document = test::parsed(json, "facts");
  auto facts = facts::factsFromPlain(test::content().dictionary, test::content().forms, document->root(), kDay, issues);
  std::string told;
  for (const auto& issue : issues.all()) told += toText(issue) + "\n";
  INFO(told);
  REQUIRE_FALSE(issues.hasErrors());
  return facts;
}

std::optional<Rational> derived(const std::string& id, const std::string& json) {
  const auto facts = factsOf(json);
  return facts.at(test::content().dictionary.find(id)->slot).value.low;
}

bool fires(const std::string& rule, const std::string& json) {
  for (const auto& finding : rules::evaluateRules(test::content().rules, factsOf(json), kDay))
    if (finding.rule->id == rule && finding.standing == rules::Standing::Certain) return true;
  return false;
}

const char* formulaOf(const std::string& name) {
  static const std::map<std::string, const char*> ids{{"fox", "heart-rate-fox"}, {"tanaka", "heart-rate-tanaka"},
      {"gellishLinear", "heart-rate-gellish"}, {"gellish", "heart-rate-gellish"},
      {"gellishCurved", "heart-rate-gellish-curved"}, {"gulati", "heart-rate-gulati"}};
  const auto at = ids.find(name);
  return at == ids.end() ? "" : at->second;
}

std::optional<Rational> uptakeOf(json::Node input) {
  const auto& reference = test::content().reference;
  const std::string mode = wordIn(input, "mode");
  if (mode == "walk" || mode == "run")
    return reference.evaluate("uptake-" + mode, {{"speed", numberIn(input, "metresPerMinute")}, {"grade", numberIn(input, "grade")}});
  if (mode == "step")
    return reference.evaluate("uptake-step", {{"rate", numberIn(input, "stepsPerMinute")}, {"height", numberIn(input, "stepMetres")}});
  const Rational mass = numberIn(input, "kilograms");
  if (input.find("watts"))
    return reference.evaluate("uptake-leg-cycle-watts", {{"watts", numberIn(input, "watts")}, {"mass", mass}});
  return reference.evaluate(mode == "armCycle" ? "uptake-arm-cycle" : "uptake-leg-cycle",
                            {{"power", numberIn(input, "kilogramMetresPerMinute")}, {"mass", mass}});
}

void checkUptake(json::Node entry) {
  const auto uptake = uptakeOf(*entry.find("input"));
  const auto expected = *entry.find("expected");
  checkNear(uptake, *expected.find("uptake"), entry);
  checkNear(test::content().reference.evaluate("mets", {{"uptake", *uptake}}), *expected.find("mets"), entry);
}

/// The pre-participation algorithm, through the whole program: a healthy person of the given kind.
void checkBranch(json::Node entry) {
  const auto input = *entry.find("input");
  const bool active = input.find("regularlyActive")->boolean();
  const auto path = std::filesystem::path(STILE_SOURCE_DIR) / "tests/cases/branch-r1.json";
  std::string person = test::textOf(path);
  const auto document = test::parsed(person, "branch-r1");
  json::Writer writer;
  const auto facts = *document->root().find("facts");
  writer.beginObject();
  for (std::size_t i = 0; i < facts.size(); ++i) {
    const std::string& key = facts.keyAt(i);
    if (key == "activityDaysPerWeek" && !active) {
      writer.member(key, 0);
    } else if (key == "kidneyDisease") {
      writer.member(key, input.find("knownDisease")->boolean());
    } else if (key == "palpitations") {
      writer.member(key, input.find("anySymptom")->boolean());
    } else {
      writer.key(key).copy(facts.at(i));
    }
  }
  // The follow-ups of a kidney disease, answered; unanswered ones would hold the plan on their own.
  if (input.find("knownDisease")->boolean())
    for (const char* followUp : {"onDialysis", "potassiumHigh"}) writer.member(followUp, false);
  writer.endObject();
  base::Issues issues;
  const auto screened = application::screenClient(test::content(), {{"person", writer.text()}}, kDay, issues);
  std::string told;
  for (const auto& issue : issues.all()) told += toText(issue) + "\n";
  INFO(told);
  REQUIRE(screened.ok());
  const auto expected = *entry.find("expected");
  const auto& floor = screened.value().floor;
  CHECK(std::string(limits::idOf(floor.limits.clearance.aerobic)) == wordIn(expected, "clearance"));
  CHECK(std::string(limits::idOf(floor.usable.aerobic)) == wordIn(expected, "allowedNow"));
}

/// The table of actions, through the rules, for a client on insulin.
void checkGlucose(json::Node entry) {
  const auto input = *entry.find("input");
  const std::string reading = textIn(input, "value") + " " + wordIn(input, "unit");
  const std::string facts = R"({"takesInsulin": true, "hypoglycaemiaRisk": true, "bloodGlucose": ")" + reading + "\"}";
  const std::string action = entry.find("expected")->string();
  INFO(reading);
  CHECK(fires("glucose-gate", facts) == (action == "carbohydrateFirst"));
  CHECK(fires("glucose-snack", facts) == (action == "carbohydrateAtStart"));
  CHECK(fires("glucose-high", facts) == (action == "ketonesThenModerate" || action == "ketonesThenAskPrescriber"));
  CHECK(fires("glucose-very-high", facts) == (action == "ketonesThenAskPrescriber"));
}

void checkKetones(json::Node entry) {
  const auto input = *entry.find("input");
  const std::string facts = R"({"bloodKetones": ")" + textIn(input, "value") + " " + wordIn(input, "unit") + "\"}";
  const std::string action = entry.find("expected")->string();
  INFO(facts);
  CHECK(fires("ketones-slight", facts) == (action == "lightAfterCorrection"));
  CHECK(fires("ketones-high", facts) == (action == "noExercise" || action == "urgent"));
  CHECK(fires("ketones-urgent", facts) == (action == "urgent"));
}

void checkChairStand(json::Node entry) {
  const auto input = *entry.find("input");
  const auto facts = factsOf("{\"sex\": \"" + wordIn(input, "sex") + "\", \"age\": " + textIn(input, "age") +
                             ", \"chairStandCount\": " + textIn(input, "count") + ", \"chairStandUsedArms\": false}");
  CHECK(facts.at(test::content().dictionary.find("chairStandLevel")->slot).value.text.value_or("unknown") ==
        entry.find("expected")->string());
}

void checkSixMinutes(json::Node entry) {
  const auto input = *entry.find("input");
  const bool isMan = wordIn(input, "sex") == "male";
  const auto actual = derived(isMan ? "walkExpectedMen" : "walkExpectedWomen",
      "{\"age\": " + textIn(input, "age") + ", \"bodyHeight\": \"" + textIn(input, "centimetres") + " cm\", \"bodyWeight\": \"" +
          textIn(input, "kilograms") + " kg\"}");
  checkNear(actual, *entry.find("expected")->find("expected"), entry);
}

void checkWaist(json::Node entry) {
  const auto input = *entry.find("input");
  const auto facts = factsOf("{\"sex\": \"" + wordIn(input, "sex") + "\", \"waist\": \"" + textIn(input, "centimetres") + " cm\"}");
  const auto isTrue = [&](const char* id) {
    return facts.at(test::content().dictionary.find(id)->slot).value.truth == expression::Truth::True;
  };
  const std::string risk = isTrue("waistHigh") ? "substantial" : isTrue("waistIncreased") ? "increased" : "usual";
  CHECK(risk == entry.find("expected")->string());
}

void checkShortPerformance(json::Node entry) {
  const auto input = *entry.find("input");
  const auto seconds = [&](const char* name) { return "\"" + textIn(input, name) + " s\""; };
  const auto actual = derived(
      "performanceScore", "{\"balanceTogetherTime\": " + seconds("together") + ", \"balanceSemiTandemTime\": " +
                              seconds("semiTandem") + ", \"balanceTandemTime\": " + seconds("tandem") +
                              ", \"walkFourMetresTime\": " + seconds("walk") + ", \"chairRiseFiveTime\": " +
                              seconds("rises") + "}");
  checkNear(actual, *entry.find("expected"), entry);
}

using Check = std::function<void(json::Node)>;

const std::map<std::string, Check>& checks() {
  static const std::map<std::string, Check> all{
      {"screeningBranch", checkBranch},
      {"oxygenUptake", checkUptake},
      {"glucoseAction", checkGlucose},
      {"ketoneAction", checkKetones},
      {"chairStandLevel", checkChairStand},
      {"sixMinuteWalk", checkSixMinutes},
      {"waistRisk", checkWaist},
      {"shortPerformance", checkShortPerformance},
      {"activityLevel",
       [](json::Node entry) {
         CHECK(classed("activity-class", {{"value", numberIn(*entry.find("input"), "minutesPerWeek")}}) ==
               entry.find("expected")->string());
       }},
      {"activityMinutesPerWeek",
       [](json::Node entry) {
         const auto input = *entry.find("input");
         checkNear(derived("activityMinutesPerWeek", "{\"activityDaysPerWeek\": " + textIn(input, "daysPerWeek") +
                                                         ", \"activityMinutesPerDay\": " + textIn(input, "minutesPerDay") + "}"),
                   *entry.find("expected")->find("value"), entry);
       }},
      {"intensityBand",
       [](json::Node entry) {
         const auto input = *entry.find("input");
         CHECK(classed("band-" + wordIn(input, "measure"), {{"value", numberIn(input, "value")}}) == entry.find("expected")->string());
       }},
      {"maximalHeartRate",
       [](json::Node entry) {
         const auto input = *entry.find("input");
         checkNear(test::content().reference.evaluate(formulaOf(wordIn(input, "formula")), {{"age", numberIn(input, "age")}}),
                   *entry.find("expected")->find("value"), entry);
       }},
      {"targetHeartRate",
       [](json::Node entry) {
         const auto input = *entry.find("input");
         checkNear(test::content().reference.evaluate("heart-rate-target", {{"maximal", numberIn(input, "maximal")},
                       {"resting", numberIn(input, "resting")}, {"percent", numberIn(input, "percentReserve")}}),
                   *entry.find("expected")->find("value"), entry);
       }},
      {"pressureCategory",
       [](json::Node entry) {
         const auto input = *entry.find("input");
         CHECK(classed("pressure-category", {{"systolic", numberIn(input, "systolic")}, {"diastolic", numberIn(input, "diastolic")}}) ==
               entry.find("expected")->string());
       }},
      {"bodyMassClass",
       [](json::Node entry) {
         CHECK(classed("body-mass-class", {{"value", numberIn(*entry.find("input"), "value")}}) == entry.find("expected")->string());
       }},
      {"bodyMassIndex", [](json::Node entry) {
         const auto input = *entry.find("input");
         checkNear(derived("bmi", "{\"bodyWeight\": \"" + textIn(input, "kilograms") + " kg\", \"bodyHeight\": \"" +
                                      textIn(input, "metres") + " m\"}"),
                   *entry.find("expected")->find("value"), entry);
       }},
      {"glucoseConversion", [](json::Node entry) {
         const auto input = *entry.find("input");
         checkNear(derived("bloodGlucose", "{\"bloodGlucose\": \"" + textIn(input, "value") + " mg/dL\"}"),
                   *entry.find("expected")->find("value"), entry);
       }}};
  return all;
}

}  // namespace

TEST_CASE("The program agrees with the published check values, each with its source") {
  const auto path = std::filesystem::path(STILE_SOURCE_DIR) / "tests/external/check_values.json";
  const auto document = test::parsed(test::textOf(path), "check_values.json");
  const auto values = *document->root().find("values");
  int checked = 0;
  std::map<std::string, int> notOurs;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const auto entry = values.at(i);
    const std::string what = wordIn(entry, "what");
    const auto at = checks().find(what);
    if (at == checks().end()) {
      ++notOurs[what];
      continue;
    }
    INFO(what << " at line " << entry.place().line << ", source " << wordIn(entry, "source"));
    at->second(entry);
    ++checked;
  }
  std::string rest;
  for (const auto& [what, count] : notOurs) rest += "\n  " + what + " (" + std::to_string(count) + ")";
  WARN(checked << " check values; listed but not computed by the program:" << rest);
  CHECK(checked > 200);
}
