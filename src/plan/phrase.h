// Sentences of the content with slots to be filled in.
#pragma once

#include <map>
#include <string>

namespace stile::plan {

/// The text with each {slot} replaced by its value; a slot without a value stays as it is.
std::string filledIn(std::string text, const std::map<std::string, std::string>& slots);

}  // namespace stile::plan
