// Whether an open question matters, exactly: some admissible completion of the other open
// questions has two answers to it, "not sure" included, that differ in the outcome.
//
// Bounds (stakes.h) settle most questions at once. Where few are left, all completions are tried.
#pragma once

#include <stop_token>
#include <vector>

#include "interview/stakes.h"

namespace stile::interview {

enum class Outcome {
  Decision,  ///< action, clearance and ceilings at both ends, and as if every clearance were granted
  Limits,    ///< the whole record at both ends, and the decision as if granted
};

enum class Verdict {
  Matters,
  DoesNotMatter,
  NotSettled,  ///< too many completions to try, or answers that cannot all be listed: it is kept
};

/// How far the search goes. Every completion costs some microseconds.
struct SearchEffort {
  int mostCompletions = 20000;
  std::stop_token stop;
};

/// Tries every completion of the questions that have a stake. `position` is as before afterwards.
Verdict tryAll(Position& position, const Stakes& stakes, const QuestionRef& question, Outcome outcome,
               const SearchEffort& effort);

/// Sound: true unless it is proven that the question does not matter.
bool mayMatter(Position& position, const Stakes& stakes, const QuestionRef& question, Outcome outcome,
               const SearchEffort& effort);

}  // namespace stile::interview
