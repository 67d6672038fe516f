// Upper and lower case of all letters Unicode has, character by character and without any language's
// own rules, so that the result is the same everywhere.
#pragma once

#include <string>
#include <string_view>

namespace stile::expression {

std::string upperCase(std::string_view text);
std::string lowerCase(std::string_view text);

}  // namespace stile::expression
