// Areas of the body that work or stretch in an exercise, as they lie on the parts of a figure.
// Names: "right.calf", "lowBack", "left.flank" …
#pragma once

#include <string>
#include <vector>

#include "movement/flesh.h"

namespace stile::movement {

/// The area on that part, or no outlines when it lies elsewhere or on the side turned away.
std::vector<drawing::Outline> markOutlines(const std::string& area, const Part& part, const Body& body,
                                           const Camera& camera);

/// True for a name that some part knows.
bool isMark(const std::string& area);

}  // namespace stile::movement
