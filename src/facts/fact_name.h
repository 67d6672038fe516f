// How issues name a fact and where it was given.
#pragma once

#include <string>

#include "base/issue.h"
#include "facts/dictionary.h"
#include "facts/fact.h"

namespace stile::facts {

/// `readingSystolic`, or `bloodPressureReading 2: readingSystolic` for a group member.
inline std::string nameOf(const Definition& definition, int repetition) {
  if (repetition < 0 || definition.groupIndex < 0) return definition.id;
  return definition.group + " " + std::to_string(repetition + 1) + ": " + definition.id;
}

inline base::Place placeOf(const Fact& fact) {
  return fact.place ? *fact.place : base::Place{};
}

}  // namespace stile::facts
