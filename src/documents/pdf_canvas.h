// A PDF page to paint on: shapes, words and the tags that tell a listening reader what they are.
// Measures in points; y grows downwards.
#pragma once

#include <cairo.h>

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "base/result.h"
#include "documents/pdf_notes.h"
#include "documents/pdf_text.h"
#include "drawing/shape.h"

namespace stile::documents {

class PdfCanvas {
 public:
  PdfCanvas(const Document& document, double width, double height);

  cairo_t* cairo() const { return cairo_.get(); }
  double width() const { return width_; }
  double height() const { return height_; }
  const TagNotes& notes() const { return notes_; }

  void open(const std::string& tag, const std::string& alternative = {}, const std::string& scope = {});
  void close();
  /// Paints something that is no part of the reading: rules, frames, running feet. Tags that are opened
  /// within are left out.
  void ornament(const std::function<void()>& paint);
  /// A bookmark to a place on the current page.
  void bookmark(const std::string& title, double y);
  void newPage();
  int page() const { return page_; }

  void fill(double x, double y, double width, double height, drawing::Colour colour);
  void frame(double x, double y, double width, double height, double line, drawing::Colour colour,
             bool isDashed = false);
  /// A board with two cut corners: the shape that means "not for now".
  void notice(double x, double y, double width, double height, double cut, bool isBlackOnly);
  /// One of the pieces of such a board, one below the other: the first has the cut corners, the last the foot.
  void noticePart(double x, double y, double width, double height, double cut, bool isFirst, bool isLast, bool isBlackOnly);
  void rule(double x, double y, double width, double line, drawing::Colour colour, bool isDashed = false);
  /// A drawing with its left upper corner at x, y; 1 drawing unit is `scale` points.
  void draw(const drawing::Drawing& drawing, const Typesetter& type, double x, double y, double scale);
  /// A PNG fitted into the box; false when it is none.
  bool png(const std::string& bytes, double x, double y, double width, double height);

  /// The bytes of the file as cairo writes it.
  base::Result<std::string> finish();

 private:
  struct SurfaceEnd { void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); } };
  struct CairoEnd { void operator()(cairo_t* cairo) const { cairo_destroy(cairo); } };
  void use(drawing::Colour colour);

  double width_, height_;
  std::unique_ptr<std::string> bytes_;
  std::unique_ptr<cairo_surface_t, SurfaceEnd> surface_;
  std::unique_ptr<cairo_t, CairoEnd> cairo_;
  std::vector<std::string> openTags_;
  std::vector<std::pair<std::string, std::string>> bookmarks_;  ///< title, place
  TagNotes notes_;
  bool isOrnament_ = false;
  int page_ = 1;
};

/// Width of a PNG divided by its height, or 0 when the bytes are none.
double shapeOfPng(const std::string& bytes);

}  // namespace stile::documents
