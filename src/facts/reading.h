// Mean, worst and last of repeated readings, on bounds and with dates that may be known in part.
#pragma once

#include <optional>
#include <vector>

#include "facts/derivation.h"

namespace stile::facts {

/// Over the readings that are at most `age` old (all when absent). A reading that may be too old,
/// or of which another may be the newer, widens the result instead of deciding it. Without any
/// reading that is certainly recent the result is unknown: not measured is never "does not apply".
Derived deriveFromReadings(const FactSet& facts, const Derivation& derivation,
                           const std::optional<base::Period>& age, base::Date today);

}  // namespace stile::facts
