#include "plan/starter_plan.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "planning.h"

using namespace stile;
using namespace stile::plan;
using limits::Rung;
using limits::Side;

TEST_CASE("With both bays at rest there are no lines") {
  const auto plan = Client().hasEverything().usable(Rung::None, Rung::None).plan();
  CHECK(plan.isEmpty());
  CHECK(plan.weeks.empty());
}

TEST_CASE("A client of whom nothing is known starts at the gentlest level with what needs nothing") {
  const auto plan = Client().plan();
  CHECK(plan.level == "A");
  REQUIRE(lineFor(plan, "aerobic-endurance") != nullptr);
  CHECK(lineFor(plan, "aerobic-endurance")->exercise->id == "walking");
  for (const Line& line : plan.lines) CHECK(line.exercise->equipment.empty());
  const LeftOut* legs = leftOutOf(plan, "", "leg-strength");
  REQUIRE(legs != nullptr);
  CHECK(legs->because.find("not known") != std::string::npos);
  CHECK(legs->turnTo.empty());
}

TEST_CASE("Each level gets the leg exercise that suits it") {
  const auto at = [](char level) {
    return lineFor(Client().hasEverything().startsAt(level).plan(), "leg-strength")->exercise->id;
  };
  CHECK(at('A') == "sit-to-stand-hands");
  CHECK(at('B') == "sit-to-stand");
  CHECK(at('C') == "sit-to-stand");
  CHECK(at('D') == "sit-to-stand");
}

TEST_CASE("Lines stand in session order") {
  const auto plan = Client().hasEverything().startsAt('D').plan();
  CHECK(std::is_sorted(plan.lines.begin(), plan.lines.end(), [](const Line& a, const Line& b) {
    return a.exercise->section < b.exercise->section;
  }));
  CHECK(plan.lines.front().exercise->section == Section::WarmUp);
}

TEST_CASE("A banned exercise is replaced by one for the same purpose, and the rule is named") {
  const auto plan = Client().hasEverything().startsAt('B').under("sore-wrists", banned("weightOnHands")).plan();
  CHECK(lineOf(plan, "wall-push-up") == nullptr);
  REQUIRE(lineFor(plan, "push-strength") != nullptr);
  const LeftOut* wall = leftOutOf(plan, "wall-push-up");
  REQUIRE(wall != nullptr);
  CHECK(wall->because.find("sore-wrists") != std::string::npos);
  CHECK(wall->instead == "band-press");
}

TEST_CASE("Where unsupported balance is banned the client holds on") {
  const auto free = Client().hasEverything().startsAt('D').plan();
  CHECK(lineFor(free, "balance-still")->exercise->involves.count("unsupportedBalance") == 1);
  const auto held =
      Client().hasEverything().startsAt('D').under("falls", banned("unsupportedBalance")).plan();
  for (const char* purpose : {"balance-still", "balance-moving"}) {
    REQUIRE(lineFor(held, purpose) != nullptr);
    CHECK(lineFor(held, purpose)->exercise->involves.count("unsupportedBalance") == 0);
    CHECK(lineFor(held, purpose)->side.empty());
  }
}

TEST_CASE("A cap is met by an easing that says what changed, for both readers") {
  const auto active = Client().startsAt('D').under("spine", capped("trunkSideBend", 12)).plan();
  const Line* bend = lineOf(active, "side-bend");
  REQUIRE(bend != nullptr);
  CHECK_FALSE(bend->changed.empty());
  CHECK(bend->changedBecause.find("25 degrees, limit 12") != std::string::npos);
  CHECK(std::find(bend->becauseRules.begin(), bend->becauseRules.end(), "spine") != bend->becauseRules.end());
}

TEST_CASE("A demand equal to the cap is within it, one degree less is not") {
  const auto with = [](int degrees) {
    return Client().startsAt('D').under("neck", capped("neckRotation", degrees)).plan();
  };
  REQUIRE(lineOf(with(60), "neck-turn") != nullptr);
  CHECK(lineOf(with(60), "neck-turn")->changed.empty());
  CHECK_FALSE(lineOf(with(59), "neck-turn")->changed.empty());
  // At its smallest useful share it still asks 22: what it shows, and the 5 declared beyond its figure.
  REQUIRE(lineOf(with(22), "neck-turn") != nullptr);
  CHECK_FALSE(lineOf(with(22), "neck-turn")->changed.empty());
  CHECK(lineOf(with(21), "neck-turn") == nullptr);
}

