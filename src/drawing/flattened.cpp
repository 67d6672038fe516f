// From the front to the back: each shape keeps what nothing before it covers. Areas come out free of
// overlaps, so all of one colour can be one path; lines are painted over them, cut where something in front
// hides them.
#include "drawing/flattened.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <type_traits>

#include "drawing/region.h"

namespace stile::drawing {
namespace {

constexpr double kAreaTolerance = .40;  ///< units an area's edge may be off: it lies under a line
constexpr double kLineTolerance = .22;
constexpr double kOverlap =
    .35;  ///< units by which areas reach under their neighbours, so that no seam shows
constexpr double kShrink =
    .35;  ///< what hides a line is that much smaller, so that a line along its edge is not torn
constexpr double kRibbon = .4;  ///< of its width, how far another line runs under a line
constexpr double kEdge =
    .2;  ///< of its width, how far beyond its edge a shape with a line hides a line along that edge
constexpr int kCorners = 20;  ///< of a circle
constexpr int kCurveSteps = 6;

struct Box {
  double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
  bool meets(const Box& other) const {
    return left <= other.right && other.left <= right && top <= other.bottom && other.top <= bottom;
  }
};

Box boxOf(const std::vector<Outline>& outlines, double margin = 0) {
  Box box;
  for (const Outline& outline : outlines)
    for (const Point& point : outline) {
      box.left = std::min(box.left, point.x - margin), box.right = std::max(box.right, point.x + margin);
      box.top = std::min(box.top, point.y - margin), box.bottom = std::max(box.bottom, point.y + margin);
    }
  return box;
}

/// A shape as straight outlines.
struct Plain {
  std::vector<Outline> outlines;
  bool isClosed = false;
  Paint paint;
  const Circle* circle = nullptr;  ///< what it was, when it was one
};

Point between(Point a, Point b, double t) {
  return {a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
}

Plain plainOf(const Path& path) {
  Plain plain{{}, false, path.paint};
  for (const PathStep& step : path.steps) {
    if (step.kind == PathStep::Kind::Close) {
      plain.isClosed = true;
      continue;
    }
    if (step.kind == PathStep::Kind::Move) plain.outlines.emplace_back();
    Outline& outline = plain.outlines.back();
    const bool isCubic = step.kind == PathStep::Kind::Cubic;
    if (isCubic || step.kind == PathStep::Kind::Quadratic) {
      const Point from = outline.back(), control = step.control1;
      const Point second = isCubic ? step.control2 : control;
      for (int i = 1; i < kCurveSteps; ++i) {
        const double t = static_cast<double>(i) / kCurveSteps;
        const Point a = between(from, control, t), c = between(second, step.to, t);
        const Point b = isCubic ? between(control, second, t) : c;
        const Point ab = between(a, b, t);
        outline.push_back(isCubic ? between(ab, between(b, c, t), t) : between(a, c, t));
      }
    }
    outline.push_back(step.to);
  }
  plain.isClosed = plain.isClosed || path.paint.fill != Colour::None;
  return plain;
}

Plain plainOf(const Polygon& polygon) {
  return {{polygon.points}, true, polygon.paint};
}
Plain plainOf(const Line& line) {
  return {{{line.from, line.to}}, false, line.paint};
}
Plain plainOf(const Rectangle& form) {
  return {{{{form.x, form.y},
            {form.x + form.width, form.y},
            {form.x + form.width, form.y + form.height},
            {form.x, form.y + form.height}}},
          true,
          form.paint};
}
Plain plainOf(const Circle& circle) {
  Plain plain{{{}}, true, circle.paint, &circle};
  for (int i = 0; i < kCorners; ++i) {
    const double t = 2 * std::numbers::pi * i / kCorners;
    plain.outlines[0].push_back(
        {circle.centre.x + circle.radius * std::cos(t), circle.centre.y + circle.radius * std::sin(t)});
  }
  return plain;
}

/// Cuts `length` off the end of an open line.
void shorten(Outline& line, double length) {
  while (line.size() > 1) {
    const Point last = line.back(), before = line[line.size() - 2];
    const double size = std::hypot(last.x - before.x, last.y - before.y);
    if (size > length) {
      line.back() = between(last, before, length / size);
      return;
    }
    length -= size;
    line.pop_back();
  }
}

bool isSame(Point a, Point b) {
  return std::hypot(a.x - b.x, a.y - b.y) < .003;
}

/// What lies outside of a ring's line, the two pieces that meet where the ring begins joined again.
std::vector<Outline> ringOutside(const Outline& ring, const Region& hidden) {
  std::vector<Outline> pieces = lineOutside(ring, hidden);
  const Point seam = ring.front();
  const auto end = [&](Outline& piece) {
    if (isSame(piece.front(), seam)) std::reverse(piece.begin(), piece.end());
    return isSame(piece.back(), seam);
  };
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (!end(pieces[i]) || isSame(pieces[i].front(), seam)) continue;
    for (std::size_t k = i + 1; k < pieces.size(); ++k) {
      if (!end(pieces[k])) continue;
      pieces[i].insert(pieces[i].end(), pieces[k].rbegin() + 1, pieces[k].rend());
      pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(k));
      return pieces;
    }
  }
  return pieces;
}

/// The round end of a line that was cut shall not stand out over what cuts it. Ends that the line had before
/// stay.
void trim(Outline& seen, const Outline& whole, bool isRing, double length) {
  const auto isOwnEnd = [&](Point end) {
    return !isRing && (isSame(end, whole.front()) || isSame(end, whole.back()));
  };
  if (isRing && isSame(seen.front(), seen.back())) return;  // nothing cut it
  const bool keepsFront = isOwnEnd(seen.front());
  if (!isOwnEnd(seen.back())) shorten(seen, length);
  std::reverse(seen.begin(), seen.end());
  if (!keepsFront) shorten(seen, length);
}

class Flattener {
 public:
  void take(Plain plain) { shapes_.push_back(std::move(plain)); }

