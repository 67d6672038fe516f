// Things in the room: chair, wall, counter, band … as boxes and lines in space, painted as plain
// outlines so that the figure stays what is looked at.
#pragma once

#include <vector>

#include "drawing/region.h"
#include "movement/body.h"
#include "movement/camera.h"
#include "movement/figure.h"

namespace stile::movement {

/// A rectangular block standing upright, turned by `heading`. Metres.
struct Block {
  Vector centre;  ///< of its floor area; z is its lower side
  double length = 0, width = 0, height = 0;
  double heading = 0;
  bool isHatchedAtEnds = false;  ///< a cut wall
  bool isDark = false;
};

/// Something to sit on, whose height is `seat`.
bool isSeat(const Prop& prop);

std::vector<Block> blocksOf(const Prop& prop);

/// A round bar held in a hand, a wheel: by its ends and radius. Both ends at one place: a ball.
struct Rod {
  Vector from, to;
  double radius = 0;
  bool isDark = false;
};
std::vector<Rod> rodsOf(const Prop& prop, const Body& body);

/// Places a band, towel or strap runs through, in space; empty for other kinds.
std::vector<Vector> courseOf(const Prop& prop, const Body& body);

/// Paints one prop. Hatches and lines are `lineWidth` wide.
std::vector<drawing::Shape> paintProp(const Prop& prop, const Body& body, const Camera& camera,
                                      double lineWidth);

/// All corners, to measure the extent.
std::vector<drawing::Point> extentOf(const Prop& prop, const Body& body, const Camera& camera);

}  // namespace stile::movement