TEST_CASE("A qualified cap binds only what is done that way") {
  const auto plan = [](limits::Qualifier qualifier) {
    return Client().startsAt('D').under("neck", capped("neckRotation", 10, Side::Both, qualifier)).plan();
  };
  CHECK(lineOf(plan(limits::Qualifier::EndRange), "neck-turn") == nullptr);
  CHECK(lineOf(plan(limits::Qualifier::Fast), "neck-turn") != nullptr);
}

TEST_CASE("A limit on one side leaves the other side of a one-sided exercise") {
  const auto plan = Client().startsAt('D').under(
      "sore-shoulder", capped("shoulderHorizontalAdduction", 0, Side::Left)).plan();
  const Line* line = lineOf(plan, "back-of-shoulder");
  REQUIRE(line != nullptr);
  CHECK(line->side == "right only");
  CHECK(line->dose.words.find("right side") != std::string::npos);
  CHECK(line->changedBecause.find("sore-shoulder") != std::string::npos);
}

TEST_CASE("The standing leg counts: a left foot that may not bear weight stops lifts of either leg") {
  const auto plan = Client().hasEverything().startsAt('B').under("ulcer", banned("weightBearing", Side::Left)).plan();
  for (const Line& line : plan.lines) CHECK(line.exercise->involves.count("weightBearing") == 0);
  CHECK(lineFor(plan, "aerobic-endurance")->exercise->position == "sitting");
  CHECK(lineFor(plan, "leg-strength")->exercise->id == "seated-leg-extension");
}

TEST_CASE("A ban on standing on the left leg leaves lifts that stand on the right") {
  const auto plan =
      Client().hasEverything().startsAt('A').under("weak-leg", banned("singleLegStance", Side::Left),
                                                   false, {"side-leg-raise"}).plan();
  const Line* line = lineOf(plan, "side-leg-raise");
  REQUIRE(line != nullptr);
  CHECK(line->side == "left only");
}

TEST_CASE("Surgical caps keep their margin once") {
  const auto with = [](bool surgical, int degrees) {
    return Client().hasEverything().startsAt('A').under("new-hip", capped("hipFlexion", degrees), surgical).plan();
  };
  // The high seat asks for 90 degrees, eased for 80.
  CHECK(lineOf(with(false, 90), "sit-to-stand-high")->changed.empty());
  REQUIRE(lineOf(with(true, 90), "sit-to-stand-high") != nullptr);
  CHECK_FALSE(lineOf(with(true, 90), "sit-to-stand-high")->changed.empty());
  CHECK(lineOf(with(true, 100), "sit-to-stand-high")->changed.empty());
  CHECK(lineOf(with(true, 89), "sit-to-stand-high") == nullptr);
}

TEST_CASE("A surgical cap of one side keeps its margin beside a wider cap of both") {
  const auto plan = Client().hasEverything().startsAt('A')
                        .under("stiff", capped("hipFlexion", 85))
                        .under("new-hip", capped("hipFlexion", 85, Side::Left), true).plan();
  CHECK(lineOf(plan, "sit-to-stand-high") == nullptr);  // 75 degrees on the left; the easing asks for 80
}

TEST_CASE("A purpose without an option says why and to whom to turn") {
  const auto plan = Client().hasEverything().startsAt('B').under("arm-rest", banned("upperBodyLoad")).plan();
  const LeftOut* push = leftOutOf(plan, "", "push-strength");
  REQUIRE(push != nullptr);
  CHECK(push->turnTo == "physiotherapy");
  CHECK(push->because.find("arm-rest") != std::string::npos);
}

TEST_CASE("Lying exercises use the bed, and a mat only where the floor may be reached") {
  const auto lying = [](Client client) {
    const auto plan = client.is("canLieOnBack", true).startsAt('D').under("back", {}, false, {"bridge"}).plan();
    return lineOf(plan, "bridge");
  };
  CHECK(lying(Client().is("homeHasFirmBed", true)) != nullptr);
  CHECK(lying(Client().is("homeHasBedOrMat", true)) == nullptr);
  CHECK(lying(Client().is("homeHasBedOrMat", true).is("floorAccess", true)) != nullptr);
  CHECK(lying(Client().is("homeHasBedOrMat", true).is("floorAccess", true).under("frail", banned("floorTransfer"))) ==
        nullptr);
  CHECK(lying(Client().is("homeHasFirmBed", true).under("breathless", banned("supineFlat"))) == nullptr);
}

TEST_CASE("Findings prefer and discourage by exercise, purpose, section or tag") {
  const auto chosen = [](std::vector<std::string> prefer, std::vector<std::string> discourage) {
    return lineFor(Client().hasEverything().startsAt('B').under("advice", {}, false, prefer, discourage).plan(),
                   "aerobic-endurance")->exercise->id;
  };
  CHECK(chosen({}, {}) == "walking");
  CHECK(chosen({"cycle"}, {}) == "stationary-cycle");
  CHECK(chosen({"water-walking"}, {}) == "water-walking");
  CHECK(chosen({}, {"walk"}) != "walking");
}

