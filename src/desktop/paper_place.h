// Where papers are put, and what they are called on the screen. No window in it.
#pragma once

#include <string>

#include "base/date.h"

namespace stile::desktop {

/// "Clearance letter" for "clearance-letter", "Referral eye care" for "referral-eyeCare".
std::string paperTitle(const std::string& name);

/// A folder of its own for each client and day within `parent`, so that nobody's papers take the place of
/// somebody else's.
std::string proposedFolder(const std::string& parent, const std::string& client, base::Date day);

/// Why papers cannot be put there, as a sentence; "" when nothing speaks against it.
std::string troubleWithFolder(const std::string& folder);

}  // namespace stile::desktop
