// Flat areas that can be joined, cut and clipped: the geometry behind exercise figures.
// Wraps the polygon clipping library, so that no other file sees it.
#pragma once

#include <vector>

#include "drawing/shape.h"

namespace stile::drawing {

using Outline = std::vector<Point>;

/// The smallest upright rectangle around what it took.
struct Box {
  double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
  void take(Point point, double margin = 0);
  void take(const std::vector<Outline>& outlines, double margin = 0);
  bool isEmpty() const { return left > right; }
  double width() const { return right - left; }
  double height() const { return bottom - top; }
};

/// An area as the outlines around it, outer ones and holes turning opposite ways.
struct Region {
  std::vector<Outline> outlines;
  bool isEmpty() const { return outlines.empty(); }
};

/// The smallest convex outline around the points; fewer than three points are returned as they are.
Outline hullOf(std::vector<Point> points);

/// Everything that some outline covers, whichever way it turns. Exact to 1/1000 of a unit.
Region unionOf(const std::vector<Outline>& outlines);
Region intersectionOf(const Region& a, const Region& b);
Region differenceOf(const Region& a, const Region& b);
/// The region grown outward by a distance all around, with round corners.
Region grown(const Region& region, double by);
/// The part of an open line that lies in the region.
std::vector<Outline> clippedLine(const Outline& line, const Region& region);

/// The same region with fewer points, none more than `tolerance` away.
Region simplified(const Region& region, double tolerance);
/// The same open line with fewer points.
Outline simplifiedLine(const Outline& line, double tolerance);

/// A closed path with that paint.
Path pathOf(const Region& region, const Paint& paint);

}  // namespace stile::drawing
