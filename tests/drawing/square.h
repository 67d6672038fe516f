// An outline whose area is known without counting.
#pragma once

#include "drawing/region.h"

namespace stile::drawing {

inline Outline squareAt(double left, double top, double size) {
  return {{left, top}, {left + size, top}, {left + size, top + size}, {left, top + size}};
}

}  // namespace stile::drawing
