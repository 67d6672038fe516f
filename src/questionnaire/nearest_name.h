// What someone may have meant: the name nearest to a misspelt one.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stile::questionnaire {

/// The name that needs the fewest letters changed, added or dropped to become `written`; "" when
/// none is near. Ties go to the first.
std::string nearestName(std::string_view written, const std::vector<std::string>& names);

/// `did you mean "…"?`, or `otherwise` when no name is near.
std::string didYouMean(std::string_view written, const std::vector<std::string>& names,
                       std::string otherwise);

}  // namespace stile::questionnaire
