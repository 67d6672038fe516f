// From the front to the back: each shape keeps what nothing before it covers. Areas come out free of
// overlaps, so all of one colour can be one path; lines are painted over them, cut where something in front
// hides them. What hides what is looked up in cells; the lines, which the eye follows, keep their exact
// course.
#include "drawing/flattened.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <type_traits>

#include "drawing/mosaic.h"

namespace stile::drawing {
namespace {

constexpr double kFineness = 3;         ///< cells per unit
constexpr double kAreaTolerance = .38;  ///< units an area's edge may be off: it lies under a line
constexpr double kSliver = .4;  ///< an area's measure by its edge, in units: thinner ones lie under lines
constexpr double kLineTolerance = .22;
constexpr double kEdge =
    .2;  ///< of its width, how far beyond its edge a shape with a line hides a line along that edge
constexpr int kCorners = 20;  ///< of a circle
constexpr int kCurveSteps = 6;

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

struct Extent {
  double area = 0, around = 0;
};

Extent extentOf(const Outline& outline) {
  Extent extent;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point &a = outline[i], &b = outline[i + 1 < outline.size() ? i + 1 : 0];
    extent.area += (a.x * b.y - b.x * a.y) / 2;
    extent.around += std::hypot(b.x - a.x, b.y - a.y);
  }
  return {std::abs(extent.area), extent.around};
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

/// The parts of a line that nothing in front hides.
class SeenLine {
 public:
  SeenLine(const Mosaic& mosaic, const Outline& line, bool isRing) : isRing_(isRing) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
      const int steps =
          1 + static_cast<int>(std::hypot(line[i + 1].x - line[i].x, line[i + 1].y - line[i].y) / kStep);
      for (int step = 0; step < steps; ++step)
        add(mosaic, between(line[i], line[i + 1], step / double(steps)), step == 0);
    }
    if (!line.empty()) add(mosaic, line.back(), true);
    if (isRing && !points_.empty()) points_.pop_back();
  }

  std::vector<Outline> pieces() {
    if (points_.empty()) return {};
    const auto hidden =
        std::find_if(points_.begin(), points_.end(), [](const Sample& each) { return each.isHidden; });
    const bool isWhole = hidden == points_.end();
    if (isRing_ && !isWhole) std::rotate(points_.begin(), hidden, points_.end());
    if (isRing_) points_.push_back(points_.front());
    bridge();
    std::vector<Outline> pieces;
    for (std::size_t i = 0; i < points_.size(); ++i) {
      if (points_[i].isHidden) continue;
      const bool begins = i == 0 || points_[i - 1].isHidden,
                 ends = i + 1 == points_.size() || points_[i + 1].isHidden;
      if (begins) pieces.emplace_back();
      if (begins || ends || points_[i].isCorner) pieces.back().push_back(points_[i].at);
    }
    return pieces;
  }

 private:
  static constexpr double kStep = .3;  ///< units between two places that are looked at
  static constexpr int kShortest = 3;  ///< fewer hidden places than these are a chance of the cells

  struct Sample {
    Point at;
    bool isHidden, isCorner;
  };

  void add(const Mosaic& mosaic, Point at, bool isCorner) {
    points_.push_back({at, mosaic.hidesLinesAt(at), isCorner});
  }

  void bridge() {
    for (std::size_t i = 0; i < points_.size();) {
      std::size_t end = i;
      while (end < points_.size() && points_[end].isHidden == points_[i].isHidden) ++end;
      if (points_[i].isHidden && i > 0 && end < points_.size() && end - i < kShortest)
        for (std::size_t k = i; k < end; ++k) points_[k].isHidden = false;
      i = end;
    }
  }

  bool isRing_;
  std::vector<Sample> points_;
};

class Flattener {
 public:
  void take(Plain plain) { shapes_.push_back(std::move(plain)); }

  /// What was taken, flattened; then there is nothing left.
  std::vector<Shape> give() {
    Box box;
    for (const Plain& shape : shapes_)
      box.take(shape.outlines, shape.paint.strokeWidth + 1);  // so that the outermost cells stay bare
    mosaic_ = Mosaic(Grid(box, kFineness));
    for (auto shape = shapes_.rbegin(); shape != shapes_.rend(); ++shape) see(*shape);
    mosaic_.closeUnderLines();
    std::vector<Shape> result;
    const std::vector<std::vector<Outline>> traced = mosaic_.traced();
    for (std::size_t i = traced.size(); i-- > 0;) {
      Region region;
      for (const Outline& outline : traced[i]) {
        const Extent extent = extentOf(outline);
        if (extent.area <= kSliver * extent.around) continue;
        const Region fewer = simplified({{outline}}, kAreaTolerance);
        region.outlines.insert(region.outlines.end(), fewer.outlines.begin(), fewer.outlines.end());
      }
      if (!region.isEmpty()) result.push_back({pathOf(region, {.fill = areas_[i]})});
    }
    for (auto circle = circles_.rbegin(); circle != circles_.rend(); ++circle) result.push_back({*circle});
    for (auto kind = lines_.rbegin(); kind != lines_.rend(); ++kind) result.push_back({lines(*kind)});
    *this = {};
    return result;
  }

