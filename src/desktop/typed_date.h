// A day as people write it.
#pragma once

#include <optional>
#include <string>

#include "base/date.h"

namespace stile::desktop {

/// "1963-03-14", "14 March 1963"; nullopt for anything else, and for a date known only in part.
std::optional<base::Date> typedDate(const std::string& text);

}  // namespace stile::desktop
