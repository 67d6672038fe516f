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
  bool hasPaleFarLimbs = true;
  std::map<std::string, double> nudges;  ///< parts brought nearer to the viewer, metres
  std::vector<std::string> worked;       ///< areas marked
};

std::vector<drawing::Shape> paintBody(const Body& body, const Camera& camera, const FigureStyle& style);

/// Every point of the figure's outline, to measure its extent.
std::vector<drawing::Point> extentOf(const Body& body, const Camera& camera, Build build);

}  // namespace stile::movement
