#include <catch2/catch.hpp>

#include "planning.h"

using namespace stile;
using namespace stile::plan;
using base::Rational;

namespace {

void checkNeverDown(const StarterPlan& plan) {
  for (std::size_t i = 1; i < plan.weeks.size(); ++i) {
    CHECK(plan.weeks[i].aerobicMinutesPerSession >= plan.weeks[i - 1].aerobicMinutesPerSession);
    CHECK(plan.weeks[i].aerobicDays >= plan.weeks[i - 1].aerobicDays);
    CHECK(plan.weeks[i].strengthSets >= plan.weeks[i - 1].strengthSets);
    CHECK(plan.weeks[i].strengthRepetitions >= plan.weeks[i - 1].strengthRepetitions);
  }
}

limits::Limits progressing(limits::Progression progression) {
  limits::Limits asked;
  asked.progression = progression;
  return asked;
}

}  // namespace

TEST_CASE("Weeks run from 1 to 12 and never go down, at every level") {
  for (char level : {'A', 'B', 'C', 'D'}) {
    const auto plan = Client().hasEverything().startsAt(level).plan();
    REQUIRE(plan.weeks.size() == 12);
    CHECK(plan.weeks.front().number == 1);
    CHECK(plan.weeks.back().number == 12);
    checkNeverDown(plan);
    CHECK(plan.weeks.back().aerobicMinutesPerWeek > plan.weeks.front().aerobicMinutesPerWeek);
  }
}

TEST_CASE("The first week is the starting dose") {
  const auto plan = Client().hasEverything().plan();
  CHECK(plan.weeks.front().aerobicMinutesPerSession == Rational(10));
  CHECK(plan.weeks.front().aerobicMinutesPerWeek == Rational(30));
  CHECK(plan.weeks.front().strengthSets == Rational(1));
}

TEST_CASE("Sessions get longer before days are added, at most ten minutes more") {
  for (char level : {'A', 'B', 'C', 'D'}) {
    const auto plan = Client().startsAt(level).plan();
    for (std::size_t i = 1; i < plan.weeks.size(); ++i) {
      const auto& before = plan.weeks[i - 1];
      const auto& now = plan.weeks[i];
      CHECK(*Rational::subtract(now.aerobicMinutesPerSession, before.aerobicMinutesPerSession) <= Rational(10));
      if (now.aerobicDays > before.aerobicDays) CHECK(before.aerobicMinutesPerSession >= Rational(30));
    }
  }
}

TEST_CASE("Level C reaches 150 minutes a week within the twelve weeks and stops there") {
  const auto plan = Client().startsAt('C').plan();
  CHECK(plan.weeks.back().aerobicMinutesPerWeek == Rational(150));
}

TEST_CASE("No week goes above a cap, and the cap that stops growth is named") {
  const auto plan = Client().hasEverything().startsAt('C').under("lungs", dosed("aerobicMinutesPerSession", 20))
                        .under("weary", dosed("aerobicDaysPerWeek", 3)).under("bones", dosed("strengthRepetitions", 11))
                        .under("frail", dosed("strengthSets", 1)).plan();
  bool isNamed = false;
  for (const Week& week : plan.weeks) {
    CHECK(week.aerobicMinutesPerSession <= Rational(20));
    CHECK(week.aerobicDays <= Rational(3));
    CHECK(week.strengthRepetitions <= Rational(11));
    CHECK(week.strengthSets <= Rational(1));
    isNamed = isNamed || week.heldBy.find("lungs") != std::string::npos;
  }
  CHECK(isNamed);
  checkNeverDown(plan);
}

TEST_CASE("A session cap also bounds growth") {
  const auto plan = Client().startsAt('C').under("tired", dosed("sessionMinutes", 30)).plan();
  for (const Week& week : plan.weeks) CHECK(week.aerobicMinutesPerSession <= Rational(20));
}

TEST_CASE("Slow progression grows half as often, none does not grow at all") {
  const auto normal = Client().startsAt('C').plan();
  const auto slow = Client().startsAt('C').under("r", progressing(limits::Progression::Slow)).plan();
  const auto none = Client().startsAt('C').under("long-covid", progressing(limits::Progression::None)).plan();
  CHECK(slow.weeks.back().aerobicMinutesPerWeek < normal.weeks.back().aerobicMinutesPerWeek);
  CHECK(slow.weeks.back().aerobicMinutesPerWeek > slow.weeks.front().aerobicMinutesPerWeek);
  CHECK(none.weeks.back().aerobicMinutesPerWeek == none.weeks.front().aerobicMinutesPerWeek);
  CHECK(none.weeks.back().heldBy.find("long-covid") != std::string::npos);
  CHECK(none.notes.size() > normal.notes.size());
  checkNeverDown(slow);
}

TEST_CASE("Every plan tells what to do on a bad day, after a missed week and after an illness") {
  const auto plan = Client().plan();
  CHECK_FALSE(plan.badDay.empty());
  CHECK_FALSE(plan.missedWeek.empty());
  CHECK_FALSE(plan.afterIllness.empty());
  CHECK(plan.effortWords.size() == 6);
}
