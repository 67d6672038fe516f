// Which policies decided something for this client.
#pragma once

#include <vector>

#include "screening/content.h"
#include "screening/screening.h"

namespace stile::screening {

/// A policy is named if some other alternative would give another action, clearance, ceiling or
/// another set of limits for this client. Decided by trying each alternative.
std::vector<PolicyNote> policiesThatDecide(const Content& content, const Screening& screening,
                                           const std::vector<ClearanceReply>& replies);

/// The policies by which the weeks of this plan grow as they do.
std::vector<PolicyNote> policiesThatShape(const Content& content, const plan::StarterPlan& plan);

}  // namespace stile::screening
