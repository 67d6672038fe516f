#include "drawing/region.h"

#include <algorithm>
#include <cmath>
#include <polyclipping/clipper.hpp>

namespace stile::drawing {
namespace {

using namespace ClipperLib;
constexpr double kUnits = 1000;

ClipperLib::Path toPath(const Outline& outline) {
  ClipperLib::Path path;
  path.reserve(outline.size());
  for (const Point& point : outline)
    path.emplace_back(std::llround(point.x * kUnits), std::llround(point.y * kUnits));
  return path;
}

Outline toOutline(const ClipperLib::Path& path) {
  Outline outline;
  outline.reserve(path.size());
  for (const IntPoint& point : path)
    outline.push_back({static_cast<double>(point.X) / kUnits, static_cast<double>(point.Y) / kUnits});
  return outline;
}

Paths toPaths(const Region& region) {
  Paths paths;
  for (const Outline& outline : region.outlines) paths.push_back(toPath(outline));
  return paths;
}

Region toRegion(const Paths& paths) {
  Region region;
  for (const auto& path : paths)
    if (path.size() >= 3) region.outlines.push_back(toOutline(path));
  return region;
}

Region combined(const Region& a, const Region& b, ClipType type) {
  Clipper clipper;
  clipper.AddPaths(toPaths(a), ptSubject, true);
  clipper.AddPaths(toPaths(b), ptClip, true);
  Paths result;
  clipper.Execute(type, result, pftNonZero, pftNonZero);
  return toRegion(result);
}

/// Keeps what stands off the straight line between the two ends (Douglas and Peucker's method).
void keepCorners(const Outline& points, std::size_t first, std::size_t last, double tolerance,
                 std::vector<bool>& kept) {
  const Point a = points[first], b = points[last];
  const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
  const bool isPoint = square < 1e-18;
  double worst = 0;  // distance squared, times the square of the line's length
  std::size_t at = first;
  for (std::size_t i = first + 1; i < last; ++i) {
    const double x = points[i].x - a.x, y = points[i].y - a.y, off = dx * y - dy * x;
    const double far = isPoint ? x * x + y * y : off * off;
    if (far > worst) worst = far, at = i;
  }
  if (worst <= tolerance * tolerance * (isPoint ? 1 : square)) return;
  kept[at] = true;
  keepCorners(points, first, at, tolerance, kept);
  keepCorners(points, at, last, tolerance, kept);
}

}  // namespace

void Box::take(Point point, double margin) {
  left = std::min(left, point.x - margin), right = std::max(right, point.x + margin);
  top = std::min(top, point.y - margin), bottom = std::max(bottom, point.y + margin);
}

void Box::take(const std::vector<Outline>& outlines, double margin) {
  for (const Outline& outline : outlines)
    for (const Point& point : outline) take(point, margin);
}

Outline hullOf(std::vector<Point> points) {
  const auto before = [](Point a, Point b) { return a.x < b.x || (a.x == b.x && a.y < b.y); };
  std::sort(points.begin(), points.end(), before);
  points.erase(std::unique(points.begin(), points.end()), points.end());
  if (points.size() < 3) return points;
  Outline hull;
  const auto turn = [](Point a, Point b, Point c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  };
  const auto walk = [&](auto first, auto last) {
    const std::size_t base = hull.size();
    for (auto at = first; at != last; ++at) {
      while (hull.size() >= base + 2 && turn(hull[hull.size() - 2], hull.back(), *at) <= 0) hull.pop_back();
      hull.push_back(*at);
    }
    hull.pop_back();
  };
  walk(points.begin(), points.end());
  walk(points.rbegin(), points.rend());
  return hull;
}

Region unionOf(const std::vector<Outline>& outlines) {
  Clipper clipper;
  for (const Outline& outline : outlines) {
    ClipperLib::Path path = toPath(outline);
    if (path.size() < 3) continue;
    if (!Orientation(path)) ReversePath(path);
    clipper.AddPath(path, ptSubject, true);
  }
  Paths result;
  clipper.Execute(ctUnion, result, pftNonZero, pftNonZero);
  return toRegion(result);
}

Region intersectionOf(const Region& a, const Region& b) {
  return combined(a, b, ctIntersection);
}
Region differenceOf(const Region& a, const Region& b) {
  return combined(a, b, ctDifference);
}

Region grown(const Region& region, double by) {
  ClipperOffset offset(2, kUnits * .02);
  offset.AddPaths(toPaths(region), jtRound, etClosedPolygon);
  Paths result;
  offset.Execute(result, by * kUnits);
  return toRegion(result);
}

std::vector<Outline> clippedLine(const Outline& line, const Region& region) {
  Clipper clipper;
  ClipperLib::Path path = toPath(line);
  // The library loses open lines that are level all along.
  const auto isLevel = [&path](const IntPoint& point) { return point.Y == path.front().Y; };
  if (std::all_of(path.begin(), path.end(), isLevel)) ++path.back().Y;
  clipper.AddPath(path, ptSubject, false);
  clipper.AddPaths(toPaths(region), ptClip, true);
  PolyTree tree;
  clipper.Execute(ctIntersection, tree, pftNonZero, pftNonZero);
  Paths open;
  OpenPathsFromPolyTree(tree, open);
  std::vector<Outline> lines;
  for (const auto& piece : open) lines.push_back(toOutline(piece));
  return lines;
}

Outline simplifiedLine(const Outline& line, double tolerance) {
  if (line.size() < 3) return line;
  std::vector<bool> kept(line.size(), false);
  kept.front() = kept.back() = true;
  keepCorners(line, 0, line.size() - 1, tolerance, kept);
  Outline fewer;
  for (std::size_t i = 0; i < line.size(); ++i)
    if (kept[i]) fewer.push_back(line[i]);
  return fewer;
}

Region simplified(const Region& region, double tolerance) {
  Region result;
  for (const Outline& outline : region.outlines) {
    if (outline.size() < 4) {
      result.outlines.push_back(outline);
      continue;
    }
    // Cut the ring at its two points that lie furthest apart.
    std::size_t far = 0;
    double most = 0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const double x = outline[i].x - outline[0].x, y = outline[i].y - outline[0].y;
      if (x * x + y * y > most) most = x * x + y * y, far = i;
    }
    Outline ring = outline;
    ring.push_back(outline.front());
    std::vector<bool> kept(ring.size(), false);
    kept[0] = kept[far] = true;
    keepCorners(ring, 0, far, tolerance, kept);
    keepCorners(ring, far, ring.size() - 1, tolerance, kept);
    Outline fewer;
    for (std::size_t i = 0; i + 1 < ring.size(); ++i)
      if (kept[i]) fewer.push_back(ring[i]);
    if (fewer.size() >= 3) result.outlines.push_back(std::move(fewer));
  }
  return result;
}

Path pathOf(const Region& region, const Paint& paint) {
  Path path;
  path.paint = paint;
  for (const Outline& outline : region.outlines) {
    for (std::size_t i = 0; i < outline.size(); ++i)
      path.steps.push_back({i == 0 ? PathStep::Kind::Move : PathStep::Kind::Line, outline[i], {}, {}});
    path.steps.push_back({PathStep::Kind::Close, {}, {}, {}});
  }
  return path;
}

}  // namespace stile::drawing
