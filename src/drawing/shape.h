// Vector shapes as plain data. Makers (the decision drawing, exercise figures) build them without
// knowing who paints; painters (the SVG writer, a panel on the screen) know nothing of their meaning.
//
// Measures are in units of 1/96 inch on paper and device-independent pixels on a screen; y grows
// downwards. Shapes are painted in order.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "drawing/colour.h"

namespace stile::drawing {

struct Point {
  double x = 0, y = 0;
  bool operator==(const Point&) const = default;
};

/// How an area and its edge are painted. A hatched area stands on Colour::HatchGround.
struct Paint {
  Colour fill = Colour::None;
  bool isHatched = false;
  Colour stroke = Colour::None;
  double strokeWidth = 1;
  bool isDashed = false;
  bool hasRoundEnds = false;
  bool operator==(const Paint&) const = default;
};

struct Rectangle {
  double x = 0, y = 0, width = 0, height = 0;
  Paint paint;
  bool operator==(const Rectangle&) const = default;
};

struct Circle {
  Point centre;
  double radius = 0;
  Paint paint;
  bool operator==(const Circle&) const = default;
};

struct Line {
  Point from, to;
  Paint paint;
  bool operator==(const Line&) const = default;
};

struct Polygon {
  std::vector<Point> points;
  Paint paint;
  bool operator==(const Polygon&) const = default;
};

/// One step of a path. Line and Move use `to`; Quadratic also `control1`; Cubic both controls.
struct PathStep {
  enum class Kind { Move, Line, Quadratic, Cubic, Close } kind = Kind::Move;
  Point to, control1, control2;
  bool operator==(const PathStep&) const = default;
};

struct Path {
  std::vector<PathStep> steps;
  Paint paint;
  bool operator==(const Path&) const = default;
};

enum class Align { Start, Middle, End };

/// One line of text; `at` is on its base line.
struct TextRun {
  Point at;
  std::string text;
  double size = 16;
  bool isBold = false;
  Align align = Align::Start;
  Colour colour = Colour::Ink;
  bool operator==(const TextRun&) const = default;
};

struct Shape;

/// Shapes that belong together, under an id that hit tests and tests can name.
struct Group {
  std::string id;
  std::vector<Shape> shapes;
  bool operator==(const Group&) const = default;
};

struct Shape {
  std::variant<Rectangle, Circle, Line, Polygon, Path, TextRun, Group> form;
  bool operator==(const Shape&) const = default;
};

/// A whole picture. `title` and `description` say in words what it shows.
struct Drawing {
  double width = 0, height = 0;
  std::string title;
  std::string description;
  std::vector<Shape> shapes;
  bool operator==(const Drawing&) const = default;
};

/// Every line of text in the order of painting, groups opened.
std::vector<TextRun> textRunsOf(const Drawing& drawing);
/// The group of that id, wherever it stands; nullptr when there is none.
const Group* findGroup(const Drawing& drawing, const std::string& id);

}  // namespace stile::drawing
