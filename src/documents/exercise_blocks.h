// One exercise of the plan as it stands on the handout.
#pragma once

#include "documents/client_paper.h"
#include "documents/handout_texts.h"
#include "plan/library.h"
#include "plan/starter_plan.h"
#include "screening/screening.h"

namespace stile::documents {

/// The dose in two parts: how much and how often, and how it should feel and what to mind. Together
/// they are the words of the line's dose.
struct DoseWords {
  std::string amount, manner;
};
DoseWords doseWordsOf(const plan::Line& line, const plan::Library& library);

/// What holds for every exercise of a section of the plan, with the section's heading: said once.
struct SharedManner {
  std::string heading, manner;
};
std::vector<SharedManner> sharedManners(const plan::StarterPlan& plan, const plan::Library& library, const HandoutTexts& texts);

/// The sections of the screening's plan, which must stand, in session order: a heading, what holds for all
/// its exercises said once (or left out, where the paper says it elsewhere), then each with its number in the
/// whole plan, what is needed, what was changed, steps and dose. An easier exercise is named only where no
/// limit, place or equipment speaks against it.
std::vector<Section> exerciseSections(const ClientRequest& request, bool saysShared = true);

}  // namespace stile::documents
