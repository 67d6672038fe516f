// One exercise of the plan as it stands on the handout.
#pragma once

#include "documents/document.h"
#include "documents/handout_texts.h"
#include "plan/library.h"
#include "plan/starter_plan.h"
#include "screening/screening.h"

namespace stile::documents {

/// Title with its number, what is needed, what was changed, steps, dose, and what to do when it is
/// too hard. An easier exercise is named only where no limit, place or equipment speaks against it.
Block exerciseBlock(const plan::StarterPlan& plan, std::size_t index, const screening::Screening& screening,
                    const plan::Library& library, const HandoutTexts& texts);

}  // namespace stile::documents
