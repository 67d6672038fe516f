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
