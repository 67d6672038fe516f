// A day as people write it.
#pragma once

#include <optional>
#include <string>

#include "base/date.h"

namespace stile::desktop {

/// What to write in the place of what is no day: 4/5/1966 is one in April here and one in May there.
inline constexpr const char* kNoDay = "Write the month as a word, 14 March 1963, or the year first, 1963-03-14.";

/// "1963-03-14", "14 March 1963"; nullopt for anything else, and for a date known only in part.
std::optional<base::Date> typedDate(const std::string& text);

}  // namespace stile::desktop
