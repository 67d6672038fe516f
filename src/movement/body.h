// A posed figure: where every bone is. Made by poseBody() or by between(); read by the demands and
// by the drawing.
#pragma once

#include <array>
#include <string>

#include "movement/build.h"
#include "movement/pose.h"
#include "movement/skeleton.h"
#include "movement/vector.h"

namespace stile::movement {

inline constexpr double kStature = 1.68;  ///< metres; all poses are written for this stature

struct PlacedBone {
  Frame frame;
  Vector from, to;  ///< near and far joint
};

struct PlacedHand {
  Vector fingers{1, 0, 0}, palm{0, 0, -1};  ///< where the fingers point, where the palm faces
  Grip grip = Grip::Flat;
  std::string on;
};

struct Body {
  std::array<PlacedBone, kBoneCount> bones;
  std::array<PlacedHand, 2> hands;
  std::array<double, 2> toeBend{0, 0};  ///< heel raised over a standing ball of the foot, degrees
  std::array<bool, 2> isPlanted{false, false};
  std::array<std::string, 2> standsOn;
  std::array<double, 2> legMiss{0, 0}, armMiss{0, 0};  ///< metres a contact was out of reach
  bool isSeated = false;

  const PlacedBone& operator[](Bone bone) const { return bones[static_cast<std::size_t>(bone)]; }
  PlacedBone& operator[](Bone bone) { return bones[static_cast<std::size_t>(bone)]; }
  const PlacedBone& of(Hand hand, Limb limb) const { return (*this)[boneOf(hand, limb)]; }
  PlacedBone& of(Hand hand, Limb limb) { return (*this)[boneOf(hand, limb)]; }
};

/// Distance from the axis of a bone to the skin at a fraction along it, in statures.
double skinRadius(Bone bone, double along);

/// A point on the body: "left.thigh:0.7:back" (bone, fraction along it, side) or "head".
/// nullopt when the words name no bone or no side.
std::optional<Vector> anchorOf(const Body& body, const std::string& words);

/// Centre of mass (winter-masses).
Vector centreOfMass(const Body& body);

}  // namespace stile::movement
