// Asks for the passphrase of whoever is signed in, so that Enter alone signs nothing.
#pragma once

#include <optional>
#include <string>

class wxWindow;

namespace stile::desktop {

class Theme;

/// nullopt when it was called off.
std::optional<std::string> askPassphrase(wxWindow& parent, const Theme& theme, const std::string& title, const std::string& words);

}  // namespace stile::desktop
