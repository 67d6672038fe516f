// Text broken into lines as the toolkit will draw them: one layout a text, instead of one for every word, and
// none for a text that was laid out before.
#pragma once

#include <wx/font.h>
#include <wx/gdicmn.h>

#include <string>

class wxWindow;
typedef struct _cairo cairo_t;

namespace stile::desktop {

struct TextLayout {
  std::string text;  ///< with line ends where it would go beyond the width
  wxSize size;       ///< in pixels of the window
};

/// `width` in pixels; 0 = only where the text itself has line ends.
TextLayout layOut(wxWindow& window, const wxFont& font, const std::string& text, int width);
/// Draws text as it is, lines and all, its upper left corner at `x`, `y`, with the colour that is set.
void drawLaidOut(cairo_t* target, wxWindow& window, const wxFont& font, const std::string& text, double x, double y, bool isUnderlined = false);
/// Shapes it beforehand, so that drawing it is fast.
void prepareLaidOut(wxWindow& window, const wxFont& font, const std::string& text, bool isUnderlined = false);
/// Drops every text that was kept: what was on the screen of a client does not stay in memory behind a lock.
void forgetLayouts();

}  // namespace stile::desktop
