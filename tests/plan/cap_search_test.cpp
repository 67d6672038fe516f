// No form is offered that asks more than a limit allows: the whole library against every cap and ban, and
// against 10,000 generated sets of limits (by default a twentieth of them). What is asked is measured from
// the drawn bodies again, not read from what the planner used.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <random>

#include "../support/plan_breaches.h"
#include "../support/scale.h"
#include "planning.h"

using namespace stile::plan;
using stile::limits::Limits;
using stile::limits::Rung;
using stile::limits::Side;
namespace base = stile::base;
namespace limits = stile::limits;
namespace movement = stile::movement;

namespace {

int doneSmaller = 0;  ///< forms met that are done smaller

/// Holds every exercise that is open, in the form it would be given, against the limits.
int check(const Client& client, const Limits& limits) {
  const auto& library = realContent().library;
  const auto offers = stile::test::everyOffer(library, client.request());
  for (const Line& line : offers) {
    if (line.percent < 100) ++doneSmaller;
    const std::string breaches = stile::test::breachesOf(library, line, limits);
    INFO(line.exercise->id << " form " << line.form << " " << line.side << ": " << breaches);
    CHECK(breaches.empty());
  }
  return static_cast<int>(offers.size());
}

Client anyone() {
  return Client().hasEverything().startsAt('D').usable(Rung::Vigorous, Rung::Vigorous);
}

}  // namespace

TEST_CASE("No plan offers a form beyond a single cap or ban") {
  doneSmaller = 0;
  int lines = 0;
  for (const auto& [name, range] : realContent().library.doses->ranges) {
    for (const int degrees : {0, 10, 20, 30, 45, 60, 75, 90, 100, 110, 120})
      for (const Side side : {Side::Both, Side::Left}) {
        Limits asked;
        asked.caps[{name, side, limits::Qualifier::Any}] = base::Rational(degrees);
        lines += check(anyone().under("cap", asked), asked);
      }
  }
  for (const auto& [ban, term] : realContent().library.doses->vocabulary.bans) {
    for (const Side side : {Side::Both, Side::Right}) {
      Limits asked;
      asked.bans.insert({ban, side});
      lines += check(anyone().under("ban", asked), asked);
    }
  }
  CHECK(lines > 30000);
  CHECK(doneSmaller > 200);
}

TEST_CASE("No plan offers a form beyond a generated set of limits") {
  doneSmaller = 0;
  std::mt19937 random(20261125);
  const auto& doses = *realContent().library.doses;
  std::vector<std::string> movements, bans;
  for (const auto& [name, range] : doses.ranges) movements.push_back(name);
  for (const auto& [ban, term] : doses.vocabulary.bans) bans.push_back(ban);
  const auto pick = [&random](int below) {
    return static_cast<int>(random() % static_cast<unsigned>(below));
  };
  int lines = 0;
  for (int round = 0; round < 500 * stile::test::scale(); ++round) {
    Limits asked;
    for (int caps = pick(5); caps > 0; --caps) {
      const Side side = std::array{Side::Both, Side::Left, Side::Right}[static_cast<std::size_t>(pick(3))];
      using limits::Qualifier;
      const auto qualifier =
          std::array{Qualifier::Any, Qualifier::Any, Qualifier::Loaded, Qualifier::EndRange,
                     Qualifier::Fast}[static_cast<std::size_t>(pick(5))];
      asked.caps[{movements[static_cast<std::size_t>(pick(static_cast<int>(movements.size())))], side,
                  qualifier}] = base::Rational(pick(130));
    }
    for (int count = pick(4); count > 0; --count)
      asked.bans.insert({bans[static_cast<std::size_t>(pick(static_cast<int>(bans.size())))],
                         std::array{Side::Both, Side::Left, Side::Right}[static_cast<std::size_t>(pick(3))]});
    Client client = pick(2) == 0
                        ? anyone()
                        : Client().hasEverything().startsAt("ABCD"[pick(4)]).usable(Rung::Light, Rung::Light);
    INFO("round " << round);
    lines += check(client.under("generated", asked, pick(2) == 0), asked);
  }
  CHECK(lines > 10000);
  CHECK(doneSmaller > 100);
}

TEST_CASE("A purpose without any option within the limits says so and to whom to turn") {
  Limits asked;
  for (const char* name : {"hipFlexion", "kneeFlexion"})
    asked.caps[{name, Side::Both, limits::Qualifier::Any}] = base::Rational(5);
  const StarterPlan plan = anyone().under("frozen", asked).plan();
  const auto legs = std::find_if(plan.leftOut.begin(), plan.leftOut.end(), [](const LeftOut& out) {
    return out.exerciseId.empty() && out.purpose == "leg-strength";
  });
  REQUIRE(legs != plan.leftOut.end());
  CHECK(legs->because.find("no option") == 0);
  CHECK(legs->turnTo == "physiotherapy");
}
