// What a drawn form shows of a movement, in the terms of an exercise's demands: by working and other limb.
#pragma once

#include <string>
#include <string_view>

#include "movement/demands.h"
#include "plan/exercise.h"

namespace stile::plan {

/// Angles under these are how everybody stands and sits; they are no demand of an exercise. Degrees.
double leastDemandOf(std::string_view movement);

/// Movements of trunk and neck, which have no sides.
bool isOfTrunk(std::string_view movement);

/// The largest angle of a movement on a limb of the exercise, degrees, not rounded; 0 where there is none.
double shownDegrees(const movement::Figure& figure, const Exercise& exercise,
                    const movement::Demands& demands, std::string_view movement, Limb limb);

}  // namespace stile::plan
