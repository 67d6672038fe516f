// Text broken into lines as the toolkit will draw them: one layout a text, instead of one for every word.
#pragma once

#include <wx/font.h>
#include <wx/gdicmn.h>

#include <string>

class wxWindow;

namespace stile::desktop {

struct TextLayout {
  std::string text;  ///< with line ends where it would go beyond the width
  wxSize size;       ///< in pixels of the window
};

/// `width` in pixels; 0 = only where the text itself has line ends.
TextLayout layOut(wxWindow& window, const wxFont& font, const std::string& text, int width);

}  // namespace stile::desktop
