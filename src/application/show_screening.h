// A screening as the faces show it: text for reading, JSON for other programs.
#pragma once

#include <string>

#include "base/issue.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::application {

/// The screening summary as plain text, 80 columns wide.
std::string screeningAsText(const screening::Screening& screening, const screening::Content& content,
                            const base::Issues& askedBack);
/// Schema: src/exchange/screening.schema.json.
std::string screeningAsJson(const screening::Screening& screening, const screening::Content& content,
                            const base::Issues& askedBack);

}  // namespace stile::application
