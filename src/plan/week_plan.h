// The way from the start to the guideline volume, week by week: time before intensity, never above
// a cap, never down.
#pragma once

#include <vector>

#include "plan/candidate.h"
#include "plan/starter_plan.h"

namespace stile::plan {

/// `hasAerobic` and `hasStrength` say which kinds of lines the plan has.
std::vector<Week> weeksOf(const Fitting& fitting, bool hasAerobic, bool hasStrength);

}  // namespace stile::plan
