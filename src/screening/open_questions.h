// Which unanswered questions could still change something, and in which order to ask them.
#pragma once

#include <vector>

#include "screening/screening.h"

namespace stile::screening {

/// The facts behind the open findings, down to what a form asks: a derived fact is told through
/// its unknown inputs. Order: those that could become an emergency, then the gravest call, then
/// those that keep a rung not yet known, then form order.
std::vector<OpenQuestion> openQuestionsOf(const Screening& screening, const questionnaire::FormSet& forms);

}  // namespace stile::screening
