// What each purpose has to choose from, and what a clinician's edits fix or take away.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/candidate.h"
#include "plan/edit.h"
#include "plan/starter_plan.h"

namespace stile::plan {

/// A line a clinician asked for.
struct FixedLine {
  Candidate candidate;
  Dose dose;
  std::size_t edit = 0;  ///< in Edits::list
  bool isExtra = false;  ///< takes no other exercise's place
  std::optional<LineOverride> beyond;
};

/// An exercise a clinician took away.
struct DroppedExercise {
  const Exercise* exercise = nullptr;
  std::size_t edit = 0;
};

/// One purpose.
struct Offer {
  const Purpose* purpose = nullptr;
  std::vector<Candidate> candidates;  ///< by exercise id; neither fixed nor dropped
  std::vector<Dose> doses;            ///< of each candidate
  std::vector<Refusal> refusals;
  std::vector<FixedLine> fixed;
  std::vector<DroppedExercise> dropped;
  int toChoose = 1;         ///< how many lines are chosen besides the fixed ones
  std::vector<int> chosen;  ///< indices into candidates

  std::size_t inLibrary() const {
    return candidates.size() + refusals.size() + fixed.size() + dropped.size();
  }
};

/// Every purpose, in session order: section, then priority.
std::vector<Offer> offersOf(const Library& library, const Fitting& fitting);

}  // namespace stile::plan
