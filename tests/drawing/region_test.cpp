#include "drawing/region.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "square.h"

using namespace stile::drawing;

namespace {

double areaOf(const Region& region) {
  double twice = 0;
  for (const Outline& outline : region.outlines)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Point &a = outline[i], &b = outline[(i + 1) % outline.size()];
      twice += a.x * b.y - b.x * a.y;
    }
  return std::abs(twice) / 2;
}

}  // namespace

TEST_CASE("The hull of points is convex and leaves none outside") {
  const Outline hull = hullOf({{0, 0}, {4, 0}, {4, 4}, {0, 4}, {2, 2}, {1, 3}, {4, 2}});
  CHECK(hull.size() == 4);
  CHECK(areaOf(Region{{hull}}) == Approx(16));
  CHECK(hullOf({{1, 1}, {1, 1}}).size() == 1);
}

TEST_CASE("Regions join, cut and clip") {
  const Region a = unionOf({squareAt(0, 0, 10)}), b = unionOf({squareAt(5, 0, 10)});
  CHECK(areaOf(unionOf({squareAt(0, 0, 10), squareAt(5, 0, 10)})) == Approx(150));
  CHECK(areaOf(intersectionOf(a, b)) == Approx(50));
  CHECK(areaOf(differenceOf(a, b)) == Approx(50));
  CHECK(intersectionOf(a, unionOf({squareAt(20, 20, 1)})).isEmpty());
  CHECK(areaOf(grown(a, 1)) == Approx(100 + 40 + std::numbers::pi).margin(.2));
  // Outlines that turn opposite ways still add up.
  CHECK(areaOf(unionOf({{{0, 0}, {0, 10}, {10, 10}, {10, 0}}, squareAt(5, 0, 10)})) == Approx(150));
  const auto lines = clippedLine({{-5, 5}, {25, 5}}, a);
  REQUIRE(lines.size() == 1);
  CHECK(std::abs(lines[0].back().x - lines[0].front().x) == Approx(10));
}

TEST_CASE("A simplified region stays within the tolerance") {
  Outline circle;
  for (int i = 0; i < 200; ++i) {
    const double t = 2 * std::numbers::pi * i / 200;
    circle.push_back({50 * std::cos(t), 50 * std::sin(t)});
  }
  const Region whole{{circle}}, fewer = simplified(whole, .1);
  CHECK(fewer.outlines.front().size() < 70);
  for (const Point& point : fewer.outlines.front())
    CHECK(std::hypot(point.x, point.y) == Approx(50).margin(.001));
  CHECK(areaOf(fewer) > areaOf(whole) * .995);
}
