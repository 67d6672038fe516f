// The dose of one line: the section's numbers made into this exercise's, and the words for them.
#pragma once

#include "plan/candidate.h"
#include "plan/prescription.h"
#include "plan/starter_plan.h"

namespace stile::plan {

/// Numbers and words. Everything printed comes from the section's dose.
Dose doseOf(const Candidate& candidate, const Fitting& fitting);

/// Minutes the line takes, rounded up.
int minutesOf(const Candidate& candidate, const Dose& dose, const Library::Doses& doses);
/// Of a line as it stands in a plan.
int minutesOf(const Line& line, const Library::Doses& doses);

}  // namespace stile::plan
