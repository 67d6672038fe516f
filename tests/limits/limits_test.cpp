// The lattice laws of limits, on seeded random records: the ground for "rules only tighten".
#include "limits/limits.h"

#include <catch2/catch.hpp>
#include <random>

using namespace stile::limits;
using stile::base::Rational;

namespace {

Limits randomLimits(std::mt19937& random) {
  const auto pick = [&](int below) { return static_cast<int>(random() % static_cast<unsigned>(below)); };
  Limits limits;
  limits.action = static_cast<Action>(pick(5));
  for (const Bay bay : kBays) {
    limits.clearance[bay] = static_cast<Clearance>(pick(4));
    limits.ceiling[bay] = static_cast<Rung>(pick(4));
  }
  const char* const names[] = {"a", "b", "c"};
  for (int i = pick(4); i > 0; --i)
    limits.caps[{names[pick(3)], static_cast<Side>(pick(3)), static_cast<Qualifier>(pick(4))}] = pick(5) * 10;
  for (int i = pick(4); i > 0; --i) limits.bans.insert({names[pick(3)], static_cast<Side>(pick(3))});
  if (pick(2) != 0) limits.loadKilograms = pick(9);
  if (pick(2) != 0) limits.heartRatePerMinute = 90 + pick(9);
  for (int i = pick(3); i > 0; --i) limits.stopValues[{names[pick(3)], pick(2) != 0, "%"}] = pick(9);
  for (int i = pick(3); i > 0; --i) limits.doseCaps[names[pick(3)]] = pick(9);
  for (int i = pick(3); i > 0; --i) limits.doseFloors[names[pick(3)]] = pick(9);
  for (int i = pick(3); i > 0; --i) limits.settings.insert(names[pick(3)]);
  for (int i = pick(3); i > 0; --i) limits.checks.insert(names[pick(3)]);
  for (int i = pick(3); i > 0; --i)
    limits.referrals[names[pick(3)]] = {static_cast<Within>(pick(4)), {names[pick(3)]}, {}, {}};
  for (int i = pick(3); i > 0; --i) {
    const std::string measure = names[pick(3)];
    limits.gates[measure] = {measure, {names[pick(3)]}, {}};
  }
  limits.effortGuide = static_cast<EffortGuide>(pick(2));
  limits.progression = static_cast<Progression>(pick(3));
  limits.supervision = static_cast<Supervision>(pick(3));
  // A record as join() leaves it: implied caps and bans dropped.
  return join(limits, limits);
}

}  // namespace

TEST_CASE("Merging limits is order-free, and nothing merged twice counts twice") {
  std::mt19937 random(20261125);
  for (int round = 0; round < 2000; ++round) {
    const Limits a = randomLimits(random), b = randomLimits(random), c = randomLimits(random);
    REQUIRE(join(a, b) == join(b, a));
    REQUIRE(join(join(a, b), c) == join(a, join(b, c)));
    REQUIRE(join(a, a) == a);
    REQUIRE(join(a, Limits{}) == a);
    REQUIRE(isAtMost(a, join(a, b)));
    REQUIRE(isAtMost(Limits{}, a));
  }
}

TEST_CASE("A merge takes the graver of every part") {
  Limits a, b;
  a.ceiling = {Rung::Light, Rung::Vigorous};
  b.ceiling = {Rung::Moderate, Rung::None};
  a.stopValues[{"saturation", true, "%"}] = 85;
  b.stopValues[{"saturation", true, "%"}] = 88;
  a.stopValues[{"pressure", false, "mm[Hg]"}] = 220;
  b.stopValues[{"pressure", false, "mm[Hg]"}] = 180;
  a.doseFloors["coolDownMinutes"] = 5;
  b.doseFloors["coolDownMinutes"] = 10;
  a.doseCaps["strengthSets"] = 2;
  b.doseCaps["strengthSets"] = 1;
  const Limits both = join(a, b);
  CHECK(both.ceiling == PerBay<Rung>{Rung::Light, Rung::None});
  CHECK(both.stopValues.at({"saturation", true, "%"}) == Rational(88));
  CHECK(both.stopValues.at({"pressure", false, "mm[Hg]"}) == Rational(180));
  CHECK(both.doseFloors.at("coolDownMinutes") == Rational(10));
  CHECK(both.doseCaps.at("strengthSets") == Rational(1));
}

TEST_CASE("A cap counts for its own side and manner, a cap of both sides for either") {
  Limits limits;
  limits.caps[{"hipFlexion", Side::Left, Qualifier::Any}] = 90;
  limits.caps[{"hipFlexion", Side::Both, Qualifier::Loaded}] = 100;
  CHECK(capFor(limits, "hipFlexion", Side::Left, {}) == Rational(90));
  CHECK_FALSE(capFor(limits, "hipFlexion", Side::Right, {}).has_value());
  CHECK(capFor(limits, "hipFlexion", Side::Right, {Qualifier::Loaded}) == Rational(100));
  CHECK(capFor(limits, "hipFlexion", Side::Both, {}) == Rational(90));
  limits.bans.insert({"kneeling", Side::Left});
  CHECK(isBanned(limits, "kneeling", Side::Left));
  CHECK_FALSE(isBanned(limits, "kneeling", Side::Right));
  CHECK(isBanned(limits, "kneeling"));
}

TEST_CASE("Each step of clearance leaves one rung less") {
  CHECK(leftOpenBy(Clearance::None) == Rung::Vigorous);
  CHECK(leftOpenBy(Clearance::BeforeVigorous) == Rung::Moderate);
  CHECK(leftOpenBy(Clearance::BeforeModerate) == Rung::Light);
  CHECK(leftOpenBy(Clearance::BeforeAny) == Rung::None);
}
