// What is painted on a head: hair, face, eyes, ears and a mouth, each only where it faces the viewer.
#pragma once

#include "movement/flesh.h"

namespace stile::movement {

/// Shapes over the filled head, in order. `lineWidth` in drawing units.
std::vector<drawing::Shape> headDetails(const Body& body, const Camera& camera, const Girth& girth,
                                        double lineWidth);

}  // namespace stile::movement
