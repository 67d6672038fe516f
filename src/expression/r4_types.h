// The text of r4_types.txt, put into the program by the build. For src/expression only.
#pragma once

#include <string_view>

namespace stile::expression {

extern const std::string_view kR4Types;

}  // namespace stile::expression
