// No plan offers a form that asks more than a limit allows: the whole library against every cap and
// ban, and against thousands of generated sets of limits. What is asked is measured from the drawn
// bodies again, not read from what the planner used.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <random>

#include "movement/demands.h"
#include "planning.h"

using namespace stile::plan;
using stile::limits::Limits;
using stile::limits::Rung;
using stile::limits::Side;
namespace base = stile::base;
namespace limits = stile::limits;
namespace movement = stile::movement;

namespace {

const movement::Demands& shownBy(const std::string& exercise, std::size_t form) {
  static std::map<std::pair<std::string, std::size_t>, movement::Demands> known;
  const auto key = std::pair{exercise, form};
  auto at = known.find(key);
  if (at == known.end())
    at = known.emplace(key, demandsOf(realContent().library.figures.at(exercise), form)).first;
  return at->second;
}

/// Every way in which the line's drawn form goes beyond the limits.
std::string breaches(const Line& line, const Limits& limits) {
  std::string found;
  const movement::Figure& figure = realContent().library.figures.at(line.exercise->id);
  const movement::Demands& shown = shownBy(line.exercise->id, line.form);
  // The sides of the client on which the drawn left and right fall.
  std::vector<std::array<Side, 2>> ways{{Side::Left, Side::Right}};
  if (line.exercise->oneSided) {
    const bool drawnRight = figure.working == movement::Hand::Right;
    const bool onlyDrawn = line.side == (drawnRight ? "right only" : "left only");
    if (line.side.empty()) ways.push_back({Side::Right, Side::Left});
    if (!line.side.empty() && !onlyDrawn) ways = {{Side::Right, Side::Left}};
  }
  const auto test = [&](const movement::Angles& angles, Side side) {
    for (const auto& [name, degrees] : angles) {
      const auto cap = capFor(limits, name, side, {});
      if (!cap) continue;
      // Angles everybody has in standing or sitting straight are no demand; whole degrees are compared.
      const bool isRotation = name == "hipInternalRotation" || name == "hipExternalRotation";
      const double least = name == "hipAdduction"                  ? 2
                           : name == "shoulderHorizontalAdduction" ? 100
                           : isRotation                            ? 12
                                                                   : 6;
      if (std::round(degrees) >= least && base::Rational(std::lround(degrees)) > *cap)
        found += name + " " + std::to_string(degrees) + " over " + cap->toText() + "; ";
    }
  };
  test(shown.trunk, Side::Both);
  for (const auto& way : ways)
    for (std::size_t i = 0; i < 2; ++i) {
      test(shown.limbs[i], way[i]);
      for (const std::string& ban : shown.limbBans[i])
        if (isBanned(limits, ban, way[i])) found += ban + "; ";
    }
  for (const std::string& ban : shown.bans)
    if (isBanned(limits, ban)) found += ban + "; ";
  return found;
}

int check(const StarterPlan& plan, const Limits& limits) {
  for (const Line& line : plan.lines) {
    INFO(line.exercise->id << " form " << line.form << " " << line.side);
    CHECK(breaches(line, limits).empty());
    if (!breaches(line, limits).empty()) WARN(line.exercise->id << ": " << breaches(line, limits));
  }
  return static_cast<int>(plan.lines.size());
}

int scale() {
  const char* text = std::getenv("STILE_TEST_SCALE");
  return text != nullptr ? std::max(1, std::atoi(text)) : 1;
}

Client anyone() {
  return Client().hasEverything().startsAt('D').usable(Rung::Vigorous, Rung::Vigorous);
}

}  // namespace

TEST_CASE("No plan offers a form beyond a single cap or ban") {
  int lines = 0;
  for (const auto& [name, range] : realContent().library.doses->ranges) {
    for (const int degrees : {0, 10, 20, 30, 45, 60, 75, 90, 100, 110, 120})
      for (const Side side : {Side::Both, Side::Left}) {
        Limits asked;
        asked.caps[{name, side, limits::Qualifier::Any}] = base::Rational(degrees);
        lines += check(anyone().under("cap", asked).plan(), asked);
      }
  }
  for (const auto& [ban, term] : realContent().library.doses->vocabulary.bans) {
    for (const Side side : {Side::Both, Side::Right}) {
      Limits asked;
      asked.bans.insert({ban, side});
      lines += check(anyone().under("ban", asked).plan(), asked);
    }
  }
  CHECK(lines > 3000);
}

TEST_CASE("No plan offers a form beyond a generated set of limits") {
  std::mt19937 random(20261125);
  const auto& doses = *realContent().library.doses;
  std::vector<std::string> movements, bans;
  for (const auto& [name, range] : doses.ranges) movements.push_back(name);
  for (const auto& [ban, term] : doses.vocabulary.bans) bans.push_back(ban);
  const auto pick = [&random](int below) {
    return static_cast<int>(random() % static_cast<unsigned>(below));
  };
  int lines = 0;
  for (int round = 0; round < 500 * scale(); ++round) {
    Limits asked;
    for (int caps = pick(5); caps > 0; --caps) {
      const Side side = std::array{Side::Both, Side::Left, Side::Right}[static_cast<std::size_t>(pick(3))];
      asked.caps[{movements[static_cast<std::size_t>(pick(static_cast<int>(movements.size())))], side,
                  limits::Qualifier::Any}] = base::Rational(pick(130));
    }
    for (int count = pick(4); count > 0; --count)
      asked.bans.insert({bans[static_cast<std::size_t>(pick(static_cast<int>(bans.size())))],
                         std::array{Side::Both, Side::Left, Side::Right}[static_cast<std::size_t>(pick(3))]});
    Client client = pick(2) == 0
                        ? anyone()
                        : Client().hasEverything().startsAt("ABCD"[pick(4)]).usable(Rung::Light, Rung::Light);
    INFO("round " << round);
    lines += check(client.under("generated", asked, pick(2) == 0).plan(), asked);
  }
  CHECK(lines > 1000);
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
