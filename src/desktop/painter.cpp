#include "desktop/painter.h"

#include <cairo.h>
#include <wx/graphics.h>

#include <algorithm>

#include "desktop/drawn_text.h"

namespace stile::desktop {
namespace {

using drawing::Colour;
using drawing::Paint;

constexpr double kHatchStep = 12.7, kHatchWidth = 2.4;  // 9 units apart, at 45 degrees

class Painter {
 public:
  Painter(wxGraphicsContext& context, const Theme& theme) : context_(context), theme_(theme) {}

  void all(const std::vector<drawing::Shape>& shapes) {
    for (const auto& shape : shapes) std::visit([this](const auto& form) { one(form); }, shape.form);
  }

 private:
  void one(const drawing::Group& form) { all(form.shapes); }

  void one(const drawing::Rectangle& form) {
    wxGraphicsPath path = context_.CreatePath();
    path.AddRectangle(form.x, form.y, form.width, form.height);
    if (form.paint.isHatched) hatch(form);
    put(path, form.paint);
  }
  void one(const drawing::Circle& form) {
    wxGraphicsPath path = context_.CreatePath();
    path.AddCircle(form.centre.x, form.centre.y, form.radius);
    put(path, form.paint);
  }
  void one(const drawing::Line& form) {
    wxGraphicsPath path = context_.CreatePath();
    path.MoveToPoint(form.from.x, form.from.y);
    path.AddLineToPoint(form.to.x, form.to.y);
    put(path, form.paint);
  }
  void one(const drawing::Polygon& form) {
    wxGraphicsPath path = context_.CreatePath();
    for (std::size_t i = 0; i < form.points.size(); ++i)
      i == 0 ? path.MoveToPoint(form.points[i].x, form.points[i].y) : path.AddLineToPoint(form.points[i].x, form.points[i].y);
    path.CloseSubpath();
    put(path, form.paint);
  }
  void one(const drawing::Path& form) {
    wxGraphicsPath path = context_.CreatePath();
    for (const auto& step : form.steps) {
      using Kind = drawing::PathStep::Kind;
      switch (step.kind) {
        case Kind::Move: path.MoveToPoint(step.to.x, step.to.y); break;
        case Kind::Line: path.AddLineToPoint(step.to.x, step.to.y); break;
        case Kind::Quadratic: path.AddQuadCurveToPoint(step.control1.x, step.control1.y, step.to.x, step.to.y); break;
        case Kind::Cubic:
          path.AddCurveToPoint(step.control1.x, step.control1.y, step.control2.x, step.control2.y, step.to.x, step.to.y);
          break;
        case Kind::Close: path.CloseSubpath(); break;
      }
    }
    put(path, form.paint);
  }
  void one(const drawing::TextRun& form) {
    auto* const target = static_cast<cairo_t*>(context_.GetNativeContext());
    const wxColour ink = theme_.colour(form.colour);
    cairo_set_source_rgba(target, ink.Red() / 255.0, ink.Green() / 255.0, ink.Blue() / 255.0, ink.Alpha() / 255.0);
    drawText(target, form);
  }

  void hatch(const drawing::Rectangle& form) {
    context_.PushState();
    context_.Clip(form.x, form.y, form.width, form.height);
    context_.SetPen(*wxTRANSPARENT_PEN);
    context_.SetBrush(wxBrush(theme_.colour(Colour::HatchGround)));
    context_.DrawRectangle(form.x, form.y, form.width, form.height);
    context_.SetPen(context_.CreatePen(wxGraphicsPenInfo(theme_.colour(Colour::Hatch), kHatchWidth)));
    wxGraphicsPath lines = context_.CreatePath();
    for (double at = form.x - form.height; at < form.x + form.width; at += kHatchStep) {
      lines.MoveToPoint(at, form.y + form.height);
      lines.AddLineToPoint(at + form.height, form.y);
    }
    context_.StrokePath(lines);
    context_.PopState();
  }

  void put(const wxGraphicsPath& path, const Paint& paint) {
    if (paint.fill != Colour::None && !paint.isHatched) {
      context_.SetBrush(wxBrush(theme_.colour(paint.fill)));
      context_.FillPath(path, wxWINDING_RULE);
    }
    if (paint.stroke == Colour::None) return;
    wxGraphicsPenInfo pen(theme_.colour(paint.stroke), paint.strokeWidth);
    const wxDash dashes[] = {static_cast<wxDash>(std::max(1.0, 6 / paint.strokeWidth)), static_cast<wxDash>(std::max(1.0, 4 / paint.strokeWidth))};
    if (paint.isDashed) pen.Style(wxPENSTYLE_USER_DASH).Dashes(2, dashes);
    pen.Cap(paint.hasRoundEnds ? wxCAP_ROUND : wxCAP_BUTT).Join(paint.hasRoundEnds ? wxJOIN_ROUND : wxJOIN_MITER);
    context_.SetPen(context_.CreatePen(pen));
    context_.StrokePath(path);
  }

  wxGraphicsContext& context_;
  const Theme& theme_;
};

}  // namespace

void paint(wxGraphicsContext& context, const drawing::Drawing& drawing, const Theme& theme) {
  Painter(context, theme).all(drawing.shapes);
}

}  // namespace stile::desktop
