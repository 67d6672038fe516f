#include "desktop/drawing_panel.h"

#include <wx/dcbuffer.h>
#include <wx/graphics.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>

#include "desktop/accessible.h"
#include "desktop/painter.h"

namespace stile::desktop {

DrawingPanel::DrawingPanel(wxWindow* parent, const Theme& theme, drawing::Colour ground, drawing::Drawing drawing)
    : wxPanel(parent), theme_(theme), ground_(ground) {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  SetCanFocus(false);
  Bind(wxEVT_PAINT, &DrawingPanel::onPaint, this);
  show(std::move(drawing));
}

void DrawingPanel::show(drawing::Drawing drawing) {
  const bool isSame = !draw_ && drawing == drawing_;
  draw_ = nullptr;
  if (isSame) return;
  drawing_ = std::move(drawing);
  pictureFor(*this, drawing_.title, drawing_.description);
  resize();
  Refresh();
}

void DrawingPanel::showLater(drawing::Drawing frame, std::function<drawing::Drawing()> draw) {
  show(std::move(frame));
  draw_ = std::move(draw);
}

void DrawingPanel::fit(int width) {
  room_ = width;
  resize();
}

double DrawingPanel::scale() const {
  const double wanted = FromDIP(100) / 100.0 * theme_.factor();
  if (room_ <= 0 || drawing_.width <= 0) return wanted;
  return std::min(wanted, room_ / drawing_.width);
}

void DrawingPanel::resize() {
  SetMinSize(wxSize(static_cast<int>(std::ceil(drawing_.width * scale())), static_cast<int>(std::ceil(drawing_.height * scale()))));
}

void DrawingPanel::onPaint(wxPaintEvent&) {
  if (draw_) drawing_ = std::exchange(draw_, nullptr)();
  wxAutoBufferedPaintDC dc(this);
  dc.SetBackground(wxBrush(theme_.colour(ground_)));
  dc.Clear();
  const std::unique_ptr<wxGraphicsContext> context(wxGraphicsContext::Create(dc));
  if (!context) return;
  context->Scale(scale(), scale());
  paint(*context, drawing_, theme_);
}

}  // namespace stile::desktop
