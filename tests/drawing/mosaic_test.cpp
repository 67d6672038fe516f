#include "drawing/mosaic.h"

#include <algorithm>
#include <bit>
#include <catch2/catch.hpp>
#include <cmath>

#include "square.h"

using namespace stile::drawing;

namespace {

Grid gridOver(double size) {
  Box box;
  box.take({squareAt(0, 0, size)}, 2);
  return Grid(box, 3);
}

Stencil areaOf(const Grid& grid, const std::vector<Outline>& outlines) {
  Box box;
  box.take(outlines);
  Stencil stencil(grid, box);
  stencil.fill(outlines);
  return stencil;
}

int cellsIn(const Stencil& stencil) {
  int count = 0;
  for (int row = 0; row < stencil.height(); ++row)
    for (int word = 0; word < stencil.words(); ++word) count += std::popcount(stencil.row(row)[word]);
  return count;
}

double areaWithin(const Outline& outline) {
  double area = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point &a = outline[i], &b = outline[(i + 1) % outline.size()];
    area += (a.x * b.y - b.x * a.y) / 2;
  }
  return area;
}

}  // namespace

TEST_CASE("a stencil sets the cells within outlines, holes left out, across words") {
  const Grid grid = gridOver(60);
  CHECK(cellsIn(areaOf(grid, {squareAt(5, 5, 50)})) == 150 * 150);
  Outline hole = squareAt(20, 20, 10);
  std::reverse(hole.begin(), hole.end());
  CHECK(cellsIn(areaOf(grid, {squareAt(5, 5, 50), hole})) == 150 * 150 - 30 * 30);
  // What two outlines that turn the same way share is covered once.
  CHECK(cellsIn(areaOf(grid, {squareAt(5, 5, 20), squareAt(15, 5, 20)})) == 90 * 60);
  CHECK(cellsIn(areaOf(grid, {squareAt(5, 5, 50)}).shrunk()) == 148 * 148);
}

TEST_CASE("a stroke is as wide as it says, with round ends") {
  const Grid grid = gridOver(60);
  const Outline line{{10, 10}, {40, 30}};
  Box box;
  box.take({line}, 4);
  Stencil stencil(grid, box);
  stencil.stroke(line, false, 3);
  const double expected = std::hypot(30, 20) * 6 + 3.14159 * 9;
  CHECK(cellsIn(stencil) == Approx(expected * 9).epsilon(.02));
}

TEST_CASE("of what lies over each other the first keeps its cells, and traced outlines have its measure") {
  const Grid grid = gridOver(60);
  Mosaic mosaic(grid);
  CHECK(mosaic.lay(areaOf(grid, {squareAt(20, 20, 10)}), Mosaic::kFirst));
  CHECK(mosaic.lay(areaOf(grid, {squareAt(5, 5, 50)}), Mosaic::kFirst + 1));
  CHECK_FALSE(mosaic.lay(areaOf(grid, {squareAt(22, 22, 5)}), Mosaic::kFirst + 2));
  const auto areas = mosaic.traced();
  REQUIRE(areas.size() == 2);
  REQUIRE(areas[0].size() == 1);
  CHECK(areaWithin(areas[0][0]) == Approx(100).epsilon(.03));
  REQUIRE(areas[1].size() == 2);  // the hole reaches under what lies in it, and turns the other way
  CHECK(areaWithin(areas[1][0]) * areaWithin(areas[1][1]) < 0);
  CHECK(areaWithin(areas[1][0]) == Approx(2500).epsilon(.01));
  CHECK(std::abs(areaWithin(areas[1][1])) < 97);
}

TEST_CASE("a place under a line is given to an area beside it, and lines end where they are hidden") {
  const Grid grid = gridOver(60);
  Mosaic mosaic(grid);
  mosaic.lay(areaOf(grid, {squareAt(20, 5, 1)}), Mosaic::kUnderLine);
  mosaic.lay(areaOf(grid, {squareAt(10, 5, 10)}), Mosaic::kFirst);
  mosaic.closeUnderLines();
  const auto areas = mosaic.traced();
  REQUIRE(areas.size() == 1);
  CHECK(areaWithin(areas[0].at(0)) == Approx(101).margin(2));
  mosaic.hideLines(areaOf(grid, {squareAt(10, 5, 10)}));
  CHECK(mosaic.hidesLinesAt({15, 10}));
  CHECK_FALSE(mosaic.hidesLinesAt({25, 10}));
  CHECK_FALSE(mosaic.hidesLinesAt({-500, 10}));
}
