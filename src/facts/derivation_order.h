// In which order derived facts are worked out: each after everything it reads.
#pragma once

#include <vector>

#include "base/issue.h"
#include "facts/dictionary.h"

namespace stile::facts {

/// The slots a derived fact reads directly, each once; of a choice's option fact, the choice.
std::vector<int> slotsReadBy(const Definition& definition);

/// Slots of all derived facts, each after those it reads. Facts that read each other in a circle
/// are an issue and left out.
std::vector<int> orderDerived(const Dictionary& dictionary, base::Issues& issues);

}  // namespace stile::facts
