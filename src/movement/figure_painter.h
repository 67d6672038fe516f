// Paints a posed body as vector shapes, from the back to the front.
//
// Each part's line is laid under its fill, twice as wide as it will show, so that only its outer half
// remains; where a limb grows out of a neighbour of the same colour its root has no line.
#pragma once

#include "movement/flesh.h"

namespace stile::movement {

struct FigureStyle {
  Build build = Build::Sturdy;
  double lineWidth = 2;
  std::map<std::string, double> nudges;  ///< parts brought nearer to the viewer, metres
  std::vector<std::string> worked;       ///< areas marked
};

/// `parts` are the body's, as that camera sees them.
std::vector<drawing::Shape> paintBody(Parts parts, const Body& body, const Camera& camera,
                                      const FigureStyle& style);

}  // namespace stile::movement
