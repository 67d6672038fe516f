// What an exercise asks when it is done smaller, measured from its drawn bodies at every share of the full
// movement and on the way there, and tabulated once at load.
#pragma once

#include "base/issue.h"
#include "movement/figure.h"
#include "plan/exercise.h"

namespace stile::plan {

/// Fills in `scaling->scales`, one for each form of the exercise, whose own demands must be known already.
///
/// An easing that eases one of the same movements is smaller already; its scale stays empty. Of the movements
/// it eases a smaller form asks what it shows, rounded up, and what was declared beyond the figure; of all
/// others no less than the form itself. Issues: a movement the exercise does not ask for, a smaller form that
/// asks no less, or that shows what the form does not ask, and bodies no joint allows.
void computeScales(const movement::Figure& figure, Exercise& exercise, base::Issues& issues);

}  // namespace stile::plan
