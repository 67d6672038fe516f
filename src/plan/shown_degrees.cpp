#include "plan/shown_degrees.h"

#include <algorithm>

namespace stile::plan {

double leastDemandOf(std::string_view movement) {
  if (movement == "hipAdduction") return 2;
  if (movement == "shoulderHorizontalAdduction") return 100;  // straight ahead is not across the chest
  return movement == "hipInternalRotation" || movement == "hipExternalRotation" ? 12 : 6;
}

bool isOfTrunk(std::string_view movement) {
  return movement.substr(0, 5) == "trunk" || movement.substr(0, 4) == "neck";
}

double shownDegrees(const movement::Figure& figure, const Exercise& exercise,
                    const movement::Demands& demands, std::string_view movement, Limb limb) {
  const auto of = [&](const movement::Angles& angles) {
    const auto at = angles.find(movement);
    return at == angles.end() ? 0.0 : at->second;
  };
  if (isOfTrunk(movement)) return of(demands.trunk);
  if (exercise.oneSided && limb != Limb::Both) {
    const auto hand = limb == Limb::Other ? movement::otherOf(figure.working) : figure.working;
    return of(demands.limbs[movement::indexOf(hand)]);
  }
  return std::max(of(demands.limbs[0]), of(demands.limbs[1]));
}

}  // namespace stile::plan
