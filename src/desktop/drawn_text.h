// Lines of text inside a drawing. A drawing shows the same words again and again: what was laid out once is kept.
#pragma once

#include "drawing/shape.h"

typedef struct _cairo cairo_t;

namespace stile::desktop {

/// Draws it with the colour that is set.
void drawText(cairo_t* target, const drawing::TextRun& run);
/// Drops what was kept, see forgetLayouts().
void forgetDrawnTexts();

}  // namespace stile::desktop
