// A parallel projection onto the page. Azimuth 0 looks at the face of a figure that faces +x, -90
// at its right side; elevation is how far above the horizon the viewer stands. Degrees.
#pragma once

#include "drawing/shape.h"
#include "movement/figure.h"

namespace stile::movement {

class Camera {
 public:
  Camera(const View& view, double unitsPerMetre);

  drawing::Point at(Vector v) const { return {dot(v, right_) * scale_, -dot(v, up_) * scale_}; }
  /// Greater is further from the viewer, metres.
  double depth(Vector v) const { return dot(v, into_); }
  Vector into() const { return into_; }
  bool faces(Vector normal) const { return dot(normal, into_) < 0; }
  double scale() const { return scale_; }

 private:
  Vector into_, right_, up_;
  double scale_;
};

}  // namespace stile::movement
