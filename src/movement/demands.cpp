#include "movement/demands.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "movement/joint_angles.h"
#include "movement/posing.h"
#include "movement/support.h"

namespace stile::movement {
namespace {

void raise(Angles& angles, std::string_view movement, double degrees) {
  const auto at = angles.find(movement);
  if (at == angles.end()) {
    angles.emplace(movement, std::max(0.0, degrees));
  } else if (degrees > at->second) {
    at->second = degrees;
  }
}

void takeTrunk(const JointAngles& angles, Angles& trunk) {
  raise(trunk, "trunkFlexion", angles.trunkFlexion);
  raise(trunk, "trunkExtension", -angles.trunkFlexion);
  raise(trunk, "trunkSideBend", std::abs(angles.trunkSideBend));
  raise(trunk, "trunkRotation", std::abs(angles.trunkRotation));
  raise(trunk, "neckFlexion", angles.neckFlexion);
  raise(trunk, "neckExtension", -angles.neckFlexion);
  raise(trunk, "neckRotation", std::abs(angles.neckRotation));
}

/// How far a leg goes across the middle of the body: 0 until the knee or the ankle crosses it.
double adductionPastMidline(const Body& body, Hand hand) {
  const PlacedBone &pelvis = body[Bone::Pelvis], &shank = body.of(hand, Limb::Shank);
  const Vector hip = inside(pelvis.frame, body.of(hand, Limb::Thigh).from - pelvis.from);
  constexpr double kPast = .012;  // metres; a line of feet stands on the middle, not past it
  double most = 0;
  for (const Vector& joint : {shank.from, shank.to}) {
    const Vector at = inside(pelvis.frame, joint - pelvis.from);
    const double across = -at.y * signOf(hand);
    if (across < kPast) continue;
    const Vector off = at - hip;
    most = std::max(most, toDegrees(std::asin(std::clamp(-off.y * signOf(hand) / length(off), 0.0, 1.0))));
  }
  return most;
}

void takeLimb(const Body& body, const LimbAngles& limb, Hand hand, Angles& angles) {
  raise(angles, "hipFlexion", cautiousHipFlexion(body, hand));
  raise(angles, "hipExtension", -limb.hipFlexion);
  raise(angles, "hipAbduction", limb.hipAbduction);
  raise(angles, "hipAdduction", adductionPastMidline(body, hand));
  raise(angles, "hipInternalRotation", limb.hipRotation);
  raise(angles, "hipExternalRotation", -limb.hipRotation);
  raise(angles, "kneeFlexion", limb.kneeFlexion);
  raise(angles, "ankleDorsiflexion", limb.ankleDorsiflexion);
  raise(angles, "shoulderElevation", limb.shoulderElevation);
  raise(angles, "shoulderHorizontalAdduction", limb.shoulderHorizontalAdduction);
  if (limb.shoulderElevation < 90) raise(angles, "shoulderExtension", limb.shoulderExtension);
}

/// A hand on the back of the trunk, behind the plane of the chest.
bool isArmBehindBack(const Body& body, Hand hand) {
  const PlacedBone& loin = body[Bone::Loin];
  const Vector palm = mix(body.of(hand, Limb::Hand).from, body.of(hand, Limb::Hand).to, .4);
  const Vector off = inside(loin.frame, palm - mix(loin.from, loin.to, .5));
  constexpr double H = kStature;
  return off.x < -.05 * H && std::abs(off.y) < .09 * H && off.z > -.14 * H && off.z < .14 * H;
}

/// Raises what a form asks to what one moment of it asks.
void take(const Body& body, bool isOnBed, Demands& demands) {
  const JointAngles angles = anglesOf(body);
  const Support support = supportOf(body);
  takeTrunk(angles, demands.trunk);
  for (const Hand hand : kHands) {
    const std::size_t i = indexOf(hand);
    takeLimb(body, angles.limbs[i], hand, demands.limbs[i]);
    auto& bans = demands.limbBans[i];
    if (isArmBehindBack(body, hand)) bans.insert("armBehindBack");
    if (support.kneels[i]) bans.insert("kneeling");
    if (support.bears[i]) bans.insert("weightBearing");
    if (support.standsAlone[i]) bans.insert("singleLegStance");
  }
  if (support.lying == Lying::Supine) demands.bans.insert("supineFlat");
  if (support.lying == Lying::Prone) demands.bans.insert("prone");
  if (support.isHeadLow) demands.bans.insert("headBelowHeart");
  if (support.isOnHands) demands.bans.insert("weightOnHands");
  if (support.isUnsupported) demands.bans.insert("unsupportedBalance");
  if (support.isLongSitting) demands.bans.insert("longSitting");
  if (support.isDeep) demands.bans.insert("deepSquat");
  if (support.isStanding) {
    demands.leastBaseWidth = std::min(demands.leastBaseWidth, support.baseWidth);
    demands.leastMargin = std::min(demands.leastMargin, support.margin);
  }
  demands.touchesFloor = demands.touchesFloor || (!isOnBed && support.isDown);
}

}  // namespace

const std::set<std::string>& computedBans() {
  static const std::set<std::string> bans{"kneeling",        "supineFlat",         "prone",
                                          "headBelowHeart",  "armBehindBack",      "weightOnHands",
                                          "singleLegStance", "unsupportedBalance", "weightBearing",
                                          "longSitting",     "deepSquat"};
  return bans;
}

Demands demandsOf(const Body& body, bool isOnBed) {
  Demands demands;
  take(body, isOnBed, demands);
  return demands;
}

Demands demandsOf(const Figure& figure, const Form& form, int steps) {
  Demands demands = demandsOf(form, steps);
  if (!figure.isGait) return demands;
  for (const char* ban : {"unsupportedBalance", "weightOnHands"}) demands.bans.erase(ban);
  for (auto& bans : demands.limbBans) bans.erase("singleLegStance");
  return demands;
}

Demands demandsOf(const Figure& figure, std::size_t form, int steps) {
  return demandsOf(figure, figure.forms[form], steps);
}

Demands demandsOf(const Form& form, int steps) {
  const bool isOnBed =
      std::any_of(form.props.begin(), form.props.end(), [](const Prop& prop) { return prop.kind == "bed"; });
  Demands total;
  const std::vector<Body> bodies = bodiesOf(form);
  for (std::size_t i = 0; i < bodies.size(); ++i) {
    take(bodies[i], isOnBed, total);
    for (int k = 1; i + 1 < bodies.size() && k <= steps; ++k)
      take(between(bodies[i], bodies[i + 1], k / (steps + 1.0)), isOnBed, total);
  }
  return total;
}

}  // namespace stile::movement
