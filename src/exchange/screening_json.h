// A screening as JSON, for other programs. Its schema is src/exchange/screening.schema.json; a test
// holds the two together.
#pragma once

#include <string>

#include "base/issue.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::exchange {

/// The number of the format; it grows when a member changes its meaning or goes away.
inline constexpr int kScreeningFormat = 1;

/// Same screening, same bytes. `indent` 0 gives one line.
std::string toJson(const screening::Screening& screening, const screening::Content& content, const base::Issues& askedBack,
                   int indent = 2);

}  // namespace stile::exchange
