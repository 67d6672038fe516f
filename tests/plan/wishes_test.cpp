// What the client wants and likes orders what is open, and opens nothing.
#include <algorithm>
#include <catch2/catch.hpp>

#include "planning.h"

using namespace stile;
using namespace stile::plan;

namespace {

bool has(const std::string& text, const char* part) { return text.find(part) != std::string::npos; }

Client atHome() { return Client().hasEverything(); }

}  // namespace

TEST_CASE("Walking comes first, a liking for the bicycle brings the bicycle, and the line says so") {
  CHECK(lineOf(atHome().plan(), "walking"));
  const auto plan = atHome().is("likesCycling", true).plan();
  const Line* line = lineOf(plan, "stationary-cycle");
  REQUIRE(line);
  CHECK(has(line->chosenBecause, "the client likes to cycle"));
  CHECK(has(line->saidBecause, "you like to cycle"));
  CHECK(lineOf(atHome().is("likesCycling", false).plan(), "walking"));
}

TEST_CASE("What a finding prefers outweighs a liking") {
  const auto plan = atHome().is("likesCycling", true).under("artery", limits::Limits{}, false, {"walk"}).plan();
  CHECK(lineOf(plan, "stationary-cycle") == nullptr);
}

TEST_CASE("A liking opens nothing that is not at hand or not allowed") {
  CHECK(lineOf(Client().is("likesCycling", true).plan(), "stationary-cycle") == nullptr);
  limits::Limits noWater;
  noWater.settings.insert("water");
  CHECK(lineOf(atHome().is("likesWater", true).plan(), "water-walking"));
  CHECK(lineOf(atHome().is("likesWater", true).under("wound", noWater).plan(), "water-walking") == nullptr);
}

TEST_CASE("A goal brings its purposes forward where the session has no room for all") {
  CHECK(lineFor(atHome().plan(), "calf-strength") == nullptr);
  const auto plan = atHome().is("goalsWalkFurther", true).plan();
  const Line* calf = lineFor(plan, "calf-strength");
  REQUIRE(calf);
  CHECK(has(calf->chosenBecause, "the client wants to walk further"));
  CHECK(lineFor(plan, "leg-strength"));
}

TEST_CASE("Each goal has its first step, and one that nothing serves is not passed over") {
  const auto plan = atHome().is("goalsSteadier", true).plan();
  REQUIRE(plan.firstSteps.size() == 1);
  CHECK(has(plan.firstSteps.front(), "You want to be steadier. First step: "));
  const auto held = atHome().is("goalsSteadier", true).usable(limits::Rung::Light, limits::Rung::None).plan();
  REQUIRE(held.firstSteps.size() == 1);
  CHECK(has(held.firstSteps.front(), "No exercise for that is open yet"));
  CHECK(atHome().is("likesWalking", true).plan().firstSteps.empty());
}

TEST_CASE("A wish without effect, or one that names what is not there, is a fault of the content") {
  const auto issuesWith = [](const std::string& from, const std::string& to) {
    auto files = planFiles();
    std::string& text = files.at("rules/wishes.json");
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    text.replace(at, from.size(), to);
    const PlanContent content(files);
    std::string told;
    for (const auto& issue : content.issues.all()) told += toText(issue) + "\n";
    return told;
  };
  CHECK(has(issuesWith("\"cycle\"", "\"tricycle\""), "tricycle"));
  CHECK(has(issuesWith("\"balance-still\"", "\"balance-stil\""), "no purpose"));
  CHECK(has(issuesWith("\"prefer\": [\"water\"],", ""), "shapes nothing"));
  CHECK(has(issuesWith("\"likesWater\"", "\"likesWine\""), "likesWine"));
}
