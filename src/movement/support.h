// What carries a body: feet, hands, knees, a seat or the floor; and how narrow the base is under its
// centre of mass.
#pragma once

#include <array>

#include "movement/body.h"

namespace stile::movement {

enum class Lying { No, Supine, Prone, Side };

struct Support {
  Lying lying = Lying::No;
  bool isStanding = false;     ///< on the feet: not lying, sitting, kneeling
  bool isDown = false;         ///< on the floor: lying, kneeling, sitting on it
  bool isHeadLow = false;      ///< head lower than the heart
  bool isOnHands = false;      ///< body weight on the hands
  bool isLongSitting = false;  ///< on the floor with straight knees
  bool isDeep = false;         ///< a standing leg bent so that the hip is below the knee
  bool isUnsupported = false;  ///< one leg or a narrow base, and no hand on anything fixed
  bool hasHandHold = false;
  std::array<bool, 2> kneels{false, false}, bears{false, false}, standsAlone{false, false};
  double baseWidth = 1;  ///< least width of the area between the soles, metres
  double margin = 1;     ///< from the centre of mass to the edge of that area; negative = outside
};

/// Under this width a base counts as narrow: feet side by side and touching, or in one line. Metres.
inline constexpr double kNarrowBase = .20;

Support supportOf(const Body& body);

}  // namespace stile::movement
