#include "movement/body.h"

#include <cstdlib>

namespace stile::movement {
namespace {

struct Radii {
  double near, far;
};

Radii radiiOf(Bone bone) {
  switch (bone) {
    case Bone::Pelvis:
      return {.098, .098};
    case Bone::Loin:
    case Bone::Chest:
      return {.075, .075};
    case Bone::Head:
      return {.050, .050};
    case Bone::LeftThigh:
    case Bone::RightThigh:
      return {.052, .033};
    case Bone::LeftShank:
    case Bone::RightShank:
      return {.034, .022};
    case Bone::LeftUpperArm:
    case Bone::RightUpperArm:
      return {.033, .024};
    case Bone::LeftForearm:
    case Bone::RightForearm:
      return {.025, .016};
    default:
      return {.020, .020};
  }
}

}  // namespace

double skinRadius(Bone bone, double along) {
  const Radii radii = radiiOf(bone);
  return radii.near * (1 - along) + radii.far * along;
}

std::optional<Vector> anchorOf(const Body& body, const std::string& words) {
  const auto first = words.find(':');
  const auto bone = boneNamed(std::string_view(words).substr(0, first));
  if (!bone) return std::nullopt;
  const PlacedBone& placed = body[*bone];
  if (first == std::string::npos) return placed.to;
  const auto second = words.find(':', first + 1);
  char* end = nullptr;
  const std::string number =
      words.substr(first + 1, second == std::string::npos ? second : second - first - 1);
  const double along = std::strtod(number.c_str(), &end);
  if (number.empty() || *end != 0) return std::nullopt;
  const Vector point = mix(placed.from, placed.to, along);
  if (second == std::string::npos) return point;
  const std::string side = words.substr(second + 1);
  const double radius = skinRadius(*bone, along) * kStature;
  if (side == "front") return point + placed.frame.x * radius;
  if (side == "back") return point - placed.frame.x * radius;
  if (side == "left") return point + placed.frame.y * radius;
  if (side == "right") return point - placed.frame.y * radius;
  if (side == "top") return point + placed.frame.z * radius;
  return std::nullopt;
}

Vector centreOfMass(const Body& body) {
  Vector sum;
  double total = 0;
  const auto add = [&](double weight, Vector at) {
    sum = sum + at * weight;
    total += weight;
  };
  // The trunk of the table reaches from the hips to the height of the shoulder joints.
  const PlacedBone& chest = body[Bone::Chest];
  const Vector shoulders = chest.from + chest.frame.z * (proportion::kShoulderAboveLoin * kStature);
  add(mass::kTrunk, mix(body[Bone::Pelvis].from, shoulders, .5));
  add(mass::kHeadAndNeck, body[Bone::Head].from);
  const auto addLimb = [&](Hand hand, Limb limb, double weight, double along) {
    const PlacedBone& bone = body.of(hand, limb);
    add(weight, mix(bone.from, bone.to, along));
  };
  for (const Hand hand : kHands) {
    addLimb(hand, Limb::Thigh, mass::kThigh, mass::kLegAt);
    addLimb(hand, Limb::Shank, mass::kShank, mass::kLegAt);
    addLimb(hand, Limb::Foot, mass::kFoot, .5);
    addLimb(hand, Limb::UpperArm, mass::kUpperArm, mass::kArmAt);
    addLimb(hand, Limb::Forearm, mass::kForearm, mass::kForearmAt);
    addLimb(hand, Limb::Hand, mass::kHand, .5);
  }
  return sum * (1 / total);
}

}  // namespace stile::movement
