// The picture of a plan line.
#pragma once

#include <optional>

#include "movement/picture.h"
#include "plan/library.h"
#include "plan/starter_plan.h"

namespace stile::plan {

/// The exercise in the form and on the side of the line, with a title and a description in words.
/// nullopt when the library has no figure of it.
std::optional<drawing::Drawing> figureOf(const Library& library, const Line& line,
                                         movement::PictureOptions options = {});

/// The picture without its shapes, which take the longest: size, title and description of figureOf().
std::optional<drawing::Drawing> figureFrameOf(const Library& library, const Line& line, const movement::PictureOptions& options);

/// The same as figureOf() for an exercise in one of its forms (0 as written), on "left" or otherwise on the side drawn.
std::optional<drawing::Drawing> figureOf(const Library& library, const Exercise& exercise, std::size_t form,
                                         std::string_view side, movement::PictureOptions options = {});

}  // namespace stile::plan
