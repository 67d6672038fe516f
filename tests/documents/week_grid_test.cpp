#include "documents/week_grid.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "documents/client_sheets.h"
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;

namespace {

plan::Exercise exercise(plan::Section section) {
  plan::Exercise made;
  made.title = "Move";
  made.section = section;
  return made;
}

plan::Line line(const plan::Exercise& exercise, std::optional<int> days) {
  plan::Line made;
  made.exercise = &exercise;
  if (days) made.dose.daysPerWeek = base::Rational(*days);
  return made;
}

}  // namespace

TEST_CASE("days are spread over the week, and up to three never touch") {
  for (int count = 0; count <= 7; ++count) {
    const Days days = spreadOver(count);
    CHECK(std::count(days.begin(), days.end(), true) == count);
    if (count <= 3)
      for (std::size_t i = 0; i < 7; ++i) CHECK_FALSE((days[i] && days[(i + 1) % 7]));
  }
}

TEST_CASE("what belongs to every session stands on every day with one") {
  const auto warm = exercise(plan::Section::WarmUp), walk = exercise(plan::Section::Aerobic),
             lift = exercise(plan::Section::Strength);
  plan::StarterPlan plan;
  plan.lines = {line(warm, {}), line(walk, 3), line(lift, 2)};
  const auto days = daysOf(plan, {});
  CHECK(days[0] == Days{true, false, true, true, true, false, false});
  const Table grid = weekGrid(plan, {}, handoutTexts());
  REQUIRE(grid.columns.size() == 8);
  CHECK(grid.columns[1] == "Mon");
  CHECK(grid.rows[1][1].kind == CellKind::TickBox);
  CHECK(grid.rows[1][2].kind == CellKind::Rest);
  CHECK(grid.rows[1][0].text == "2 Move");
}

TEST_CASE("with a limit on the session, strength keeps off the walking days") {
  const auto walk = exercise(plan::Section::Aerobic), lift = exercise(plan::Section::Strength);
  plan::StarterPlan plan;
  plan.lines = {line(walk, 3), line(lift, 2)};
  limits::Limits limits;
  limits.doseCaps["sessionMinutes"] = base::Rational(20);
  const auto days = daysOf(plan, limits);
  for (std::size_t i = 0; i < 7; ++i) CHECK_FALSE((days[0][i] && days[1][i]));
  plan.lines = {line(walk, 7), line(lift, 2)};
  CHECK(daysOf(plan, limits)[1] == spreadOver(2));
}

TEST_CASE("the grid says for which weeks its days hold; a week as the last one shares its row") {
  plan::StarterPlan plan;
  const auto week = [&plan](int number, int days, const std::string& words) {
    plan::Week one;
    one.number = number;
    one.aerobicDays = days;
    one.words = words;
    plan.weeks.push_back(one);
  };
  week(1, 4, "Walk on 4 days.");
  week(2, 4, "Walk on 4 days. The same as last week.");
  CHECK(lastWeekOfGrid(plan) == 0);
  week(3, 5, "Walk on 5 days.");
  week(4, 5, "Walk on 5 days. The same as last week.");
  CHECK(lastWeekOfGrid(plan) == 2);
  CHECK(weekWords(plan) == std::vector<std::string>{"Walk on 4 days.", "Walk on 4 days.", "Walk on 5 days.", "Walk on 5 days."});
  const Table table = weeksTable(plan, handoutTexts());
  REQUIRE(table.rows.size() == 2);
  CHECK(table.rows[0][0].text == handoutTexts().phrase("weeks", {{"from", "1"}, {"to", "2"}}));
  CHECK(weekSection(plan, {}, handoutTexts()).heading == handoutTexts().phrase("gridWeeks", {{"to", "2"}}));
}
