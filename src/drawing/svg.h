// A drawing as SVG: self-contained, no scripts, no outside files, its own title and description.
#pragma once

#include <string>

#include "drawing/shape.h"

namespace stile::drawing {

struct SvgOptions {
  Theme theme = Theme::Paper;
  std::string idPrefix = "drawing";  ///< must be unique within one page
  bool isCompact = false;            ///< tenths of a unit as whole numbers: a quarter fewer bytes where paths are long
};

/// One `<svg role="img">` element, named by its title and described by its description. Numbers have
/// at most two decimals, those of paths one (none if compact); the same drawing gives the same bytes.
std::string toSvg(const Drawing& drawing, const SvgOptions& options = {});

/// Text for XML and HTML, between tags or in double quotes. Control characters and bytes that are
/// not UTF-8 become U+FFFD.
std::string escaped(std::string_view text);

}  // namespace stile::drawing