 private:
  struct Lines {
    Paint paint;
    std::vector<Outline> lines;
  };

  static Mosaic::Number numberOf(std::size_t area) {
    return static_cast<Mosaic::Number>(Mosaic::kFirst + area);
  }

  Stencil stencilOf(const std::vector<Outline>& outlines, double margin) const {
    Box box;
    box.take(outlines, margin);
    return Stencil(mosaic_.grid(), box);
  }

  /// The area of closed outlines and a line of twice `half` around it.
  Stencil areaOf(const std::vector<Outline>& outlines, double half) const {
    Stencil area = stencilOf(outlines, half);
    area.fill(outlines);
    if (half > 0)
      for (const Outline& outline : outlines) area.stroke(outline, true, half);
    return area;
  }

  void see(const Plain& plain) {
    const Paint& paint = plain.paint;
    const bool hasArea = paint.fill != Colour::None, hasLine = paint.stroke != Colour::None;
    const double half = hasLine ? paint.strokeWidth / 2 : 0;
    if (!plain.isClosed || (plain.circle != nullptr && !hasArea)) {
      if (hasLine) seeLines(plain.outlines, paint, paint.strokeWidth, plain.isClosed);
      return;
    }
    if (plain.circle != nullptr && !mosaic_.isCovered(areaOf(plain.outlines, half))) {
      circles_.push_back(*plain.circle);
      const Stencil whole = areaOf(plain.outlines, half);
      mosaic_.lay(whole, Mosaic::kUnderLine);
      mosaic_.hideLines(whole.shrunk());
      return;
    }
    if (!hasArea) return seeOuterHalf(plain, half);
    if (hasLine && paint.fill != paint.stroke) {
      seeLines(plain.outlines, paint, paint.strokeWidth, true);
      seeArea(areaOf(plain.outlines, 0), paint.fill);
      const Stencil edge = areaOf(plain.outlines, kEdge * paint.strokeWidth);
      mosaic_.lay(edge, Mosaic::kUnderLine);
      mosaic_.hideLines(edge);
      return;
    }
    const Stencil area = areaOf(plain.outlines, half);
    seeArea(area, paint.fill);
    mosaic_.hideLines(area.shrunk());
  }

  void seeOuterHalf(const Plain& plain, double half) {
    if (half <= 0) return;
    const std::vector<Outline> middle = grown(Region{plain.outlines}, half / 2).outlines;
    seeLines(middle, plain.paint, half, true);
    const Stencil area = areaOf(middle, 0);
    mosaic_.lay(area, Mosaic::kUnderLine);
    mosaic_.hideLines(area.shrunk());
  }

  void seeArea(const Stencil& area, Colour colour) {
    const auto at = std::find(areas_.begin(), areas_.end(), colour);
    const auto place = static_cast<std::size_t>(at - areas_.begin());
    if (mosaic_.lay(area, numberOf(place)) && at == areas_.end()) areas_.push_back(colour);
  }

  void seeLines(const std::vector<Outline>& outlines, const Paint& paint, double width, bool isClosed) {
    if (paint.stroke == Colour::None) return;
    const Paint line{
        .stroke = paint.stroke, .strokeWidth = width, .isDashed = paint.isDashed, .hasRoundEnds = true};
    auto at = std::find_if(lines_.begin(), lines_.end(), [&](const Lines& each) {
      return each.paint.stroke == line.stroke && std::abs(each.paint.strokeWidth - width) < .005 &&
             each.paint.isDashed == line.isDashed;
    });
    if (at == lines_.end()) at = lines_.insert(lines_.end(), {line, {}});
    for (Outline outline : outlines) {
      if (isClosed && !outline.empty()) outline.push_back(outline.front());
      if (outline.size() < 2) continue;
      for (Outline& seen : SeenLine(mosaic_, outline, isClosed).pieces()) {
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
  Mosaic mosaic_{Grid({}, kFineness)};
  std::vector<Colour> areas_;    ///< by their number in the mosaic
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
