// What stands in the way of one form of an exercise, and how far the form goes beyond what is open.
#pragma once

#include <compare>
#include <string>
#include <vector>

#include "base/rational.h"

namespace stile::plan {

struct Obstacle {
  std::string words;
  std::vector<std::string> ruleIds;
  base::Rational beyond = 0;  ///< degrees past a cap; 0 for what is there or is not, such as a ban
};

/// How far a form goes beyond: first what it lacks or may not do at all, then degrees past the caps, then how
/// many things there are.
struct Excess {
  std::size_t absolute = 0;
  base::Rational degrees = 0;
  std::size_t things = 0;
  auto operator<=>(const Excess& other) const = default;
};
/// Each thing counts once, though it may stand in the way of both sides.
Excess excessOf(const std::vector<Obstacle>& obstacles);

/// All in words, each thing once.
std::string join(const std::vector<Obstacle>& obstacles);
/// The rules that hold them, each once.
std::vector<std::string> heldBy(const std::vector<Obstacle>& obstacles);

}  // namespace stile::plan
