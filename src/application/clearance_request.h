// What a physician is asked: the findings that wait for a clearance, as a reply form to fill in.
#pragma once

#include <string>
#include <vector>

#include "screening/content.h"
#include "screening/screening.h"

namespace stile::application {

/// The intensity the client wants; light when nothing is known of it.
limits::Rung wantedIntensity(const screening::Screening& screening);

/// Indices of the findings that are certain, wait for a clearance and are not covered, and that
/// matter for the intensity the client wants (no letter for an intensity nobody wants).
std::vector<std::size_t> findingsToClear(const screening::Screening& screening);

/// A response to the form clearance-reply with one repetition a finding: rule, basis, and the
/// bay and intensity asked for filled in; the answer itself is left open.
std::string blankReply(const screening::Screening& screening, const screening::Content& content);

}  // namespace stile::application
