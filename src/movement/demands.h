// What an exercise asks of the body, computed from its key poses and from the way between them. So
// picture and safety rule cannot disagree. Load, impact, effort and breath are declared elsewhere.
#pragma once

#include <array>
#include <functional>
#include <map>
#include <set>
#include <string>

#include "movement/body.h"
#include "movement/figure.h"

namespace stile::movement {

/// The largest angles of one side, by movement id of the vocabulary ("hipFlexion"), in degrees.
using Angles = std::map<std::string, double, std::less<>>;

struct Demands {
  Angles trunk;                                   ///< movements without a side
  std::array<Angles, 2> limbs;                    ///< left, right
  std::set<std::string> bans;                     ///< bans of the vocabulary it runs into, without a side
  std::array<std::set<std::string>, 2> limbBans;  ///< the same, by side
  double leastBaseWidth = 1;                      ///< metres, over the standing moments
  double leastMargin =
      1;  ///< metres from the centre of mass to the edge of the base, over the standing moments
  bool touchesFloor = false;  ///< the body goes down to the floor
};

/// Bans that are computed. All others are declared.
const std::set<std::string>& computedBans();

/// Of one moment.
Demands demandsOf(const Body& body, bool isOnBed);

/// Of a form: the largest over its key poses and `steps` moments between each two of them.
Demands demandsOf(const Form& form, int steps = 6);
/// The same for a form of a figure; of steps, what every step is made of does not count as balance work.
Demands demandsOf(const Figure& figure, const Form& form, int steps = 6);
Demands demandsOf(const Figure& figure, std::size_t form, int steps = 6);

}  // namespace stile::movement
