#include "movement/skeleton.h"

#include <algorithm>

namespace stile::movement {
namespace {

constexpr std::array<std::string_view, kBoneCount> kNames{
    "pelvis",      "loin",       "chest",          "neck",          "head",      "left.thigh",
    "left.shank",  "left.foot",  "left.upperArm",  "left.forearm",  "left.hand", "right.thigh",
    "right.shank", "right.foot", "right.upperArm", "right.forearm", "right.hand"};

constexpr std::string_view kRead = "joint-motion-1965", kOwn = "common practice, no source";
// Ankle dorsiflexion is 20 with the foot free; with the body's weight on it lunge tests find more: 30 to 38
// is often called normal (a podiatry reference page, read), so 40 is the upper end. Hip flexion and outward
// rotation allow what a hand or the other thigh adds to the active 120 and 45.
constexpr std::array<JointRange, 18> kRanges{{
    {"hipFlexion", -30, 130, kRead},
    {"hipAbduction", -30, 45, kRead},
    {"hipRotation", -72, 45, kRead},
    {"kneeFlexion", 0, 135, kRead},
    {"ankleDorsiflexion", -50, 20, kRead},
    {"ankleDorsiflexionStanding", -50, 40, kOwn},
    {"trunkFlexion", -25, 80, kRead},
    {"trunkSideBend", -35, 35, kRead},
    {"trunkRotation", -45, 45, kRead},
    {"neckFlexion", -45, 45, kRead},
    {"neckSideBend", -45, 45, kRead},
    {"neckRotation", -60, 60, kRead},
    {"shoulderElevation", 0, 180, kRead},
    {"shoulderExtension", 0, 60, kRead},
    {"shoulderHorizontalAdduction", 0, 130, kOwn},
    {"elbowFlexion", 0, 150, kRead},
    {"wristFlexion", -70, 80, kRead},
    {"wristDeviation", -30, 20, kRead},
}};

}  // namespace

std::string nameOf(Bone bone) {
  return std::string(kNames[static_cast<std::size_t>(bone)]);
}

std::optional<Bone> boneNamed(std::string_view name) {
  const auto at = std::find(kNames.begin(), kNames.end(), name);
  if (at == kNames.end()) return std::nullopt;
  return static_cast<Bone>(at - kNames.begin());
}

const std::array<JointRange, 18>& jointRanges() {
  return kRanges;
}

const JointRange* rangeOf(std::string_view joint) {
  const auto at = std::find_if(kRanges.begin(), kRanges.end(),
                               [&](const JointRange& each) { return each.joint == joint; });
  return at == kRanges.end() ? nullptr : &*at;
}

}  // namespace stile::movement