  /// What was taken, flattened; then there is nothing left.
  std::vector<Shape> give() {
    for (auto shape = shapes_.rbegin(); shape != shapes_.rend(); ++shape) see(*shape);
    std::vector<Shape> result;
    for (auto area = areas_.rbegin(); area != areas_.rend(); ++area) {
      Region joined;
      for (Outline& outline : unionOfRegions(area->regions).outlines) {
        const Box box = boxOf({outline});
        const double size = std::min(box.right - box.left, box.bottom - box.top);
        const Region fewer = simplified({{outline}}, std::min(kAreaTolerance, size * .04));
        joined.outlines.insert(joined.outlines.end(), fewer.outlines.begin(), fewer.outlines.end());
      }
      if (!joined.isEmpty()) result.push_back({pathOf(joined, {.fill = area->colour})});
    }
    for (auto circle = circles_.rbegin(); circle != circles_.rend(); ++circle) result.push_back({*circle});
    for (auto kind = lines_.rbegin(); kind != lines_.rend(); ++kind) result.push_back({lines(*kind)});
    *this = {};
    return result;
  }

 private:
  struct Covered {
    Box box;
    Region region, ofLines;  ///< what it hides of areas and of lines
  };
  struct Areas {
    Colour colour = Colour::None;
    std::vector<Region> regions;
  };
  struct Lines {
    Paint paint;
    std::vector<Outline> lines;
  };

  /// Everything in front that may cover something in the box, as one region without contradictions of
  /// turning.
  Region coveredIn(const Box& box, Region Covered::*what) const {
    Region all;
    for (const Covered& one : covered_) {
      const auto& outlines = (one.*what).outlines;
      if (one.box.meets(box)) all.outlines.insert(all.outlines.end(), outlines.begin(), outlines.end());
    }
    return all;
  }

  void cover(Region region, Region ofLines) {
    if (region.isEmpty()) return;
    const Box box = boxOf(region.outlines);
    covered_.push_back({box, std::move(region), std::move(ofLines)});
  }

  /// Outlines of a region turn one way around areas and the other way around holes; a lone one may turn
  /// either way.
  static Region regionOf(const Plain& plain) {
    return plain.outlines.size() == 1 ? unionOf(plain.outlines) : Region{plain.outlines};
  }

  static Region unionOfRegions(const std::vector<Region>& regions) {
    Region all;
    for (const Region& region : regions)
      all.outlines.insert(all.outlines.end(), region.outlines.begin(), region.outlines.end());
    return differenceOf(all, {});
  }

