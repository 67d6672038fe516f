// How wide a line of text comes out, and where to break it. An estimate from the advance widths of
// the program's typeface, so that layout needs no font library and gives the same result everywhere.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stile::drawing {

/// Width in the unit of `size`. Characters outside ASCII count as a wide letter.
double textWidth(std::string_view text, double size, bool isBold = false);

/// The text in lines that fit into `width`, broken at spaces; a word that does not fit alone has a
/// line of its own. Never empty unless the text is.
std::vector<std::string> wrapped(std::string_view text, double width, double size, bool isBold = false);

}  // namespace stile::drawing
