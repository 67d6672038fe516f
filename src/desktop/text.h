// Texts of the rooms below are UTF-8; the toolkit has a type of its own.
#pragma once

#include <wx/string.h>

#include <string>
#include <string_view>

namespace stile::desktop {

inline wxString shown(std::string_view text) { return wxString::FromUTF8(text.data(), text.size()); }
/// For native labels, where "&" announces a key.
inline wxString label(std::string_view text) {
  wxString words = shown(text);
  words.Replace("&", "&&");
  return words;
}
inline std::string plain(const wxString& text) { return text.utf8_string(); }

}  // namespace stile::desktop
