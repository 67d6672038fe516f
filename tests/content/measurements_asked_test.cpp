// Numbers that are asked: what is impossible is refused, what is implausible is asked back, and what
// people know in pounds, inches or degrees Fahrenheit can be entered so.
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <string>
#include <vector>

#include "../support/content.h"

using namespace stile;

namespace {

std::map<std::string, const questionnaire::Item*> numbersAsked() {
  std::map<std::string, const questionnaire::Item*> items;
  for (const auto& form : test::content().forms.forms()) {
    for (const auto* item : form->inOrder()) {
      const auto* fact = test::content().dictionary.find(item->linkId);
      if (fact && fact->valueType.kind == expression::ValueKind::Number) items.emplace(item->linkId, item);
    }
  }
  return items;
}

bool offers(const questionnaire::Item& item, const std::string& unit) {
  return std::find(item.units.begin(), item.units.end(), unit) != item.units.end();
}

}  // namespace

TEST_CASE("Every number that is asked has a possible range, and a plausible one unless it is a short scale") {
  for (const auto& [id, item] : numbersAsked()) {
    const auto& fact = *test::content().dictionary.find(id);
    INFO(id);
    REQUIRE(fact.possibleLow);
    const auto width = base::Rational::subtract(*fact.possibleHigh, *fact.possibleLow);
    REQUIRE(width);
    CHECK((fact.plausibleLow || *width <= base::Rational(24)));
  }
}

TEST_CASE("Weight, length, temperature and sugar can be entered in metric and in customary units") {
  const std::map<std::string, std::vector<std::string>> customary{{"kg", {"[lb_av]"}},
                                                                  {"cm", {"[in_i]", "mm"}},
                                                                  {"m", {"[ft_i]"}},
                                                                  {"Cel", {"[degF]"}},
                                                                  {"m/s", {"[ft_i]/s"}}};
  for (const auto& [id, item] : numbersAsked()) {
    const auto& fact = *test::content().dictionary.find(id);
    INFO(id);
    if (fact.valueType.analyte == base::Analyte::Glucose)
      CHECK((offers(*item, "mmol/L") && offers(*item, "mg/dL")));
    if (fact.valueType.analyte == base::Analyte::HbA1c)
      CHECK((offers(*item, "%") && offers(*item, "mmol/mol")));
    const auto other = customary.find(fact.valueType.unit.text);
    if (other == customary.end()) continue;
    CHECK(std::any_of(other->second.begin(), other->second.end(),
                      [&asked = *item](const std::string& unit) { return offers(asked, unit); }));
  }
}
