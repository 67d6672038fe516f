// The demands that the figures show, taken over into the library: an exercise asks at least what its
// drawn bodies do, in every form. Declared cautions may go beyond the picture; one that falls short
// of it is a content error.
#pragma once

#include <vector>

#include "base/issue.h"
#include "movement/figure.h"
#include "plan/exercise.h"

namespace stile::plan {

/// Degrees by which a declared angle may stay below the drawn one: reading tolerance of a goniometer
/// (common practice, no source).
inline constexpr double kAngleTolerance = 5;

/// Raises demands and adds bans of each exercise to what its figure shows, and gives each easing
/// what its own drawn form asks. Issues: an exercise without a figure, a figure without an exercise,
/// an easing without a drawn form, a declared angle or ban that falls short of the picture.
void applyFigures(const movement::Figures& figures, std::vector<Exercise>& exercises, base::Issues& issues);

}  // namespace stile::plan
