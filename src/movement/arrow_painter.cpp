#include "movement/arrow_painter.h"

#include <cmath>

namespace stile::movement {
namespace {

using drawing::Colour;
using drawing::PathStep;
using drawing::Point;

struct Head {
  drawing::Polygon polygon;
  Point neck;  ///< where the shaft ends
};

Head headAt(Point tip, Point from, double lineWidth) {
  double x = tip.x - from.x, y = tip.y - from.y;
  const double size = std::hypot(x, y);
  if (size < 1e-9) return {{{tip}, {}}, tip};
  x /= size, y /= size;
  const double s = lineWidth * 7.5, w = s * .62;
  return {
      {{tip, {tip.x - x * s - y * w, tip.y - y * s + x * w}, {tip.x - x * s + y * w, tip.y - y * s - x * w}},
       {}},
      {tip.x - x * s * .8, tip.y - y * s * .8}};
}

}  // namespace

std::vector<drawing::Shape> paintArrow(Point from, Point to, double bend, bool isBoth, double lineWidth) {
  const double dx = to.x - from.x, dy = to.y - from.y;
  const Point middle{(from.x + to.x) / 2 + dy * bend, (from.y + to.y) / 2 - dx * bend};
  const Head front = headAt(to, middle, lineWidth), back = headAt(from, middle, lineWidth);
  const Point start = isBoth ? back.neck : from;
  std::vector<drawing::Shape> shapes;
  for (const auto& [extra, colour] :
       {std::pair{3.4, Colour::FigureHalo}, std::pair{0.0, Colour::FigureMark}}) {
    drawing::Path shaft;
    shaft.paint = {.stroke = colour, .strokeWidth = lineWidth * (2.8 + extra), .hasRoundEnds = true};
    shaft.steps = {{PathStep::Kind::Move, start, {}, {}},
                   {PathStep::Kind::Quadratic, front.neck, middle, {}}};
    shapes.push_back({shaft});
    for (const Head* head : {&front, &back}) {
      if (head == &back && !isBoth) continue;
      drawing::Polygon polygon = head->polygon;
      polygon.paint = {
          .fill = colour, .stroke = colour, .strokeWidth = lineWidth * (.8 + extra), .hasRoundEnds = true};
      shapes.push_back({polygon});
    }
  }
  return shapes;
}

}  // namespace stile::movement
