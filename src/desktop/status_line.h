// The foot of the window: what has just been done at the left, the keys of the page at the right. A live
// text: screen readers find it, and are told when it changes.
#pragma once

#include <wx/panel.h>

#include <string>

class wxStaticText;

namespace stile::desktop {

class Theme;

class StatusLine : public wxPanel {
 public:
  StatusLine(wxWindow* parent, const Theme& theme);
  void say(const std::string& words);
  void showKeys(const std::string& keys);
  bool AcceptsFocus() const override { return false; }

 private:
  wxStaticText *said_, *keys_;
};

}  // namespace stile::desktop
