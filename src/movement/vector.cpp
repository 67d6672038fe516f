#include "movement/vector.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>

namespace stile::movement {

double length(Vector a) {
  return std::sqrt(dot(a, a));
}

Vector unit(Vector a) {
  const double size = length(a);
  return size > 1e-9 ? a * (1 / size) : Vector{0, 0, 1};
}

double toDegrees(double radians) {
  return radians * 180 / std::numbers::pi;
}
double toRadians(double degrees) {
  return degrees * std::numbers::pi / 180;
}

double angleBetween(Vector a, Vector b) {
  return toDegrees(std::acos(std::clamp(dot(unit(a), unit(b)), -1.0, 1.0)));
}

Frame aboutX(double degrees) {
  const double c = std::cos(toRadians(degrees)), s = std::sin(toRadians(degrees));
  return {{1, 0, 0}, {0, c, s}, {0, -s, c}};
}
Frame aboutY(double degrees) {
  const double c = std::cos(toRadians(degrees)), s = std::sin(toRadians(degrees));
  return {{c, 0, -s}, {0, 1, 0}, {s, 0, c}};
}
Frame aboutZ(double degrees) {
  const double c = std::cos(toRadians(degrees)), s = std::sin(toRadians(degrees));
  return {{c, s, 0}, {-s, c, 0}, {0, 0, 1}};
}

Frame mix(const Frame& a, const Frame& b, double t) {
  const Frame turn = inside(a, b);
  const double cosine = std::clamp((turn.x.x + turn.y.y + turn.z.z - 1) / 2, -1.0, 1.0);
  const double angle = std::acos(cosine);
  if (angle < 1e-9) return a;
  Vector axis{turn.y.z - turn.z.y, turn.z.x - turn.x.z, turn.x.y - turn.y.x};
  if (length(axis) < 1e-6) {
    // Half a turn: the axis is the direction that the turn leaves alone.
    const Vector candidates[] = {{turn.x.x + 1, turn.x.y, turn.x.z},
                                 {turn.y.x, turn.y.y + 1, turn.y.z},
                                 {turn.z.x, turn.z.y, turn.z.z + 1}};
    axis = *std::max_element(std::begin(candidates), std::end(candidates),
                             [](Vector p, Vector q) { return length(p) < length(q); });
  }
  axis = unit(axis);
  const double c = std::cos(angle * t), s = std::sin(angle * t);
  const auto turned = [&](Vector v) { return v * c + cross(axis, v) * s + axis * (dot(axis, v) * (1 - c)); };
  return a * Frame{turned({1, 0, 0}), turned({0, 1, 0}), turned({0, 0, 1})};
}

}  // namespace stile::movement
