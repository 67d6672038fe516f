// The looks a user can choose from.
#pragma once

#include <string_view>

#include "drawing/colour.h"

namespace stile::desktop {

/// HighContrast is black on white wherever a colour has no meaning of its own.
enum class Look { Light, Dark, HighContrast };

/// "#RRGGBB" of a token, or "none".
std::string_view valueIn(Look look, drawing::Colour colour);

}  // namespace stile::desktop