TEST_CASE("Settings that are left out take their exercises with them") {
  limits::Limits noWater;
  noWater.settings.insert("water");
  const auto plan = Client().hasEverything().under("seizures", noWater, false, {"water"}).plan();
  CHECK(lineOf(plan, "water-walking") == nullptr);
  CHECK(leftOutOf(plan, "water-walking")->because.find("seizures") != std::string::npos);
}

TEST_CASE("A shut bay takes its lines and leaves the other bay's") {
  limits::Limits noStrength;
  noStrength.ceiling.strength = Rung::None;
  const auto plan = Client().hasEverything().usable(Rung::Light, Rung::None).under("fresh-wound", noStrength).plan();
  CHECK(lineFor(plan, "aerobic-endurance") != nullptr);
  for (const Line& line : plan.lines) CHECK(line.exercise->bay == limits::Bay::Aerobic);
  const LeftOut* legs = leftOutOf(plan, "", "leg-strength");
  REQUIRE(legs != nullptr);
  CHECK(legs->because.find("fresh-wound") != std::string::npos);
}

TEST_CASE("Strength work names the harder exercise that is open as written, and none that is not") {
  const auto anyone = Client().hasEverything().startsAt('D');
  const Line* stand = lineOf(anyone.plan(), "sit-to-stand");
  REQUIRE(stand != nullptr);
  REQUIRE(stand->next != nullptr);
  CHECK(stand->next->id == "step-up");
  const auto nextOf = [](const Client& client) {
    const auto plan = client.plan();
    const Line* line = lineOf(plan, "sit-to-stand");
    REQUIRE(line != nullptr);
    return line->next;
  };
  // Not beyond a limit, not without its step, not where nothing may grow, and not from an exercise that is
  // adapted itself.
  CHECK(nextOf(Client(anyone).under("one-leg", banned("singleLegStance"))) == nullptr);
  CHECK(nextOf(Client(anyone).is("homeHasStairs", false)) == nullptr);
  limits::Limits still;
  still.progression = limits::Progression::None;
  CHECK(nextOf(Client(anyone).under("pacing", still)) == nullptr);
  CHECK(nextOf(Client(anyone).under("shoulder", capped("shoulderElevation", 60))) == nullptr);
  // Whoever is to do always the same is told of nothing else.
  for (const Line& line : Client(anyone).is("memoryProblem", true).plan().lines) CHECK(line.next == nullptr);
  for (const Line& line : anyone.plan().lines) {
    INFO(line.exercise->id);
    if (line.next == nullptr) continue;
    CHECK(line.exercise->section == Section::Strength);
    CHECK(line.next->purpose == line.exercise->purpose);
    CHECK(lineOf(anyone.plan(), line.next->id) == nullptr);
  }
}

TEST_CASE("The same request gives the same plan") {
  const auto a = Client().hasEverything().startsAt('C').plan(), b = Client().hasEverything().startsAt('C').plan();
  REQUIRE(a.lines.size() == b.lines.size());
  for (std::size_t i = 0; i < a.lines.size(); ++i) {
    CHECK(a.lines[i].exercise->id == b.lines[i].exercise->id);
    CHECK(a.lines[i].dose.words == b.lines[i].dose.words);
  }
}

TEST_CASE("A fit 30-year-old gets the harder forms at the same doses, and the plan of others stays as it was") {
  const auto client = [] { return Client().hasEverything().startsAt('D').usable(Rung::Vigorous, Rung::Vigorous); };
  const StarterPlan fit = client().is("age", 30).plan(), older = client().is("age", 66).plan();
  CHECK(fit.level == "E");
  const Line *split = lineOf(fit, "split-squat"), *stand = lineOf(older, "sit-to-stand");
  REQUIRE(split != nullptr);
  REQUIRE(stand != nullptr);
  CHECK(split->dose.sets == stand->dose.sets);
  CHECK(split->dose.repetitions == stand->dose.repetitions);
  CHECK(split->dose.effortHigh == stand->dose.effortHigh);
  CHECK(lineOf(fit, "one-leg-stand") != nullptr);
  CHECK(lineOf(older, "one-leg-stand") == nullptr);
  // A light ceiling closes the harder forms, and the easier ones come back.
  const StarterPlan light = client().is("age", 30).usable(Rung::Light, Rung::Light).plan();
  CHECK(lineOf(light, "split-squat") == nullptr);
  CHECK(lineOf(light, "sit-to-stand") != nullptr);
}
