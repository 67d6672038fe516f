// Names for those who cannot see the window. The toolkit's own names do not reach screen readers here,
// so they are set on the native control.
#pragma once

#include <string>

class wxWindow;

namespace stile::desktop {

/// What a screen reader says of the control; `description` may be longer and is read on request; "" leaves
/// what was.
void nameFor(wxWindow& window, const std::string& name, const std::string& description = {});
/// What is read on request, in the place of what was; "" = nothing.
void describe(wxWindow& window, const std::string& description);
/// A picture: role, name and description.
void pictureFor(wxWindow& window, const std::string& name, const std::string& description);
/// A part of a page that only holds others.
void groupFor(wxWindow& window, const std::string& name, const std::string& description = {});
/// The line of the window that says what has just been done.
void statusFor(wxWindow& window, const std::string& name);
/// Tells those who cannot see the window now.
void announce(wxWindow& window, const std::string& words);
/// A style class of the style sheet, put on or taken off.
void styleClass(wxWindow& window, const char* name, bool isOn = true);
/// Tells a screen reader of the focus again, where it stands on a control that has new words.
void announceFocus(wxWindow& window);
/// Whether the focus is on the window or on what the toolkit puts inside of it: of a choice the button has it.
bool hasFocusInside(const wxWindow& window);
/// Shows the focus before the first key is pressed.
void showFocus(wxWindow& topLevel);

}  // namespace stile::desktop
