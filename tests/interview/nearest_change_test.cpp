// The nearest milder and stricter decision against every set of up to three changes, on generated
// worlds that are answered in full or in part.
#include <catch2/catch.hpp>

#include "../support/scale.h"
#include "facts/enablement_closure.h"
#include "interview/nearest_change.h"
#include "small_world.h"

using namespace stile;
using interview::Decision;
using interview::Direction;
using interview::NearestChange;
using interview::QuestionRef;

namespace {

constexpr unsigned kSearchSeed = 4711;
constexpr int kSearchWorlds = 100;  // a twentieth of 2,000

Decision slowDecision(const test::SmallWorld& world, const facts::FactSet& facts) {
  const auto outcome = test::slowOutcome(world.rules, facts);
  Decision decision = Decision::of(outcome.floor.limits);
  decision.action = outcome.reach.limits.action;
  return decision;
}

bool isEnabled(const test::SmallWorld& world, const facts::FactSet& facts, const QuestionRef& ref) {
  const auto& dependents = world.ground->dependents();
  const int entry = dependents.entryOf(world.ground->questions().at(ref).fact->slot);
  return entry < 0 || facts::enablementOf(facts, dependents.plan().entries()[static_cast<std::size_t>(entry)], -1) == expression::Truth::True;
}

/// Tries every set of `left` more changes, from question `from` on in every order.
bool anySet(const test::SmallWorld& world, const facts::FactSet& facts, const std::vector<QuestionRef>& given,
            std::vector<bool>& used, int left, const Decision& start, Direction direction) {
  const Decision now = slowDecision(world, facts);
  const bool isReached = now != start && (direction == Direction::Milder ? now.isAtMost(start) : start.isAtMost(now));
  if (isReached) return true;
  if (left == 0) return false;
  for (std::size_t i = 0; i < given.size(); ++i) {
    if (used[i] || !isEnabled(world, facts, given[i])) continue;
    used[i] = true;
    for (const auto& answer : world.ground->questions().at(given[i]).answers)
      if (anySet(world, test::slowAnswer(world, facts, given[i], answer), given, used, left - 1, start, direction)) return true;
    used[i] = false;
  }
  return false;
}

}  // namespace

TEST_CASE("The nearest change takes exactly as few answers as the smallest set that brute force finds") {
  int compared = 0, sizes[5] = {};
  const int worlds = kSearchWorlds * test::scale();
  for (int round = 0; round < worlds; ++round) {
    const unsigned seed = kSearchSeed + static_cast<unsigned>(round);
    const auto world = test::WorldMaker(seed).make();
    std::mt19937 random(seed);
    facts::FactSet facts = world->blank();
    std::vector<QuestionRef> given;
    for (int place = 0; place < static_cast<int>(world->ground->questions().all().size()); ++place) {
      const QuestionRef ref{place, -1};
      if (!isEnabled(*world, facts, ref) || random() % 6 == 0) continue;
      const auto& answers = world->ground->questions().at(ref).answers;
      facts = test::slowAnswer(*world, facts, ref, answers[random() % answers.size()]);
      given.push_back(ref);
    }
    interview::Position position(*world->ground, facts);
    const Decision start = slowDecision(*world, facts);
    REQUIRE(interview::decisionOf(position) == start);
    for (const Direction direction : {Direction::Milder, Direction::Stricter}) {
      INFO("seed " << seed << ", direction " << static_cast<int>(direction));
      const NearestChange nearest = interview::nearestChange(position, given, direction);
      int fewest = interview::kMostChanges + 1;
      for (int size = interview::kMostChanges; size >= 1; --size) {
        std::vector<bool> used(given.size(), false);
        if (!anySet(*world, facts, given, used, size, start, direction)) break;
        fewest = size;
      }
      const int found = nearest.kind == NearestChange::Kind::Found ? static_cast<int>(nearest.changes.size()) : interview::kMostChanges + 1;
      CHECK(found == fewest);
      ++sizes[std::min(found, 4)];
      ++compared;
      REQUIRE(interview::decisionOf(position) == start);  // and nothing is left of the trials
    }
  }
  WARN(compared << " searches in " << worlds << " worlds from seed " << kSearchSeed << ": one answer " << sizes[1] << ", two " << sizes[2]
                << ", three " << sizes[3] << ", more than three " << sizes[4]);
  CHECK(sizes[1] > 0);
  CHECK(sizes[2] > 0);
  CHECK(sizes[4] > 0);
}

TEST_CASE("A search for the nearest change that is stopped says so") {
  const auto world = test::WorldMaker(kSearchSeed).make();
  interview::Position position(*world->ground, world->blank());
  std::stop_source source;
  source.request_stop();
  CHECK(interview::nearestChange(position, {}, Direction::Milder, source.get_token()).kind == NearestChange::Kind::Stopped);
}
