// Names near to a misspelt one, nearest first, for the remedy of an issue.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stile::base {

/// At most three of `names`: a few letters apart, or the same but for capitals, or one the
/// beginning of the other.
std::vector<std::string> nearNames(std::string_view written, const std::vector<std::string_view>& names);
std::vector<std::string> nearNames(std::string_view written, const std::vector<std::string>& names);

/// `did you mean a, b or c?`, or `otherwise` when there is none.
std::string didYouMean(const std::vector<std::string>& near, std::string otherwise);

/// The same for the near ones of `names`.
std::string didYouMean(std::string_view written, const std::vector<std::string>& names,
                       std::string otherwise);

}  // namespace stile::base
