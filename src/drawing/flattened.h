// The same picture with only what is seen: hidden areas and lines taken away, areas of one colour and lines
// of one kind joined. A tenth of the bytes where shapes lie over each other, and nothing to choose between
// for a painter.
#pragma once

#include <vector>

#include "drawing/shape.h"

namespace stile::drawing {

/// Flattens shapes that are painted in their order. A closed path with a line and no area is the line of a
/// part whose area follows it: only its outer half is seen. Groups and text end what is flattened together
/// and stay as they are.
std::vector<Shape> flattened(const std::vector<Shape>& shapes);

}  // namespace stile::drawing
