// What stands beside the lines of a plan.
#include "desktop/plan_view.h"

#include <catch2/catch.hpp>

using namespace stile;

namespace {

plan::StarterPlan threeWeeks() {
  plan::StarterPlan plan;
  for (int number = 1; number <= 3; ++number) {
    plan::Week week;
    week.number = number;
    week.aerobicDays = 3;
    week.aerobicMinutesPerWeek = 30 * number;
    week.strengthDays = 2;
    plan.weeks.push_back(week);
  }
  return plan;
}

double heightOf(const drawing::Drawing& curve, std::size_t bar) {
  std::size_t seen = 0;
  for (const auto& shape : curve.shapes)
    if (const auto* rectangle = std::get_if<drawing::Rectangle>(&shape.form); rectangle != nullptr && seen++ == bar) return rectangle->height;
  return 0;
}

}  // namespace

TEST_CASE("The weeks of a plan are drawn to scale, with their numbers, and told in words") {
  const auto curve = desktop::weekCurveOf(threeWeeks());
  CHECK(heightOf(curve, 2) == Approx(3 * heightOf(curve, 0)));
  std::string words;
  for (const auto& run : drawing::textRunsOf(curve)) words += run.text + "|";
  CHECK(words.find("30|1|3|2|") != std::string::npos);
  CHECK(words.find("90|3|3|2|") != std::string::npos);
  CHECK(curve.description.find("Week 2: 60 minutes on 3 days, strength on 2.") != std::string::npos);
}

TEST_CASE("A plan without weeks draws nothing") { CHECK(desktop::weekCurveOf({}).shapes.empty()); }

TEST_CASE("Weeks without aerobic work have no bar, and nothing is divided by nothing") {
  plan::StarterPlan plan = threeWeeks();
  for (auto& week : plan.weeks) week.aerobicMinutesPerWeek = 0;
  CHECK(heightOf(desktop::weekCurveOf(plan), 0) == 0);
}

TEST_CASE("Reasons of a plan name findings by their titles, not rules by their ids") {
  rules::Rule hip, knee;
  hip.id = "hip-replacement";
  hip.title = "Hip replacement";
  knee.id = "knee-sore";
  knee.title = "A sore knee";
  std::vector<rules::Finding> findings(2);
  findings[0].rule = &hip;
  findings[1].rule = &knee;

  const auto one = desktop::plainReasonOf("hip bends 110 degrees, limit 90 (hip-replacement)", findings);
  CHECK(one.sentence == "hip bends 110 degrees, limit 90");
  CHECK(one.findings == "Hip replacement");

  const auto both = desktop::plainReasonOf("load (hip-replacement, knee-sore); on one leg (knee-sore)", findings);
  CHECK(both.sentence == "load; on one leg");
  CHECK(both.findings == "Hip replacement · A sore knee");

  // Brackets that name no rule are words like others.
  const auto plain = desktop::plainReasonOf("needs a mat (or a folded blanket) (hip-replacement)", findings);
  CHECK(plain.sentence == "needs a mat (or a folded blanket)");
  CHECK(plain.findings == "Hip replacement");
  CHECK(desktop::plainReasonOf("", findings).sentence.empty());
}
