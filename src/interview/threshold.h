// The numbers that rules, derived facts and forms compare an answer with.
#pragma once

#include <vector>

#include "base/rational.h"
#include "expression/program.h"
#include "facts/dictionary.h"

namespace stile::interview {

/// Numbers at which something may turn, in the fact's unit. `isComplete` is false when the fact is
/// also used in another way (added to something, averaged), so that other numbers may matter too.
struct Thresholds {
  std::vector<base::Rational> numbers;
  bool isComplete = true;
};

/// Adds what `program` compares the fact with.
void addThresholds(const expression::Program& program, const facts::Definition& fact, Thresholds& thresholds);

}  // namespace stile::interview
