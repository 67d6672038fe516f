// Buttons beside each other, in as many rows as their width wants.
#pragma once

#include <wx/panel.h>

#include "desktop/fitted.h"

namespace stile::desktop {

/// A panel that knows its height as soon as it knows its width. The toolkit's own row that wraps knows it
/// only after it was laid out once, and gives a button a single pixel until then.
class ButtonRow : public wxPanel, public Fitted {
 public:
  /// `gap`: between buttons and below each row, in pixels of the size before scaling.
  ButtonRow(wxWindow* parent, const Theme& theme, drawing::Colour ground, int gap);
  /// Puts a button, whose parent is this row, behind those before.
  void put(wxWindow* button);
  void fit(int width) override;

 private:
  class Rows;
  Rows* rows_;
  int gap_;
};

}  // namespace stile::desktop
