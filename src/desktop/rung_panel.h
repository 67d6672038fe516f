// Answers as the rungs of an upright, for client mode: the upright is painted, the answers are native.
#pragma once

#include <wx/panel.h>

#include "desktop/fitted.h"

namespace stile::desktop {

class RungPanel : public wxPanel, public Fitted {
 public:
  RungPanel(wxWindow* parent, const Theme& theme);
  /// Puts a child below those before.
  void put(wxWindow* child);
  void fit(int width) override;

 private:
  void onPaint(wxPaintEvent& event);
  const Theme& theme_;
};

}  // namespace stile::desktop
