#include "movement/support.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "drawing/region.h"

namespace stile::movement {
namespace {

constexpr double H = kStature;

Lying lyingOf(const Body& body) {
  const Frame &pelvis = body[Bone::Pelvis].frame, &chest = body[Bone::Chest].frame;
  // A trunk within about 25 degrees of level.
  if (std::abs(chest.z.z) > .42 || std::abs(pelvis.z.z) > .55 || body[Bone::Pelvis].from.z > .40)
    return Lying::No;
  if (chest.x.z > .6) return Lying::Supine;
  return chest.x.z < -.6 ? Lying::Prone : Lying::Side;
}

/// The corners of a sole on the floor.
void addSole(const Body& body, Hand hand, std::vector<drawing::Point>& points) {
  const PlacedBone& foot = body.of(hand, Limb::Foot);
  const double heel = body.toeBend[indexOf(hand)] < 5 ? -.040 : .05;
  for (const double along : {heel, .11})
    for (const double across : {-.025, .025}) {
      const Vector corner = foot.from + foot.frame * (Vector{along, across, 0} * H);
      points.push_back({corner.x, corner.y});
    }
}

double leastWidth(const std::vector<drawing::Point>& points) {
  double least = 9;
  for (int i = 0; i < 36; ++i) {
    const double c = std::cos(i * std::numbers::pi / 36), s = std::sin(i * std::numbers::pi / 36);
    double low = 9, high = -9;
    for (const auto& point : points) {
      const double v = point.x * c + point.y * s;
      low = std::min(low, v), high = std::max(high, v);
    }
    least = std::min(least, high - low);
  }
  return least;
}

/// Distance of a point to the nearest edge of a convex outline; negative outside.
double marginIn(const drawing::Outline& hull, Vector at) {
  double least = 9;
  for (std::size_t i = 0; i < hull.size(); ++i) {
    const auto &a = hull[i], &b = hull[(i + 1) % hull.size()];
    const double dx = b.x - a.x, dy = b.y - a.y;
    least = std::min(least, (dx * (at.y - a.y) - dy * (at.x - a.x)) / std::hypot(dx, dy));
  }
  return least;
}

bool holdsOn(const Body& body, Hand hand) {
  const std::string& on = body.hands[indexOf(hand)].on;
  return !on.empty() && on != "floor";
}

bool isHandOnFloor(const Body& body, Hand hand) {
  return body.hands[indexOf(hand)].on == "floor";
}

}  // namespace

Support supportOf(const Body& body) {
  Support support;
  support.lying = lyingOf(body);
  const bool isLying = support.lying != Lying::No;
  const double pelvis = body[Bone::Pelvis].from.z;
  const double heart = mix(body[Bone::Chest].from, body[Bone::Chest].to, .6).z;
  support.isHeadLow = body[Bone::Head].from.z < heart - .05;
  bool isKneeling = false;
  for (const Hand hand : kHands) {
    const std::size_t i = indexOf(hand);
    const double knee = body.of(hand, Limb::Shank).from.z, hip = body.of(hand, Limb::Thigh).from.z;
    support.kneels[i] = !isLying && !body.isSeated && knee < .10 && hip > knee + .12;
    isKneeling = isKneeling || support.kneels[i];
    support.hasHandHold = support.hasHandHold || holdsOn(body, hand);
  }
  const bool isOnFloorSeat = !isLying && !body.isSeated && pelvis < .20;
  support.isDown = isLying || isKneeling || isOnFloorSeat;
  support.isStanding = !support.isDown && !body.isSeated;
  for (const Hand hand : kHands) {
    const double knee = angleBetween(body.of(hand, Limb::Thigh).frame.z, body.of(hand, Limb::Shank).frame.z);
    support.isLongSitting = support.isLongSitting || (isOnFloorSeat && knee < 30);
  }
  support.isOnHands =
      !isLying && isKneeling && (isHandOnFloor(body, Hand::Left) || isHandOnFloor(body, Hand::Right));
  if (!support.isStanding) return support;
  std::vector<drawing::Point> soles;
  int planted = 0;
  for (const Hand hand : kHands) {
    const std::size_t i = indexOf(hand);
    support.bears[i] = body.isPlanted[i];
    if (!body.isPlanted[i]) continue;
    ++planted;
    addSole(body, hand, soles);
    support.isDeep =
        support.isDeep || body.of(hand, Limb::Thigh).from.z < body.of(hand, Limb::Shank).from.z - .02;
  }
  if (planted == 0) return support;
  if (planted == 1)
    for (const Hand hand : kHands) support.standsAlone[indexOf(hand)] = body.isPlanted[indexOf(hand)];
  support.baseWidth = leastWidth(soles);
  support.margin = marginIn(drawing::hullOf(soles), centreOfMass(body));
  constexpr double kLeaning = -.10;  // leaning further than this needs the hands to carry
  support.isOnHands = support.hasHandHold && support.margin < kLeaning;
  support.isUnsupported = !support.hasHandHold && (planted == 1 || support.baseWidth < kNarrowBase);
  return support;
}

}  // namespace stile::movement