  void see(const Plain& plain) {
    const Paint& paint = plain.paint;
    const bool hasArea = paint.fill != Colour::None, hasLine = paint.stroke != Colour::None;
    const double half = hasLine ? paint.strokeWidth / 2 : 0;
    if (!plain.isClosed) {
      if (hasLine) seeLines(plain.outlines, paint, paint.strokeWidth, false);
      return;
    }
    const Region region = regionOf(plain);
    if (plain.circle != nullptr && !hasArea) return seeLines(plain.outlines, paint, paint.strokeWidth, true);
    if (plain.circle != nullptr && coveredIn(boxOf(plain.outlines, half), &Covered::region).isEmpty()) {
      circles_.push_back(*plain.circle);
      return cover(grown(region, half), region);
    }
    if (hasArea && !hasLine) return seeArea(region, paint.fill);
    if (hasArea && paint.fill == paint.stroke) return seeArea(grown(region, half), paint.fill);
    if (hasArea) {
      seeLines(plain.outlines, paint, paint.strokeWidth, true);
      seeArea(region, paint.fill);
      return cover(grown(region, half), grown(region, kEdge * paint.strokeWidth));
    }
    if (!hasLine) return;
    seeLines(grown(region, half / 2).outlines, paint, half, true);
    cover(grown(region, half), grown(region, kRibbon * half));
  }

  void seeArea(const Region& region, Colour colour) {
    const Region seen = differenceOf(region, coveredIn(boxOf(region.outlines), &Covered::region));
    cover(region, grown(region, -kShrink));
    if (seen.isEmpty()) return;
    auto at =
        std::find_if(areas_.begin(), areas_.end(), [&](const Areas& each) { return each.colour == colour; });
    if (at == areas_.end()) at = areas_.insert(areas_.end(), {colour, {}});
    at->regions.push_back(intersectionOf(grown(seen, kOverlap), region));
  }

  void seeLines(std::vector<Outline> outlines, const Paint& paint, double width, bool isClosed) {
    if (paint.stroke == Colour::None) return;
    const Region hidden = coveredIn(boxOf(outlines, width), &Covered::ofLines);
    Paint line{
        .stroke = paint.stroke, .strokeWidth = width, .isDashed = paint.isDashed, .hasRoundEnds = true};
    auto at = std::find_if(lines_.begin(), lines_.end(), [&](const Lines& each) {
      return each.paint.stroke == line.stroke && std::abs(each.paint.strokeWidth - width) < .005 &&
             each.paint.isDashed == line.isDashed;
    });
    if (at == lines_.end()) at = lines_.insert(lines_.end(), {line, {}});
    for (Outline& outline : outlines) {
      if (isClosed && !outline.empty()) outline.push_back(outline.front());
      if (outline.size() < 2) continue;
      for (Outline& seen : isClosed ? ringOutside(outline, hidden) : lineOutside(outline, hidden)) {
        trim(seen, outline, isClosed, width / 2);
        if (seen.size() > 1) at->lines.push_back(simplifiedLine(seen, kLineTolerance));
      }
    }
  }

  static Path lines(const Lines& kind) {
    Path path;
    path.paint = kind.paint;
    for (const Outline& line : kind.lines) {
      const bool isRing = line.size() > 3 && line.front() == line.back();
      for (std::size_t i = 0; i + (isRing ? 1 : 0) < line.size(); ++i)
        path.steps.push_back({i == 0 ? PathStep::Kind::Move : PathStep::Kind::Line, line[i], {}, {}});
      if (isRing) path.steps.push_back({PathStep::Kind::Close, {}, {}, {}});
    }
    return path;
  }

  std::vector<Plain> shapes_;
  std::vector<Covered> covered_;
  std::vector<Areas> areas_;
  std::vector<Circle> circles_;  ///< those that nothing covers, whole
  std::vector<Lines> lines_;
};

}  // namespace

std::vector<Shape> flattened(const std::vector<Shape>& shapes) {
  std::vector<Shape> result;
  Flattener flattener;
  const auto flush = [&] {
    auto more = flattener.give();
    std::move(more.begin(), more.end(), std::back_inserter(result));
  };
  for (const Shape& shape : shapes) {
    std::visit(
        [&](const auto& form) {
          using T = std::decay_t<decltype(form)>;
          if constexpr (std::is_same_v<T, Group> || std::is_same_v<T, TextRun>) {
            flush();
            result.push_back(shape);
          } else {
            flattener.take(plainOf(form));
          }
        },
        shape.form);
  }
  flush();
  return result;
}

}  // namespace stile::drawing
