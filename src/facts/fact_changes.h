// What differs between two settled sets of facts of one dictionary, so that what rests on nothing of it
// need not be worked out again.
#pragma once

#include <vector>

#include "facts/fact_set.h"

namespace stile::facts {

struct FactChanges {
  /// By slot: the fact differs in some repetition, in whatever is told of it (value, reason, date, source …).
  /// All members of a group differ whose repetitions differ in number, or in whether there may be more.
  std::vector<bool> slots;
  std::vector<bool> groups;  ///< by group: the repetitions differ so
};

FactChanges changesBetween(const FactSet& before, const FactSet& after);

}  // namespace stile::facts
