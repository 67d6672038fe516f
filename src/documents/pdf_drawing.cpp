// Vector shapes onto a PDF page.
#include <cmath>
#include <numbers>

#include "documents/pdf_canvas.h"

namespace stile::documents {
namespace {

using drawing::Colour;
using drawing::Paint;

class DrawingPainter {
 public:
  DrawingPainter(cairo_t* cairo, const Typesetter& type) : cairo_(cairo), type_(type) {}

  void paint(const drawing::Shape& shape) {
    std::visit([this](const auto& form) { of(form); }, shape.form);
  }

 private:
  void use(Colour colour) {
    const std::string value(drawing::valueOf(colour, drawing::Theme::Paper));
    const auto part = [&](std::size_t at) { return std::stoi(value.substr(at, 2), nullptr, 16) / 255.0; };
    cairo_set_source_rgb(cairo_, part(1), part(3), part(5));
  }

  /// Lines 2.4 wide, 9 apart, at 45 degrees, inside the current path.
  void hatch() {
    double left = 0, top = 0, right = 0, bottom = 0;
    cairo_path_extents(cairo_, &left, &top, &right, &bottom);
    cairo_path_t* outline = cairo_copy_path(cairo_);
    use(Colour::HatchGround);
    cairo_fill_preserve(cairo_);
    cairo_save(cairo_);
    cairo_clip(cairo_);
    cairo_new_path(cairo_);
    use(Colour::Hatch);
    cairo_set_line_width(cairo_, 2.4);
    const double step = 9 * std::numbers::sqrt2, height = bottom - top;
    for (double x = left - height; x < right + step; x += step) {
      cairo_move_to(cairo_, x, bottom);
      cairo_line_to(cairo_, x + height, top);
    }
    cairo_stroke(cairo_);
    cairo_restore(cairo_);
    cairo_new_path(cairo_);
    cairo_append_path(cairo_, outline);
    cairo_path_destroy(outline);
  }

  void painted(const Paint& paint) {
    if (paint.isHatched) {
      hatch();
    } else if (paint.fill != Colour::None) {
      use(paint.fill);
      cairo_fill_preserve(cairo_);
    }
    if (paint.stroke != Colour::None) {
      cairo_save(cairo_);
      use(paint.stroke);
      cairo_set_line_width(cairo_, paint.strokeWidth);
      if (paint.isDashed) {
        const double dashes[] = {6, 4};
        cairo_set_dash(cairo_, dashes, 2, 0);
      }
      if (paint.hasRoundEnds) {
        cairo_set_line_cap(cairo_, CAIRO_LINE_CAP_ROUND);
        cairo_set_line_join(cairo_, CAIRO_LINE_JOIN_ROUND);
      }
      cairo_stroke_preserve(cairo_);
      cairo_restore(cairo_);
    }
    cairo_new_path(cairo_);
  }

  void of(const drawing::Rectangle& form) {
    cairo_new_path(cairo_);
    cairo_rectangle(cairo_, form.x, form.y, form.width, form.height);
    painted(form.paint);
  }
  void of(const drawing::Circle& form) {
    cairo_new_path(cairo_);  // else a stray line joins the circle to the last point
    cairo_arc(cairo_, form.centre.x, form.centre.y, form.radius, 0, 2 * std::numbers::pi);
    cairo_close_path(cairo_);
    painted(form.paint);
  }
  void of(const drawing::Line& form) {
    cairo_new_path(cairo_);
    cairo_move_to(cairo_, form.from.x, form.from.y);
    cairo_line_to(cairo_, form.to.x, form.to.y);
    painted(form.paint);
  }
  void of(const drawing::Polygon& form) {
    cairo_new_path(cairo_);
    for (const drawing::Point& point : form.points) cairo_line_to(cairo_, point.x, point.y);
    cairo_close_path(cairo_);
    painted(form.paint);
  }
  void of(const drawing::Path& form) {
    using Kind = drawing::PathStep::Kind;
    cairo_new_path(cairo_);
    drawing::Point at;
    for (const drawing::PathStep& step : form.steps) {
      const auto &a = step.control1, &b = step.control2;
      if (step.kind == Kind::Move) cairo_move_to(cairo_, step.to.x, step.to.y);
      if (step.kind == Kind::Line) cairo_line_to(cairo_, step.to.x, step.to.y);
      if (step.kind == Kind::Quadratic)  // raised to a cubic
        cairo_curve_to(cairo_, at.x + 2 * (a.x - at.x) / 3, at.y + 2 * (a.y - at.y) / 3,
                       step.to.x + 2 * (a.x - step.to.x) / 3, step.to.y + 2 * (a.y - step.to.y) / 3, step.to.x,
                       step.to.y);
      if (step.kind == Kind::Cubic) cairo_curve_to(cairo_, a.x, a.y, b.x, b.y, step.to.x, step.to.y);
      if (step.kind == Kind::Close)
        cairo_close_path(cairo_);
      else
        at = step.to;
    }
    painted(form.paint);
  }
  void of(const drawing::TextRun& form) {
    if (form.text.empty()) return;
    // A line as high as its letters: the base line is known then.
    const SetText text = type_.set(form.text, {form.size, form.size, form.isBold, form.colour}, 0);
    const double shift = form.align == drawing::Align::Start    ? 0
                         : form.align == drawing::Align::Middle ? text.width() / 2
                                                                : text.width();
    text.paintOnBaseLine(cairo_, form.at.x - shift, form.at.y);
  }
  void of(const drawing::Group& form) {
    for (const drawing::Shape& shape : form.shapes) paint(shape);
  }

  cairo_t* cairo_;
  const Typesetter& type_;
};

}  // namespace

void PdfCanvas::draw(const drawing::Drawing& drawing, const Typesetter& type, double x, double y, double scale) {
  cairo_save(cairo());
  cairo_translate(cairo(), x, y);
  cairo_scale(cairo(), scale, scale);
  DrawingPainter painter(cairo(), type);
  for (const drawing::Shape& shape : drawing.shapes) painter.paint(shape);
  cairo_restore(cairo());
}

}  // namespace stile::documents
