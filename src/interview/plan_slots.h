// Which facts the starter plan reads besides the limits.
#pragma once

#include <set>

#include "facts/dictionary.h"
#include "plan/library.h"

namespace stile::interview {

/// Equipment and positions that exercises need, goals and likings, and what starting levels, growth and heart-rate bands look at.
std::set<int> slotsReadBy(const plan::Library& library, const facts::Dictionary& dictionary);

}  // namespace stile::interview
