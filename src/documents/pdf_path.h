// Vector shapes as the operators of a PDF page. What cairo would write for them, it writes slowly: each
// point is painted twice, and the page is packed twice.
#pragma once

#include <string>

#include "drawing/shape.h"

namespace stile::documents {

/// Writes shapes in drawing units, y downwards. Text is not written: it needs fonts.
class PathWriter {
 public:
  void write(const drawing::Rectangle& form);
  void write(const drawing::Circle& form);
  void write(const drawing::Line& form);
  void write(const drawing::Polygon& form);
  void write(const drawing::Path& form);

  bool isEmpty() const { return out_.empty(); }
  /// What was written since the last call; colours and lines are named anew after it.
  std::string taken();

 private:
  void number(double value);
  void point(drawing::Point point, char step);
  void cubic(drawing::Point a, drawing::Point b, drawing::Point to);
  void colour(drawing::Colour colour, const char* area);
  void line(const drawing::Paint& paint);
  void hatched();
  /// Paints the path that was written from `path_` on.
  void painted(const drawing::Paint& paint);
  void begin();

  std::string out_, path_;
  drawing::Point least_, most_;  ///< of the path
  /// What is in force.
  struct State {
    drawing::Colour fill = drawing::Colour::None, stroke = drawing::Colour::None;
    double width = -1;
    bool isDashed = false, hasRoundEnds = false;
  } state_;
};

}  // namespace stile::documents
