// A picture as cells, laid from the front to the back: each cell keeps the number of the first area that
// covers it. Traced, the areas of one number are outlines again, free of what lies behind other areas.
#pragma once

#include "drawing/stencil.h"

namespace stile::drawing {

class Mosaic {
 public:
  using Number = std::uint8_t;
  static constexpr Number kBare = 0,  ///< nothing yet
      kUnderLine = 1,                 ///< a line will be painted there: any neighbour may reach into it
      kFirst = 2, kLast = 63;         ///< areas

  explicit Mosaic(const Grid& grid);

  const Grid& grid() const { return grid_; }
  /// Gives the stencil's cells the number where nothing lies in front; true when there were any.
  bool lay(const Stencil& stencil, Number number);
  /// Hides lines laid later where the stencil's cells are.
  void hideLines(const Stencil& stencil);
  /// True when something laid before covers a cell of the stencil.
  bool isCovered(const Stencil& stencil) const;
  bool hidesLinesAt(Point point) const;
  /// Lets areas reach under the lines beside them.
  void closeUnderLines();
  /// The outlines of the areas, by number from kFirst on. They turn one way around an area and the other way
  /// around its holes. Where another area lies beside it, an area reaches a cell or so under that.
  std::vector<std::vector<Outline>> traced();

 private:
  Number at(int column, int row) const {
    const bool isInside = column >= 0 && row >= 0 && column < grid_.columns && row < grid_.rows;
    return isInside ? numbers_[index(column, row)] : kBare;
  }
  std::size_t index(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(grid_.columns) +
           static_cast<std::size_t>(column);
  }
  Outline follow(int column, int row);
  Outline smooth(const std::vector<Point>& edges, const std::vector<Point>& reaches) const;
  /// Calls `act` with each word of the stencil and the place of its first cell.
  template <class Act>
  void forEachWord(const Stencil& stencil, const Act& act) const;

  Grid grid_;
  std::vector<Number> numbers_;                                     ///< of each cell
  std::vector<Stencil::Word> isCovered_, hidesLines_, isFollowed_;  ///< a bit for each cell
};

}  // namespace stile::drawing
