// The arrow that shows a movement.
#pragma once

#include "drawing/shape.h"

namespace stile::movement {

/// A curved arrow with a pale rim; `bend` bows it to the left of its way, as a fraction of its length.
std::vector<drawing::Shape> paintArrow(drawing::Point from, drawing::Point to, double bend, bool isBoth,
                                       double lineWidth);

}  // namespace stile::movement
