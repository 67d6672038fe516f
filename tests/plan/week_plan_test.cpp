#include <algorithm>
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

TEST_CASE("Balance minutes and repeated stretches grow to the goal of the level, within their caps") {
  const auto plan = Client().hasEverything().plan();
  CHECK(plan.weeks.front().balanceMinutes == Rational(5));
  CHECK(plan.weeks.back().balanceMinutes == Rational(15));
  CHECK(plan.weeks.front().stretchRepetitions == Rational(2));
  CHECK(plan.weeks.back().stretchRepetitions == Rational(3));
  const auto capped = Client().hasEverything().under("fear", dosed("balanceMinutes", 10)).plan();
  CHECK(capped.weeks.back().balanceMinutes == Rational(10));
  CHECK(std::any_of(capped.weeks.begin(), capped.weeks.end(),
                    [](const Week& week) { return week.heldBy.find("fear") != std::string::npos; }));
  for (std::size_t i = 1; i < plan.weeks.size(); ++i)
    CHECK(plan.weeks[i].balanceMinutes >= plan.weeks[i - 1].balanceMinutes);
}

TEST_CASE("Balance and stretches stay as they are in a session of bounded length and without progression") {
  const auto bounded = Client().hasEverything().under("tired", dosed("sessionMinutes", 40)).plan();
  CHECK(bounded.weeks.back().balanceMinutes == bounded.weeks.front().balanceMinutes);
  CHECK(bounded.weeks.back().stretchRepetitions == bounded.weeks.front().stretchRepetitions);
  const auto none = Client().hasEverything().under("long-covid", progressing(limits::Progression::None)).plan();
  CHECK(none.weeks.back().balanceMinutes == none.weeks.front().balanceMinutes);
  CHECK(none.goingOn.empty());
}

TEST_CASE("Under the policy of a share the week grows by a tenth at most, from however little") {
  for (int start : {5, 10, 25}) {
    const auto plan = Client().active(3, start).under("policyAerobicGrowth", "tenPercent").plan();
    for (std::size_t i = 1; i < plan.weeks.size(); ++i) {
      const Week& before = plan.weeks[i - 1];
      // What was left over of whole minutes may come on top.
      const Rational most = *Rational::add(*Rational::multiply(before.aerobicMinutesPerWeek, *Rational::divide(11, 10)),
                                           *Rational::multiply(before.aerobicDays, *Rational::divide(11, 10)));
      CHECK(plan.weeks[i].aerobicMinutesPerWeek <= most);
      CHECK(plan.weeks[i].aerobicMinutesPerWeek <= Rational(150));
    }
    CHECK(plan.weeks.back().aerobicMinutesPerWeek > plan.weeks.front().aerobicMinutesPerWeek);
  }
}

TEST_CASE("The share keeps to the caps of minutes and days, and names the cap that holds it") {
  const auto plan = Client().startsAt('C').under("lungs", dosed("aerobicMinutesPerSession", 22))
                        .under("weary", dosed("aerobicDaysPerWeek", 3)).under("policyAerobicGrowth", "tenPercent").plan();
  bool isNamed = false;
  for (const Week& week : plan.weeks) {
    CHECK(week.aerobicMinutesPerSession <= Rational(22));
    CHECK(week.aerobicDays <= Rational(3));
    isNamed = isNamed || week.heldBy.find("lungs") != std::string::npos;
  }
  CHECK(isNamed);
}

TEST_CASE("The plan names the policy by which it grows, unless nothing would grow otherwise") {
  const auto plan = Client().plan();
  CHECK(plan.growthReads == std::vector<std::string>{"policyAerobicGrowth"});
  CHECK(plan.levelBecause.find("every second week") != std::string::npos);
  const auto quick = Client().under("policyAerobicGrowth", "fiveEachWeek").plan();
  CHECK(quick.weeks[1].aerobicMinutesPerSession == Rational(15));
  CHECK(Client().under("long-covid", progressing(limits::Progression::None)).plan().growthReads.empty());
}

TEST_CASE("Sentences that a certain finding changes are said as it wants them") {
  const auto says = [](const std::vector<std::string>& list, const char* part) {
    return std::any_of(list.begin(), list.end(), [&](const std::string& one) { return one.find(part) != std::string::npos; });
  };
  CHECK(says(Client().plan().badDay, "do half"));
  const auto pacing = Client().under("post-exertional-worsening", progressing(limits::Progression::None)).plan();
  CHECK_FALSE(says(pacing.badDay, "do half"));
  CHECK(says(pacing.badDay, "rest. Do not make up"));
}
