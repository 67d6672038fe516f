// Areas as cells of a fine grid: what lies behind what is asked cell by cell, which costs a small part of
// cutting polygons by each other.
#pragma once

#include <cstdint>
#include <vector>

#include "drawing/region.h"

namespace stile::drawing {

/// A grid laid over a part of a drawing. Cells are counted from its top left corner.
struct Grid {
  Grid(const Box& box, double cellsPerUnit);

  double left = 0, top = 0, fineness = 1;  ///< cells per unit
  int columns = 0, rows = 0;               ///< columns: whole words

  /// A place in cells; the middle of the first cell is (.5, .5).
  Point inCells(Point point) const { return {(point.x - left) * fineness, (point.y - top) * fineness}; }
  Point fromCells(Point point) const { return {point.x / fineness + left, point.y / fineness + top}; }
};

/// A rectangle of a grid's cells, each set or not: rows of words, a bit for each cell.
class Stencil {
 public:
  using Word = std::uint64_t;
  static constexpr int kWordSize = 64;

  /// Wide enough for whatever lies in the box; nothing is set.
  Stencil(const Grid& grid, const Box& box);

  /// Sets the cells whose middle the outlines go around, on balance, at least once.
  void fill(const std::vector<Outline>& outlines);
  /// Sets the cells within `radius` units of the line.
  void stroke(const Outline& line, bool isClosed, double radius);
  /// Takes away the cells that touch one that is not set.
  Stencil shrunk() const;

  int firstWord() const { return firstWord_; }  ///< of each row
  int words() const { return words_; }
  int top() const { return top_; }
  int height() const { return height_; }
  const Word* row(int row) const { return cells_.data() + index(row); }

 private:
  std::size_t index(int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(words_);
  }
  /// Sets the cells of a row whose middle lies between the two.
  void set(int row, double from, double to);
  void capsule(Point a, Point b, double radius);
  Point inCells(Point point) const {
    const Point place = grid_.inCells(point);
    return {place.x - firstWord_ * kWordSize, place.y - top_};
  }

  const Grid& grid_;
  int firstWord_ = 0, words_ = 0, top_ = 0, height_ = 0;
  std::vector<Word> cells_;
};

}  // namespace stile::drawing
