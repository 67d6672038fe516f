#include "plan/planner.h"

#include <algorithm>
#include <cassert>
#include <cstdlib>

#include "plan/edited_offers.h"
#include "plan/line_dose.h"

namespace stile::plan {
namespace {

/// Worth more in the choice than all purposes together, so that a fixed line is always taken.
constexpr int kFixedWeight = 1'000'000;

template <class T>
int numberOf(std::vector<T>& list, const T& value) {
  const auto at = std::find(list.begin(), list.end(), value);
  if (at != list.end()) return static_cast<int>(at - list.begin());
  list.push_back(value);
  return static_cast<int>(list.size()) - 1;
}

}  // namespace

std::vector<RefusedEdit> Planner::take(const Edits& edits, const StarterPlan& unedited) {
  edits_ = edits;
  auto edited = edit(offers_, {library_, fitting_, edits_, unedited});
  sessionMinutes_ = edited.sessionMinutes;
  return std::move(edited.refused);
}

// Steps between the client's level and the nearest the exercise suits; at other levels a fallback is furthest.
int Planner::distanceFromLevel(const Exercise& exercise) const {
  const auto& levels = fitting_.doses.levels;
  const int furthest = static_cast<int>(levels.size());
  const std::string& own = fitting_.prescription.level->dose.level;
  if (std::find(exercise.levels.begin(), exercise.levels.end(), own) != exercise.levels.end()) return 0;
  if (exercise.isFallback) return furthest;
  if (exercise.levels.empty()) return 0;
  const auto rankOf = [&](const std::string& id) {
    const auto at = std::find_if(levels.begin(), levels.end(),
                                 [&](const Level& level) { return level.dose.level == id; });
    return static_cast<int>(at - levels.begin());
  };
  int nearest = furthest;
  for (const std::string& id : exercise.levels)
    nearest = std::min(nearest, std::abs(rankOf(id) - rankOf(fitting_.prescription.level->dose.level)));
  return nearest;
}

Option Planner::optionOf(const Candidate& candidate, const Dose& dose) {
  const Exercise& exercise = *candidate.exercise;
  Option option;
  option.preference = (candidate.preferredBy.empty() ? 0 : 1) - (candidate.discouragedBy.empty() ? 0 : 1);
  option.wish = wishFor(exercise, wishes_);
  option.unsuited = distanceFromLevel(exercise);
  option.isAdapted = candidate.isAdapted();
  option.position = numberOf(positions_, exercise.position);
  for (const std::string& piece : equipmentOf(candidate)) {
    const int bit = numberOf(equipment_, piece);
    assert(bit < kMostPieces);
    option.equipment |= 1u << bit;
  }
  option.minutes = minutesOf(candidate, dose, fitting_.doses);
  // The aerobic part has its own day where the session is short, and was fitted beforehand.
  option.budgetMinutes = exercise.section == Section::Aerobic ? 0 : option.minutes;
  return option;
}

// A goal brings its purposes forward among those the session has room for.
int Planner::weightOf(const Purpose& purpose) const {
  const bool isWished = std::any_of(wishes_.begin(), wishes_.end(), [&](const Wish* wish) {
    return std::find(wish->purposes.begin(), wish->purposes.end(), purpose.id) != wish->purposes.end();
  });
  return purpose.priority + (isWished ? library_.wishes.priorityRaise : 0);
}

// A fixed line is a slot with one option; each that takes no other's place makes room for itself.
ChoiceProblem Planner::problem() {
  ChoiceProblem problem;
  for (Section section : kSections)
    problem.linesAtMost.push_back(fitting_.prescription.sections.at(section).linesAtMost);
  problem.minutesAtMost = sessionMinutes_;
  std::vector<int> fixedLines(problem.linesAtMost.size(), 0);
  for (const Offer& offer : offers_) {
    const auto section = static_cast<std::size_t>(offer.purpose->section);
    for (const FixedLine& fixed : offer.fixed) {
      Slot slot;
      slot.weight = kFixedWeight;
      slot.section = static_cast<int>(section);
      slot.options.push_back(optionOf(fixed.candidate, fixed.dose));
      problem.slots.push_back(std::move(slot));
      if (fixed.isExtra) ++problem.linesAtMost[section];
      ++fixedLines[section];
    }
    Slot slot;
    slot.weight = weightOf(*offer.purpose);
    slot.section = static_cast<int>(section);
    for (std::size_t i = 0; i < offer.candidates.size(); ++i)
      slot.options.push_back(optionOf(offer.candidates[i], offer.doses[i]));
    for (slot.copy = 0; slot.copy < offer.toChoose; ++slot.copy) problem.slots.push_back(slot);
  }
  for (std::size_t section = 0; section < fixedLines.size(); ++section)
    problem.linesAtMost[section] = std::max(problem.linesAtMost[section], fixedLines[section]);
  return problem;
}

void Planner::takeChoice(const Selection& selection) {
  std::size_t slot = 0;
  for (Offer& offer : offers_) {
    for (std::size_t fixed = 0; fixed < offer.fixed.size(); ++fixed, ++slot) assert(selection[slot] == 0);
    for (int copy = 0; copy < offer.toChoose; ++copy, ++slot) {
      if (selection[slot] != kSkipped) offer.chosen.push_back(selection[slot]);
    }
  }
}

StarterPlan Planner::run() {
  StarterPlan plan;
  plan.level = fitting_.prescription.level->dose.level;
  plan.levelBecause = fitting_.prescription.levelBecause;
  plan.edits = edits_;
  const ChoiceProblem toSolve = problem();
  const Selection selection = choose(toSolve);
  takeChoice(selection);
  allMinutes_ = -worthOf(toSolve, selection).value_or(Worth{}).back();
  writeLines(plan);
  writeNext(plan);
  writeLeftOut(plan);
  writeAlsoOpen(plan);
  writeFirstSteps(plan);
  writeSentences(plan);
  return plan;
}

}  // namespace stile::plan
