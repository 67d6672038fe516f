// Tightening limits never opens an exercise and never raises a dose.
#include <catch2/catch.hpp>
#include <chrono>
#include <random>
#include <set>

#include "plan/candidate.h"
#include "planning.h"

using namespace stile;
using namespace stile::plan;
using limits::Rung;

namespace {

class Dice {
 public:
  explicit Dice(unsigned seed) : random_(seed) {}
  int upTo(int most) { return static_cast<int>(random_() % static_cast<unsigned>(most + 1)); }
  template <class Map>
  std::string keyOf(const Map& map) {
    return std::next(map.begin(), upTo(static_cast<int>(map.size()) - 1))->first;
  }

 private:
  std::mt19937 random_;
};

limits::Limits randomLimits(Dice& dice) {
  const auto& words = realContent().rules.vocabulary;
  limits::Limits asked;
  for (int i = dice.upTo(2); i > 0; --i)
    asked.bans.insert({dice.keyOf(words.bans), static_cast<limits::Side>(dice.upTo(2))});
  for (int i = dice.upTo(3); i > 0; --i)
    asked.caps[{dice.keyOf(words.movements), static_cast<limits::Side>(dice.upTo(2)),
                static_cast<limits::Qualifier>(dice.upTo(3))}] = dice.upTo(120);
  const char* caps[] = {"aerobicMinutesPerSession", "aerobicDaysPerWeek", "aerobicEffort", "strengthSets",
                        "strengthRepetitions", "strengthDaysPerWeek", "strengthEffort", "stretchHoldSeconds",
                        "balanceMinutes", "sessionMinutes"};
  const int most[] = {40, 7, 8, 4, 15, 4, 8, 40, 15, 70};
  for (int i = dice.upTo(2); i > 0; --i) {
    const int which = dice.upTo(9);
    asked.doseCaps[caps[which]] = dice.upTo(most[which]);
  }
  if (dice.upTo(4) == 0) asked.loadPercentOfMaximum = 30 + dice.upTo(50);
  if (dice.upTo(4) == 0) asked.heartRatePerMinute = 80 + dice.upTo(60);
  return asked;
}

void checkNotMore(const std::optional<base::Rational>& tighter, const std::optional<base::Rational>& looser) {
  if (tighter && looser) CHECK(*tighter <= *looser);
}

void checkDose(const Dose& tighter, const Dose& looser) {
  checkNotMore(tighter.minutes, looser.minutes);
  checkNotMore(tighter.sets, looser.sets);
  checkNotMore(tighter.repetitions, looser.repetitions);
  checkNotMore(tighter.holdSeconds, looser.holdSeconds);
  checkNotMore(tighter.daysPerWeek, looser.daysPerWeek);
  checkNotMore(tighter.effortHigh, looser.effortHigh);
  checkNotMore(tighter.effortLow, looser.effortLow);
  checkNotMore(tighter.heartRateHigh, looser.heartRateHigh);
  checkNotMore(looser.repetitionsInReserve, tighter.repetitionsInReserve);
}

/// The largest of each amount a section has anywhere in the plan.
void checkSections(const StarterPlan& tighter, const StarterPlan& looser) {
  for (const Line& line : tighter.lines) {
    if (const Line* same = lineOf(looser, line.exercise->id)) checkDose(line.dose, same->dose);
  }
}

}  // namespace

TEST_CASE("On random limits, more limits never open an exercise and never raise a dose") {
  Dice dice(7);
  const Library& library = realContent().library;
  for (int round = 0; round < 600; ++round) {
    INFO("round " << round);
    const char level = "ABCD"[dice.upTo(3)];
    const auto first = randomLimits(dice), second = randomLimits(dice);
    const auto usable = static_cast<Rung>(1 + dice.upTo(2));
    const auto tighterUsable = static_cast<Rung>(std::min(static_cast<int>(usable), 1 + dice.upTo(2)));
    const auto client = [&] {
      Client made;
      return made.hasEverything().startsAt(level).is("age", 60).is("restingHeartRate", 70).usable(usable, usable)
          .under("first", first);
    };
    const auto looser = client().plan();
    const auto tighter = client().under("second", second, dice.upTo(1) == 1).usable(tighterUsable, tighterUsable).plan();
    checkSections(tighter, looser);
    for (std::size_t i = 0; i < tighter.weeks.size() && i < looser.weeks.size(); ++i) {
      CHECK(tighter.weeks[i].aerobicMinutesPerSession <= looser.weeks[i].aerobicMinutesPerSession);
    }
    // An exercise that the looser limits rule out stays ruled out.
    std::set<std::string> out;
    for (const LeftOut& each : looser.leftOut) {
      if (!each.exerciseId.empty()) out.insert(each.exerciseId);
    }
    for (const Line& line : tighter.lines) CHECK(out.count(line.exercise->id) == 0);
    CHECK(library.doses != nullptr);
  }
}

TEST_CASE("No line of a random plan runs into a limit") {
  Dice dice(11);
  for (int round = 0; round < 600; ++round) {
    const auto asked = randomLimits(dice);
    const auto plan = Client().hasEverything().startsAt("ABCD"[dice.upTo(3)]).under("r", asked).plan();
    for (const Line& line : plan.lines) {
      INFO("round " << round << " " << line.exercise->id << " " << line.side);
      if (line.changed.empty()) {
        for (const std::string& ban : line.exercise->involves) CHECK_FALSE(limits::isBanned(asked, ban));
        for (const Demand& demand : line.exercise->demands) {
          const auto cap = limits::capFor(asked, demand.movement, limits::Side::Both, demand.done);
          if (cap) CHECK(demand.degrees <= *cap);
        }
      }
      const auto cap = asked.doseCaps.find("aerobicMinutesPerSession");
      if (cap != asked.doseCaps.end() && line.exercise->section == Section::Aerobic)
        CHECK(*line.dose.minutes <= cap->second);
    }
  }
}

TEST_CASE("A plan takes a few milliseconds at most", "[.bench]") {
  const Client client = Client().hasEverything().startsAt('D').under("tired", dosed("sessionMinutes", 45));
  const auto start = std::chrono::steady_clock::now();
  for (int i = 0; i < 100; ++i) client.plan();
  const auto each = std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count() / 100;
  WARN(each << " ms a plan");
}
