// The decision drawing: the ladder and the action strip, made once from a screening as vector shapes
// and words. Papers and screens paint the same shapes, so that they cannot disagree.
//
// The ladder has two bays between three uprights (aerobic, strength). A rung is open (a solid bar),
// shut (taken out, its sockets empty, a notice hung in the gap that says what opens it) or not yet
// known (hatched). One same reason for every rung is one large notice; an emergency lays the ladder
// down. Nothing here decides anything.
#pragma once

#include <string>

#include "drawing/shape.h"
#include "screening/screening.h"

namespace stile::documents {

/// Measures in drawing units. Labels that do not fit wrap below the tag and make the pitch larger;
/// they never shrink.
struct LadderMeasures {
  double width = 376;  ///< at least 362
  double nameColumn = 84;
  double pitch = 58;  ///< from rung to rung, at least
  double rungHeight = 38;
};

/// The ladder. Every rung is a group with the id "<bay>-<rung>", e.g. "strength-vigorous"; the one
/// notice of a held ladder is "held", the slab of an emergency "emergency".
/// `emergencyNumber` may be empty.
drawing::Drawing ladderOf(const screening::Screening& screening, const std::string& emergencyNumber = {},
                          const LadderMeasures& measures = {});

/// Five boxes from none to emergency: what is so (thick; from same day solid), and what it could
/// still become (hatched). Groups have the ids "none", "routine", "within days", …
drawing::Drawing actionStripOf(const screening::Screening& screening, double width = 376);

/// The ladder for a terminal, in lines of text.
std::vector<std::string> ladderInText(const screening::Screening& screening,
                                      const std::string& emergencyNumber = {});

}  // namespace stile::documents
