// The way from the start to the guideline volume, week by week: time before intensity, never above
// a cap, never down.
#pragma once

#include <vector>

#include "plan/candidate.h"
#include "plan/starter_plan.h"

namespace stile::plan {

/// Which kinds of lines the plan has.
struct PlanParts {
  bool hasAerobic = false, hasStrength = false, hasBalance = false, hasStretching = false;
};

/// `way` is how aerobic time grows. No weeks without aerobic, strength or balance lines.
std::vector<Week> weeksOf(const Fitting& fitting, const PlanParts& parts, const AerobicGrowth* way);

}  // namespace stile::plan
