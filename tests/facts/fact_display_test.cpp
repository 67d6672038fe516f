#include <set>

#include "sample_facts.h"

using namespace stile;
using namespace stile::sample;

TEST_CASE("Units read as everyday signs") {
  CHECK(facts::unitWords("mm[Hg]") == "mmHg");
  CHECK(facts::unitWords("/min") == "per min");
  CHECK(facts::unitWords("{beats}/min") == "per min");
  CHECK(facts::unitWords("Cel") == "°C");
  CHECK(facts::unitWords("kg/m2") == "kg/m²");
  CHECK(facts::unitWords("{steps}").empty());
  CHECK(facts::unitWords("1").empty());
  CHECK(facts::unitWords("mmol/L") == "mmol/L");
}

TEST_CASE("Values read as on paper, with bounds in words") {
  Sample sample(fact("rate", "quantity", R"("unit": "/min")") + "," +
                fact("saturation", "quantity", R"("unit": "%")") + "," +
                fact("months", "quantity", R"("unit": "mo")") + "," + fact("n", "integer") + "," +
                fact("t", "quantity", R"("unit": "Cel")") + "," +
                fact("far", "decimal", R"("derived": {"expression": "%n * -239.7"})") + "," +
                fact("near", "decimal", R"("derived": {"expression": "%n * -12.34"})"));
  const auto set = sample.plain(
      R"({"rate": "64 /min", "saturation": "97 %", "months": "1 mo", "n": -2, "t": "98.6 [degF]"})");
  CHECK(sample.say(set, "rate") == "64 per min");
  CHECK(sample.say(set, "saturation") == "97%");
  CHECK(sample.say(set, "months") == "1 month");
  CHECK(sample.say(set, "n") == "-2");
  CHECK(sample.say(set, "far") == "479");  // worked out: no decimal that says more than the formula knows
  CHECK(sample.say(set, "near") == "24.7");
  CHECK(sample.say(set, "t") == "37 °C (given as 98.6 °F)");

  facts::Fact fact;
  fact.reason = UnknownReason::None;
  const auto& definition = sample.dictionary.at(sample.slot("months"));
  const auto say = [&](std::optional<base::Rational> low, std::optional<base::Rational> high) {
    fact.value = expression::Value::between(low, high);
    return facts::display(definition, fact);
  };
  CHECK(say(3, 5) == "between 3 and 5 months");
  CHECK(say(3, std::nullopt) == "at least 3 months");
  CHECK(say(std::nullopt, 1) == "at most 1 month");
  CHECK(say(base::Rational::parse("41.3333"), base::Rational::parse("41.3333")) == "41.3 months");
}

TEST_CASE("Dates read as far as they are known") {
  Sample sample(fact("d", "date"));
  CHECK(sample.say(sample.plain(R"({"d": "2025-03-01"})"), "d") == "1 March 2025");
  CHECK(sample.say(sample.plain(R"({"d": "2025-03"})"), "d") == "March 2025");
  CHECK(sample.say(sample.plain(R"({"d": "2025"})"), "d") == "2025");
}

TEST_CASE("Every reason has words and an id of its own") {
  std::set<std::string> words;
  std::set<std::string> ids;
  for (int i = 0; i <= static_cast<int>(UnknownReason::Unresolved); ++i) {
    const auto reason = static_cast<UnknownReason>(i);
    words.insert(facts::toText(reason));
    ids.insert(facts::idOf(reason));
  }
  CHECK(words.size() == 10);
  CHECK(ids.size() == 10);
  CHECK(facts::statedReason("notSure") == UnknownReason::NotSure);
  CHECK_FALSE(facts::statedReason("outOfDate"));
  CHECK(facts::graver(UnknownReason::NotAsked, UnknownReason::NotSure) == UnknownReason::NotSure);
}
