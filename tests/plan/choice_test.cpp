#include "plan/choice.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace stile::plan;

namespace {

int pick(std::mt19937& random, int from, int to) {
  return from + static_cast<int>(random() % static_cast<unsigned>(to - from + 1));
}

Option randomOption(std::mt19937& random) {
  Option option;
  option.preference = pick(random, -1, 1);
  option.wish = pick(random, -1, 1);
  option.unsuited = pick(random, 0, 2) * pick(random, 0, 1);
  option.isAdapted = pick(random, 0, 3) == 0;
  option.position = pick(random, 0, 2);
  option.equipment = static_cast<std::uint32_t>(pick(random, 0, 15) & pick(random, 0, 15));
  option.minutes = pick(random, 1, 4);
  option.budgetMinutes = pick(random, 0, 4) == 0 ? 0 : option.minutes;
  return option;
}

ChoiceProblem randomProblem(std::mt19937& random) {
  ChoiceProblem problem;
  const int sections = pick(random, 1, 3);
  for (int section = 0; section < sections; ++section) {
    problem.linesAtMost.push_back(pick(random, 0, 3));
    for (int purpose = pick(random, 1, 3); purpose > 0; --purpose) {
      Slot slot;
      slot.weight = pick(random, 1, 3);
      slot.section = section;
      for (int option = pick(random, 0, 3); option > 0; --option) slot.options.push_back(randomOption(random));
      const int copies = pick(random, 0, 4) == 0 ? 2 : 1;
      for (slot.copy = 0; slot.copy < copies; ++slot.copy) problem.slots.push_back(slot);
    }
  }
  if (pick(random, 0, 1) == 0) problem.minutesAtMost = pick(random, 0, 10);
  return problem;
}

void tryAll(const ChoiceProblem& problem, Selection& selection, Selection& best, std::optional<Worth>& bestWorth) {
  if (selection.size() == problem.slots.size()) {
    const auto worth = worthOf(problem, selection);
    if (worth && (!bestWorth || *worth > *bestWorth || (*worth == *bestWorth && comesFirst(selection, best)))) {
      best = selection;
      bestWorth = worth;
    }
    return;
  }
  const int options = static_cast<int>(problem.slots[selection.size()].options.size());
  for (int option = kSkipped; option < options; ++option) {
    selection.push_back(option);
    tryAll(problem, selection, best, bestWorth);
    selection.pop_back();
  }
}

}  // namespace

TEST_CASE("The choice is the best of all selections on random small problems") {
  std::mt19937 random(20261125);
  for (int round = 0; round < 3000; ++round) {
    const ChoiceProblem problem = randomProblem(random);
    if (problem.slots.size() > 8) continue;
    Selection selection, best;
    std::optional<Worth> bestWorth;
    tryAll(problem, selection, best, bestWorth);
    const Selection chosen = choose(problem);
    INFO("round " << round);
    REQUIRE(worthOf(problem, chosen) == bestWorth);
    REQUIRE(chosen == best);
  }
}

TEST_CASE("Each wish outweighs all that come after it") {
  Option plain;
  plain.minutes = 1;
  const auto chooses = [&](const Option& first, const Option& second) {
    ChoiceProblem problem;
    problem.linesAtMost = {1};
    problem.slots.push_back({1, 0, 0, {first, second}});
    return choose(problem).front();
  };
  Option preferred = plain;
  preferred.preference = 1;
  preferred.wish = -1;
  preferred.unsuited = 4;
  preferred.isAdapted = true;
  preferred.equipment = 7;
  preferred.minutes = 9;
  CHECK(chooses(plain, preferred) == 1);
  Option liked = plain;
  liked.wish = 1;
  liked.unsuited = 4;
  liked.isAdapted = true;
  liked.minutes = 9;
  CHECK(chooses(plain, liked) == 1);
  Option unsuited = plain;
  unsuited.unsuited = 1;
  Option adapted = plain;
  adapted.isAdapted = true;
  CHECK(chooses(unsuited, adapted) == 1);
  Option equipped = plain;
  equipped.equipment = 3;
  CHECK(chooses(adapted, equipped) == 1);
  Option longer = plain;
  longer.minutes = 5;
  CHECK(chooses(equipped, longer) == 1);
  CHECK(chooses(longer, plain) == 1);
  CHECK(chooses(plain, plain) == 0);
}

TEST_CASE("With room for fewer lines than purposes, the weightier purposes are covered") {
  ChoiceProblem problem;
  problem.linesAtMost = {1};
  problem.slots.push_back({10, 0, 0, {Option{}}});
  problem.slots.push_back({20, 0, 0, {Option{}}});
  CHECK(choose(problem) == Selection{kSkipped, 0});
}

TEST_CASE("Nothing to choose from gives an empty choice") {
  CHECK(choose(ChoiceProblem{}).empty());
  ChoiceProblem problem;
  problem.linesAtMost = {3};
  problem.slots.push_back({1, 0, 0, {}});
  CHECK(choose(problem) == Selection{kSkipped});
}
