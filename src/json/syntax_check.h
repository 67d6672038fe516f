// Whether a text is acceptable JSON, and what is wrong in plain words. For src/json only.
#pragma once

#include <string_view>

#include "base/issue.h"

namespace stile::json {

/// Adds one issue and returns false when `text` is no JSON, too large or too deep, not UTF-8,
/// empty, or begins with a byte-order mark.
bool checkSyntax(std::string_view text, std::string_view file, base::Issues& issues);

}  // namespace stile::json
