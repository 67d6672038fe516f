// A panel that shows one vector drawing, with its title and description for screen readers.
#pragma once

#include <wx/panel.h>

#include <functional>

#include "desktop/fitted.h"
#include "desktop/theme.h"
#include "drawing/shape.h"

namespace stile::desktop {

class DrawingPanel : public wxPanel, public Fitted {
 public:
  DrawingPanel(wxWindow* parent, const Theme& theme, drawing::Colour ground, drawing::Drawing drawing = {});
  void show(drawing::Drawing drawing);
  /// The same, drawn only when it is first painted: `frame` has its size and its words. What `draw` refers to
  /// must outlive the panel.
  void showLater(drawing::Drawing frame, std::function<drawing::Drawing()> draw);
  const drawing::Drawing& shownDrawing() const { return drawing_; }
  /// Scaled down when there is less room than the drawing wants.
  void fit(int width) override;

 private:
  double scale() const;
  void resize();
  void onPaint(wxPaintEvent& event);

  const Theme& theme_;
  drawing::Colour ground_;
  drawing::Drawing drawing_;
  std::function<drawing::Drawing()> draw_;  ///< what is still to be drawn
  int room_ = 0;
};

}  // namespace stile::desktop
