// Paints vector drawings (the ladder, the action strip, exercise figures) on the screen: the same
// shapes that the papers get.
#pragma once

#include "desktop/theme.h"
#include "drawing/shape.h"

class wxGraphicsContext;

namespace stile::desktop {

/// Paints with the drawing's upper left corner at the origin of the context, in drawing units.
void paint(wxGraphicsContext& context, const drawing::Drawing& drawing, const Theme& theme);

}  // namespace stile::desktop
