// Regular expressions of strangers' forms, within bounds. For src/answers only.
#pragma once

#include <string>

#include "expression/value.h"

namespace stile::answers {

/// Whether the whole text matches the pattern, as FHIRPath's matchesFull() reads it. Unknown when the
/// pattern is none, or takes more steps than an evaluation may (expression/environment.h).
expression::Truth matchesWhole(const std::string& pattern, const std::string& text);

}  // namespace stile::answers
