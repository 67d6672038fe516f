#include "drawing/stencil.h"

#include <algorithm>
#include <cmath>

namespace stile::drawing {
namespace {

/// Where an outline crosses the middle of a row of cells, and whether it goes down or up there.
struct Crossing {
  double x;
  int turn;
};

int firstMiddleFrom(double place) {
  return static_cast<int>(std::ceil(place - .5));
}

}  // namespace

Grid::Grid(const Box& box, double cellsPerUnit) : left(box.left), top(box.top), fineness(cellsPerUnit) {
  if (box.isEmpty()) return;
  const int wide = static_cast<int>(std::ceil(box.width() * fineness)) + 1;
  columns = (wide + Stencil::kWordSize - 1) / Stencil::kWordSize * Stencil::kWordSize;
  rows = static_cast<int>(std::ceil(box.height() * fineness)) + 1;
}

Stencil::Stencil(const Grid& grid, const Box& box) : grid_(grid) {
  if (box.isEmpty()) return;
  const Point low = grid.inCells({box.left, box.top}), high = grid.inCells({box.right, box.bottom});
  const int left = std::clamp(static_cast<int>(std::floor(low.x)) - 1, 0, grid.columns),
            right = std::clamp(static_cast<int>(std::ceil(high.x)) + 1, left, grid.columns);
  firstWord_ = left / kWordSize;
  words_ = (right + kWordSize - 1) / kWordSize - firstWord_;
  top_ = std::clamp(static_cast<int>(std::floor(low.y)) - 1, 0, grid.rows);
  height_ = std::clamp(static_cast<int>(std::ceil(high.y)) + 1, top_, grid.rows) - top_;
  cells_.assign(index(height_), 0);
}

void Stencil::set(int row, double from, double to) {
  const int first = std::max(0, firstMiddleFrom(from)),
            last = std::min(words_ * kWordSize, firstMiddleFrom(to));
  if (first >= last) return;
  Word* const cells = cells_.data() + index(row);
  const int firstWord = first / kWordSize, lastWord = (last - 1) / kWordSize;
  const Word fromFirst = ~Word{0} << (first % kWordSize),
             toLast = ~Word{0} >> (kWordSize - 1 - (last - 1) % kWordSize);
  if (firstWord == lastWord) {
    cells[firstWord] |= fromFirst & toLast;
    return;
  }
  cells[firstWord] |= fromFirst;
  for (int word = firstWord + 1; word < lastWord; ++word) cells[word] = ~Word{0};
  cells[lastWord] |= toLast;
}

void Stencil::fill(const std::vector<Outline>& outlines) {
  struct Edge {
    Point from;
    double slope;  // columns per row
    int first, last, turn;
  };
  std::vector<Edge> edges;
  std::vector<std::size_t> ends(static_cast<std::size_t>(height_) + 1,
                                0);  // per row, where its crossings end
  for (const Outline& outline : outlines)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      Point a = inCells(outline[i]), b = inCells(outline[i + 1 < outline.size() ? i + 1 : 0]);
      const int turn = a.y < b.y ? 1 : -1;
      if (a.y > b.y) std::swap(a, b);
      const int first = std::max(0, firstMiddleFrom(a.y)), last = std::min(height_, firstMiddleFrom(b.y));
      if (first >= last) continue;
      edges.push_back({a, (b.x - a.x) / (b.y - a.y), first, last, turn});
      for (int row = first; row < last; ++row) ++ends[static_cast<std::size_t>(row) + 1];
    }
  for (std::size_t row = 1; row < ends.size(); ++row) ends[row] += ends[row - 1];
  std::vector<Crossing> crossings(ends.back());
  std::vector<std::size_t> next(ends.begin(), ends.end() - 1);
  for (const Edge& edge : edges)
    for (int row = edge.first; row < edge.last; ++row)
      crossings[next[static_cast<std::size_t>(row)]++] = {edge.from.x + (row + .5 - edge.from.y) * edge.slope,
                                                          edge.turn};
  for (int row = 0; row < height_; ++row) {
    const auto from = crossings.begin() + static_cast<std::ptrdiff_t>(ends[static_cast<std::size_t>(row)]),
               to = crossings.begin() + static_cast<std::ptrdiff_t>(ends[static_cast<std::size_t>(row) + 1]);
    for (auto each = from; each != to; ++each)  // few, and mostly in order
      for (auto at = each; at != from && at->x < (at - 1)->x; --at) std::swap(*at, *(at - 1));
    int around = 0;
    double start = 0;
    for (auto crossing = from; crossing != to; ++crossing) {
      if (around == 0) start = crossing->x;
      around += crossing->turn;
      if (around == 0) set(row, start, crossing->x);
    }
  }
}

void Stencil::capsule(Point a, Point b, double radius) {
  if (a.y > b.y) std::swap(a, b);
  const int first = std::max(0, firstMiddleFrom(a.y - radius)),
            last = std::min(height_, firstMiddleFrom(b.y + radius));
  const double size = std::hypot(b.x - a.x, b.y - a.y);
  // The two long sides lie `radius` to the left and to the right.
  const Point off = size > 0 ? Point{(b.y - a.y) / size * radius, (a.x - b.x) / size * radius} : Point{};
  const double slope = b.y > a.y ? (b.x - a.x) / (b.y - a.y) : 0;
  for (int row = first; row < last; ++row) {
    const double y = row + .5;
    double low = 1e9, high = -1e9;
    for (const Point& end : {a, b}) {
      const double left = radius * radius - (y - end.y) * (y - end.y);
      if (left < 0) continue;
      low = std::min(low, end.x - std::sqrt(left)), high = std::max(high, end.x + std::sqrt(left));
    }
    for (const double side : {1.0, -1.0}) {
      const Point from{a.x + side * off.x, a.y + side * off.y};
      if (y < from.y || y > b.y + side * off.y || b.y <= a.y) continue;
      const double x = from.x + (y - from.y) * slope;
      low = std::min(low, x), high = std::max(high, x);
    }
    set(row, low, high);
  }
}

void Stencil::stroke(const Outline& line, bool isClosed, double radius) {
  if (line.empty()) return;
  const double cells = radius * grid_.fineness;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) capsule(inCells(line[i]), inCells(line[i + 1]), cells);
  if (isClosed) capsule(inCells(line.back()), inCells(line.front()), cells);
}

Stencil Stencil::shrunk() const {
  Stencil smaller = *this;
  for (int row = 0; row < height_; ++row) {
    const bool isEdge = row == 0 || row + 1 == height_;
    const Word* const here = this->row(row);
    Word* const to = smaller.cells_.data() + index(row);
    for (int i = 0; i < words_; ++i) {
      const Word before = i > 0 ? here[i - 1] : 0, after = i + 1 < words_ ? here[i + 1] : 0;
      const Word beside =
          (here[i] << 1 | before >> (kWordSize - 1)) & (here[i] >> 1 | after << (kWordSize - 1));
      to[i] = isEdge ? 0 : here[i] & beside & here[i - words_] & here[i + words_];
    }
  }
  return smaller;
}

}  // namespace stile::drawing
