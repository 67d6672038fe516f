// Vectors and rotations in space, as plain values.
//
// World: metres, x forward, y left, z up, floor at z = 0. A Frame is a rotation given by its three
// axes. Every bone's frame is (x forward, y left, z up the bone) when the figure stands at rest.
#pragma once

namespace stile::movement {

struct Vector {
  double x = 0, y = 0, z = 0;
  bool operator==(const Vector&) const = default;
};

constexpr Vector operator+(Vector a, Vector b) {
  return {a.x + b.x, a.y + b.y, a.z + b.z};
}
constexpr Vector operator-(Vector a, Vector b) {
  return {a.x - b.x, a.y - b.y, a.z - b.z};
}
constexpr Vector operator*(Vector a, double k) {
  return {a.x * k, a.y * k, a.z * k};
}
constexpr Vector operator-(Vector a) {
  return {-a.x, -a.y, -a.z};
}
constexpr double dot(Vector a, Vector b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
constexpr Vector cross(Vector a, Vector b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
constexpr Vector mix(Vector a, Vector b, double t) {
  return a * (1 - t) + b * t;
}
double length(Vector a);
/// Length 1; (0, 0, 1) for a vector without direction.
Vector unit(Vector a);
/// The part of `a` at right angles to `axis`, which has length 1.
constexpr Vector across(Vector a, Vector axis) {
  return a - axis * dot(a, axis);
}

/// A rotation by its axes; also a turned coordinate system.
struct Frame {
  Vector x{1, 0, 0}, y{0, 1, 0}, z{0, 0, 1};
  bool operator==(const Frame&) const = default;
};

constexpr Vector operator*(const Frame& f, Vector v) {
  return f.x * v.x + f.y * v.y + f.z * v.z;
}
constexpr Frame operator*(const Frame& a, const Frame& b) {
  return {a * b.x, a * b.y, a * b.z};
}
/// The vector as seen from inside the frame.
constexpr Vector inside(const Frame& f, Vector v) {
  return {dot(f.x, v), dot(f.y, v), dot(f.z, v)};
}
/// `b` as seen from inside `a`.
constexpr Frame inside(const Frame& a, const Frame& b) {
  return {inside(a, b.x), inside(a, b.y), inside(a, b.z)};
}

/// Turns about one axis, in degrees. A positive turn about y tips the head forward.
Frame aboutX(double degrees);
Frame aboutY(double degrees);
Frame aboutZ(double degrees);

/// The frame a fraction `t` of the way along the shortest turn from `a` to `b`.
Frame mix(const Frame& a, const Frame& b, double t);

double toDegrees(double radians);
double toRadians(double degrees);
/// Angle between two directions, 0 to 180 degrees.
double angleBetween(Vector a, Vector b);

}  // namespace stile::movement
