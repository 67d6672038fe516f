#include "movement/mark.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stile::movement {
namespace {

constexpr double H = kStature;

/// A band along a limb, on one side of it.
struct LimbMark {
  const char* name;
  const char* part;
  double from, to, forward, outward, width;
};
constexpr LimbMark kLimbMarks[] = {
    {"hamstring", "thigh", .12, .92, -1, 0, .62},
    {"frontThigh", "thigh", .12, .92, 1, 0, .62},
    {"calf", "shank", .10, .72, -1, 0, .62},
    {"shin", "shank", .12, .75, 1, .4, .5},
    {"buttock", "thigh", -.1, .28, -1, 0, .8},
    {"outerHip", "thigh", 0, .45, 0, 1, .62},
    {"innerThigh", "thigh", .10, .80, .2, -1, .62},
    {"frontHip", "thigh", -.08, .42, 1, 0, .62},
    {"backShoulder", "upperArm", -.02, .62, -1, .5, .66},
    {"frontShoulder", "upperArm", -.02, .45, 1, .3, .7},
    {"outerShoulder", "upperArm", -.04, .55, 0, 1, .75},
    {"upperArm", "upperArm", .22, .88, 1, 0, .62},
    {"backArm", "upperArm", .15, .88, -1, 0, .62},
    {"forearm", "forearm", .08, .78, .7, .7, .7},
    {"foot", "foot", .2, .9, 0, 0, .7},
};

/// A band down the trunk, by ring numbers.
struct TrunkMark {
  const char* name;
  std::size_t from, to;
  double forward;  ///< 1 front, -1 back, 0 = the flank of the named side
};
constexpr TrunkMark kTrunkMarks[] = {{"flank", 4, 10, 0},      {"chest", 8, 11, 1}, {"lowBack", 3, 7, -1},
                                     {"upperBack", 8, 12, -1}, {"belly", 4, 7, 1},  {"pelvicFloor", 1, 3, 1}};

std::vector<drawing::Outline> chained(const std::vector<drawing::Outline>& balls) {
  std::vector<drawing::Outline> pieces;
  for (std::size_t i = 0; i + 1 < balls.size(); ++i) pieces.push_back(hulled({&balls[i], &balls[i + 1]}));
  return pieces;
}

std::vector<drawing::Outline> onLimb(const LimbMark& mark, const Part& part, const Body& body,
                                     const Camera& camera, Hand hand) {
  const auto bone = boneNamed(part.name);
  if (!bone || part.rings.empty()) return {};
  const PlacedBone& placed = body[*bone];
  const Vector normal = unit(placed.frame.x * mark.forward + placed.frame.y * (mark.outward * signOf(hand)));
  if (dot(normal, camera.into()) > .8) return {};
  std::vector<drawing::Outline> balls;
  for (int k = 0; k <= 8; ++k) {
    const double t = mark.from + (mark.to - mark.from) * k / 8;
    const std::size_t ring =
        static_cast<std::size_t>(std::clamp(t, 0.0, 1.0) * static_cast<double>(part.rings.size() - 1) + .5);
    const double radius = part.rings[ring].halfWidth;
    const double taper = std::sqrt(std::max(.06, std::sin(std::numbers::pi * (k + .4) / 8.8)));
    balls.push_back(ballOutline(camera, mix(placed.from, placed.to, t) + normal * (radius * .72),
                                radius * mark.width * taper));
  }
  return chained(balls);
}

std::vector<drawing::Outline> onTrunk(const TrunkMark& mark, const Part& torso, const Camera& camera,
                                      double side) {
  std::vector<drawing::Outline> balls;
  for (std::size_t k = mark.from; k <= mark.to; ++k) {
    const Ring& ring = torso.rings[k];
    const Vector out = ring.frame.x * (mark.forward * ring.halfDepth * .80) +
                       ring.frame.y * (mark.forward == 0 ? side * ring.halfWidth * .80 : 0);
    if (dot(unit(out), camera.into()) > .55) return {};
    const double taper = std::sin(std::numbers::pi * (static_cast<double>(k - mark.from) + .6) /
                                  (static_cast<double>(mark.to - mark.from) + 1.2));
    balls.push_back(ballOutline(camera, ring.centre + out, .034 * H * taper));
  }
  return chained(balls);
}

/// The breast muscle: from the middle of the chest to the shoulder.
std::vector<drawing::Outline> onBreast(const Part& torso, const Body& body, const Camera& camera, Hand hand) {
  const Frame& chest = body[Bone::Chest].frame;
  if (dot(chest.x, camera.into()) > .3) return {};
  struct Spot {
    std::size_t ring;
    double out, forward, radius;
  };
  std::vector<drawing::Outline> balls;
  for (const Spot& spot : {Spot{9, .18, .92, .020}, Spot{9, .50, .86, .034}, Spot{10, .78, .72, .034}}) {
    const Ring& ring = torso.rings[spot.ring];
    const Vector at = ring.centre + ring.frame.x * (spot.forward * ring.halfDepth) +
                      ring.frame.y * (signOf(hand) * spot.out * ring.halfWidth);
    balls.push_back(ballOutline(camera, at, spot.radius * H));
  }
  balls.push_back(ballOutline(camera, body.of(hand, Limb::UpperArm).from + chest.x * (.022 * H), .020 * H));
  return chained(balls);
}

struct SidedName {
  std::string name;
  Hand hand = Hand::Right;
  bool isSided = false;
};

SidedName splitOf(const std::string& area) {
  if (area.compare(0, 5, "left.") == 0) return {area.substr(5), Hand::Left, true};
  if (area.compare(0, 6, "right.") == 0) return {area.substr(6), Hand::Right, true};
  return {area};
}

}  // namespace

bool isMark(const std::string& area) {
  const SidedName split = splitOf(area);
  const auto is = [&](const auto& mark) { return split.name == mark.name; };
  if (split.isSided && (split.name == "breast" || split.name == "neck")) return true;
  if (std::any_of(std::begin(kTrunkMarks), std::end(kTrunkMarks), is)) return true;
  return split.isSided && std::any_of(std::begin(kLimbMarks), std::end(kLimbMarks), is);
}

std::vector<drawing::Outline> markOutlines(const std::string& area, const Part& part, const Body& body,
                                           const Camera& camera) {
  const SidedName split = splitOf(area);
  if (part.name == "torso") {
    if (split.name == "breast") return onBreast(part, body, camera, split.hand);
    for (const TrunkMark& mark : kTrunkMarks)
      if (split.name == mark.name) return onTrunk(mark, part, camera, signOf(split.hand));
    return {};
  }
  if (part.name == "neck" && split.name == "neck") {
    const Frame& frame = body[Bone::Neck].frame;
    std::vector<drawing::Outline> balls;
    for (const Ring& ring : part.rings)
      balls.push_back(
          ballOutline(camera, ring.centre + frame.y * (signOf(split.hand) * ring.halfWidth * .7), .017 * H));
    return chained(balls);
  }
  const std::string side = split.hand == Hand::Left ? "left." : "right.";
  for (const LimbMark& mark : kLimbMarks)
    if (split.name == mark.name && part.name == side + mark.part)
      return onLimb(mark, part, body, camera, split.hand);
  return {};
}

}  // namespace stile::movement
