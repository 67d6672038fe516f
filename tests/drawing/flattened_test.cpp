#include "drawing/flattened.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace stile::drawing;

namespace {

Shape square(double left, double top, double size, Paint paint) {
  return {Polygon{{{left, top}, {left + size, top}, {left + size, top + size}, {left, top + size}}, paint}};
}

std::vector<Path> pathsOf(const std::vector<Shape>& shapes) {
  std::vector<Path> paths;
  for (const Shape& shape : shapes)
    if (const auto* path = std::get_if<Path>(&shape.form)) paths.push_back(*path);
  return paths;
}

/// Twice the area within the steps, holes taken off.
double areaOf(const Path& path) {
  double area = 0;
  Point start, at;
  for (const PathStep& step : path.steps) {
    if (step.kind == PathStep::Kind::Move) {
      start = at = step.to;
      continue;
    }
    const Point to = step.kind == PathStep::Kind::Close ? start : step.to;
    area += at.x * to.y - to.x * at.y;
    at = to;
  }
  return std::abs(area) / 2;
}

double lengthOf(const Path& path) {
  double length = 0;
  Point start, at;
  for (const PathStep& step : path.steps) {
    const Point to = step.kind == PathStep::Kind::Close ? start : step.to;
    if (step.kind == PathStep::Kind::Move) start = to;
    if (step.kind != PathStep::Kind::Move) length += std::hypot(to.x - at.x, to.y - at.y);
    at = to;
  }
  return length;
}

}  // namespace

TEST_CASE("what is hidden whole is gone, and what is hidden in part keeps the rest") {
  const auto paths = pathsOf(
      flattened({square(20, 20, 40, {.fill = Colour::Ink}), square(80, 0, 40, {.fill = Colour::Hatch}),
                 square(0, 0, 100, {.fill = Colour::Open})}));
  REQUIRE(paths.size() == 2);
  for (const Path& path : paths) {
    if (path.paint.fill == Colour::Open) CHECK(areaOf(path) == Approx(10000).epsilon(.01));
    // Half of it shows, and a little more that lies under its neighbour.
    if (path.paint.fill == Colour::Hatch) CHECK(areaOf(path) == Approx(815).margin(30));
    CHECK(path.paint.fill != Colour::Ink);
  }
}

TEST_CASE("areas of one colour become one path, whichever way they turn") {
  Shape turned = square(50, 0, 100, {.fill = Colour::Open});
  std::reverse(std::get<Polygon>(turned.form).points.begin(), std::get<Polygon>(turned.form).points.end());
  const auto paths = pathsOf(flattened({square(0, 0, 100, {.fill = Colour::Open}), turned}));
  REQUIRE(paths.size() == 1);
  CHECK(areaOf(paths[0]) == Approx(15000).epsilon(.01));
}

TEST_CASE("a line ends where something in front covers it, and stays over what lies behind") {
  const Shape line{Line{{0, 5}, {20, 5}, {.stroke = Colour::Ink, .strokeWidth = 1}}};
  const Shape block = square(10, 0, 20, {.fill = Colour::Open});
  const auto length = [](const std::vector<Shape>& shapes) {
    for (const Path& path : pathsOf(flattened(shapes)))
      if (path.paint.stroke == Colour::Ink) return lengthOf(path);
    return 0.0;
  };
  CHECK(length({line, block}) == Approx(10).margin(.6));
  CHECK(length({block, line}) == Approx(20).margin(.01));
}

TEST_CASE("of a closed line that an area follows only the outer half shows, half as wide") {
  Path edge;
  edge.paint = {.stroke = Colour::Ink, .strokeWidth = 2};
  const Point corners[] = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
  for (const Point& corner : corners)
    edge.steps.push_back({edge.steps.empty() ? PathStep::Kind::Move : PathStep::Kind::Line, corner, {}, {}});
  edge.steps.push_back({PathStep::Kind::Close, {}, {}, {}});
  const auto paths = pathsOf(flattened({{edge}, square(0, 0, 10, {.fill = Colour::Open})}));
  REQUIRE(paths.size() == 2);
  CHECK(paths[1].paint.stroke == Colour::Ink);
  CHECK(paths[1].paint.strokeWidth == Approx(1));
  CHECK(lengthOf(paths[1]) == Approx(43).margin(1));
}

TEST_CASE("text ends what is flattened together") {
  const auto shapes = flattened({square(0, 0, 10, {.fill = Colour::Open}),
                                 {TextRun{{1, 5}, "45 cm"}},
                                 square(0, 0, 10, {.fill = Colour::Hatch})});
  REQUIRE(shapes.size() == 3);
  CHECK(std::holds_alternative<TextRun>(shapes[1].form));
}
