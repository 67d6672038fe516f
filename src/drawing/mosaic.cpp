#include "drawing/mosaic.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstring>

namespace stile::drawing {
namespace {

using Word = Stencil::Word;
constexpr std::size_t kWordSize = Stencil::kWordSize;
constexpr std::size_t kNear = 2;  // edges before and behind one that smooth it
constexpr double kReach = 1.2;    // cells by which an area reaches under its neighbours

bool isSet(const std::vector<Word>& bits, std::size_t cell) {
  return (bits[cell / kWordSize] >> (cell % kWordSize) & 1) != 0;
}
bool isStraight(Point a, Point b, Point c) {
  return std::abs((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x)) < 1e-9;
}
void setBit(std::vector<Word>& bits, std::size_t cell) {
  bits[cell / kWordSize] |= Word{1} << (cell % kWordSize);
}

}  // namespace

Mosaic::Mosaic(const Grid& grid)
    : grid_(grid),
      numbers_(static_cast<std::size_t>(grid.columns) * static_cast<std::size_t>(grid.rows), kBare),
      isCovered_(numbers_.size() / kWordSize, 0),
      hidesLines_(isCovered_),
      isFollowed_(isCovered_) {}

template <class Act>
void Mosaic::forEachWord(const Stencil& stencil, const Act& act) const {
  for (int row = 0; row < stencil.height(); ++row) {
    const Word* const words = stencil.row(row);
    const std::size_t first = index(stencil.firstWord() * Stencil::kWordSize, stencil.top() + row);
    for (int i = 0; i < stencil.words(); ++i)
      if (words[i] != 0) act(words[i], first + static_cast<std::size_t>(i) * kWordSize);
  }
}

bool Mosaic::lay(const Stencil& stencil, Number number) {
  bool isSeen = false;
  forEachWord(stencil, [&](Word cells, std::size_t first) {
    Word& covered = isCovered_[first / kWordSize];
    Word open = cells & ~covered;
    covered |= cells;
    isSeen = isSeen || open != 0;
    while (open != 0) {
      const int start = std::countr_zero(open), size = std::countr_one(open >> start);
      std::fill_n(numbers_.data() + first + start, size, number);
      open = start + size == Stencil::kWordSize ? 0 : open >> (start + size) << (start + size);
    }
  });
  return isSeen;
}

void Mosaic::hideLines(const Stencil& stencil) {
  forEachWord(stencil, [&](Word cells, std::size_t first) { hidesLines_[first / kWordSize] |= cells; });
}

bool Mosaic::isCovered(const Stencil& stencil) const {
  bool isAny = false;
  forEachWord(stencil, [&](Word cells, std::size_t first) {
    isAny = isAny || (isCovered_[first / kWordSize] & cells) != 0;
  });
  return isAny;
}

bool Mosaic::hidesLinesAt(Point point) const {
  const Point place = grid_.inCells(point);
  if (!(place.x >= 0 && place.y >= 0)) return false;
  const int column = static_cast<int>(place.x), row = static_cast<int>(place.y);
  return column < grid_.columns && row < grid_.rows && isSet(hidesLines_, index(column, row));
}

void Mosaic::closeUnderLines() {
  const auto take = [this](std::size_t cell, std::size_t beside, std::size_t aboveOrBelow) {
    for (const std::size_t from : {beside, aboveOrBelow})
      // What would lie before the first cell is a very great number, too.
      if (from < numbers_.size() && numbers_[from] >= kFirst) {
        numbers_[cell] = numbers_[from];
        return true;
      }
    return false;
  };
  const auto width = static_cast<std::size_t>(grid_.columns);
  std::vector<std::size_t> left;
  const Number* const first = numbers_.data();
  const Number* const end = first + numbers_.size();
  for (const Number* at = first; at != end; ++at) {
    at = static_cast<const Number*>(std::memchr(at, kUnderLine, static_cast<std::size_t>(end - at)));
    if (at == nullptr) break;
    const auto cell = static_cast<std::size_t>(at - first);
    if (!take(cell, cell - 1, cell - width)) left.push_back(cell);
  }
  for (auto cell = left.rbegin(); cell != left.rend(); ++cell) take(*cell, *cell + 1, *cell + width);
}

std::vector<std::vector<Outline>> Mosaic::traced() {
  std::vector<std::vector<Outline>> areas;
  const auto eightAt = [this](std::size_t cell) {
    std::uint64_t eight = 0;
    std::memcpy(&eight, numbers_.data() + cell, 8);
    return eight;
  };
  for (int row = 0; row < grid_.rows; ++row)
    for (int column = 1; column < grid_.columns; ++column) {
      const std::size_t cell = index(column, row);
      // Most cells are like those beside them: eight at a time.
      if (column + 8 <= grid_.columns && eightAt(cell) == eightAt(cell - 1)) {
        column += 7;
        continue;
      }
      const Number number = numbers_[cell];
      if (number == numbers_[cell - 1] || number < kFirst || isSet(isFollowed_, cell)) continue;
      const std::size_t area = static_cast<std::size_t>(number) - kFirst;
      if (area >= areas.size()) areas.resize(area + 1);
      areas[area].push_back(follow(column, row));
    }
  return areas;
}

/// Walks around the area along the edges of its cells, keeping it on the right, from the left edge of a cell
/// until that is reached again.
Outline Mosaic::follow(int column, int row) {
  const Number number = at(column, row);
  // Upward, to the right, downward, to the left.
  constexpr int kAcross[] = {0, 1, 0, -1}, kDown[] = {-1, 0, 1, 0};
  std::vector<Point> edges, reaches;
  int x = column, y = row + 1, way = 0;
  do {
    const int right = (way + 1) % 4;
    // The cell on the right of the edge ahead; beyond the edge lies the one on the left.
    const auto ahead = [&](int& cellX, int& cellY) {
      cellX = x + (kAcross[way] + kAcross[right] - 1) / 2, cellY = y + (kDown[way] + kDown[right] - 1) / 2;
    };
    int cellX = 0, cellY = 0;
    ahead(cellX, cellY);
    if (way == 0) setBit(isFollowed_, index(cellX, cellY));
    edges.push_back({x + kAcross[way] * .5, y + kDown[way] * .5});
    // Only under what is painted later: the smaller the number, the nearer.
    const Number beside = at(cellX - kAcross[right], cellY - kDown[right]);
    const double reach = beside != kBare && beside < number ? kReach : 0;
    reaches.push_back({-kAcross[right] * reach, -kDown[right] * reach});
    x += kAcross[way], y += kDown[way];
    ahead(cellX, cellY);
    if (at(cellX, cellY) != number)
      way = right;
    else if (at(cellX - kAcross[right], cellY - kDown[right]) == number)
      way = (way + 3) % 4;
  } while (x != column || y != row + 1 || way != 0);
  return smooth(edges, reaches);
}

/// The middles of a few edges at a time, moved out by what these edges reach: steps become slopes.
Outline Mosaic::smooth(const std::vector<Point>& edges, const std::vector<Point>& reaches) const {
  const std::size_t count = edges.size();
  Outline outline;
  if (count < 2 * kNear + 2) return outline;
  Point sum;  // of the edges within kNear of the one at hand
  const auto add = [&](std::size_t edge, double sign) {
    sum.x += sign * (edges[edge % count].x + reaches[edge % count].x);
    sum.y += sign * (edges[edge % count].y + reaches[edge % count].y);
  };
  for (std::size_t i = count - kNear; i < count + kNear; ++i) add(i, 1);
  for (std::size_t i = 0; i < count; ++i) {
    add(i + kNear, 1);
    const Point point{sum.x / (2 * kNear + 1), sum.y / (2 * kNear + 1)};
    // Of straight runs the ends are enough.
    const std::size_t size = outline.size();
    if (size > 1 && isStraight(outline[size - 2], outline[size - 1], point)) outline.pop_back();
    outline.push_back(point);
    add(i + count - kNear, -1);
  }
  for (Point& point : outline) point = grid_.fromCells(point);
  return outline;
}

}  // namespace stile::drawing
