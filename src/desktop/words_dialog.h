// Asks for one line of text: the passphrase of whoever signs, so that Enter alone signs nothing, or a reason.
#pragma once

#include <optional>
#include <string>

class wxWindow;

namespace stile::desktop {

class Theme;

struct WordsAsked {
  std::string title, words;
  std::string field;   ///< its accessible name
  std::string button;  ///< what Enter does
  bool isSecret = true;
  std::string already = {};  ///< stands in the field from the start
};

/// nullopt when it was called off.
std::optional<std::string> askWords(wxWindow& parent, const Theme& theme, const WordsAsked& asked);

}  // namespace stile::desktop
