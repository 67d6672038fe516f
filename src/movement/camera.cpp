#include "movement/camera.h"

#include <cmath>

namespace stile::movement {

Camera::Camera(const View& view, double unitsPerMetre) : scale_(unitsPerMetre) {
  const double a = toRadians(view.azimuth), e = toRadians(view.elevation);
  into_ = {-std::cos(a) * std::cos(e), -std::sin(a) * std::cos(e), -std::sin(e)};
  right_ = unit(cross(into_, {0, 0, 1}));
  up_ = cross(right_, into_);
}

}  // namespace stile::movement
