// Vector shapes onto a PDF page.
#include "documents/pdf_canvas.h"
#include "documents/pdf_path.h"

namespace stile::documents {
namespace {

/// Shapes go past cairo, words through it: each stretch of shapes is handed over before the words that
/// are painted after it.
class DrawingPainter {
 public:
  using Hand = std::function<void(std::string)>;
  DrawingPainter(cairo_t* cairo, const Typesetter& type, Hand hand)
      : cairo_(cairo), type_(type), hand_(std::move(hand)) {}

  void paint(const std::vector<drawing::Shape>& shapes) {
    for (const drawing::Shape& shape : shapes) std::visit([this](const auto& form) { of(form); }, shape.form);
  }
  void finish() {
    if (!writer_.isEmpty()) hand_(writer_.taken());
  }

 private:
  template <class Form>
  void of(const Form& form) {
    writer_.write(form);
  }
  void of(const drawing::TextRun& form) {
    if (form.text.empty()) return;
    finish();
    // A line as high as its letters: the base line is known then.
    const SetText text = type_.set(form.text, {form.size, form.size, form.isBold, form.colour}, 0);
    const double shift = form.align == drawing::Align::Start    ? 0
                         : form.align == drawing::Align::Middle ? text.width() / 2
                                                                : text.width();
    text.paintOnBaseLine(cairo_, form.at.x - shift, form.at.y);
  }
  void of(const drawing::Group& form) { paint(form.shapes); }

  cairo_t* cairo_;
  const Typesetter& type_;
  Hand hand_;
  PathWriter writer_;
};

}  // namespace

void PdfCanvas::draw(const drawing::Drawing& drawing, const Typesetter& type, double x, double y,
                     double scale) {
  DrawingPainter painter(cairo(), type, [&](std::string content) {
    const PlacedShapes shapes{x, y, scale, std::move(content)};
    const double edge = PlacedShapes::kWidth, height = PlacedShapes::heightOf(notes_.shapes.size());
    notes_.shapes.push_back(shapes);
    // Where they go, in cairo's own order of painting.
    cairo_save(cairo());
    cairo_identity_matrix(cairo());
    use(drawing::Colour::Ink);
    cairo_new_path(cairo());
    cairo_rectangle(cairo(), x, y, edge, height);
    cairo_fill(cairo());
    cairo_restore(cairo());
  });
  cairo_save(cairo());
  cairo_translate(cairo(), x, y);
  cairo_scale(cairo(), scale, scale);
  painter.paint(drawing.shapes);
  painter.finish();
  cairo_restore(cairo());
}

}  // namespace stile::documents
