// The skeleton: bones, their lengths and masses as fractions of the whole, and how far each joint
// goes. Published tables; where we had to choose ourselves the table says so.
//
// Sources:
// - "winter-segments": R. Drillis and R. Contini, Body Segment Parameters (1966), as drawn in
//   D. A. Winter, Biomechanics and Motor Control of Human Movement, fig. 4.1; read second-hand.
// - "winter-masses": the anthropometric table of the same book (after Dempster), read in a public
//   university hand-out.
// - "joint-motion-1965": normal ranges of the American Academy of Orthopaedic Surgeons; the shoulder,
//   elbow and wrist column was read, hip, knee, ankle, spine and neck are from memory. Those were held
//   against public tables that were read; which, and how near, stands in tests/movement/skeleton_test.cpp.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace stile::movement {

enum class Hand { Left, Right };  ///< the left or the right limb of the figure
inline constexpr std::array<Hand, 2> kHands{Hand::Left, Hand::Right};
constexpr double signOf(Hand hand) {
  return hand == Hand::Left ? 1 : -1;
}
constexpr std::size_t indexOf(Hand hand) {
  return hand == Hand::Left ? 0 : 1;
}
constexpr Hand otherOf(Hand hand) {
  return hand == Hand::Left ? Hand::Right : Hand::Left;
}

enum class Bone {
  Pelvis,
  Loin,
  Chest,
  Neck,
  Head,
  LeftThigh,
  LeftShank,
  LeftFoot,
  LeftUpperArm,
  LeftForearm,
  LeftHand,
  RightThigh,
  RightShank,
  RightFoot,
  RightUpperArm,
  RightForearm,
  RightHand,
};
inline constexpr std::size_t kBoneCount = 17;
enum class Limb { Thigh, Shank, Foot, UpperArm, Forearm, Hand };
constexpr Bone boneOf(Hand hand, Limb limb) {
  return static_cast<Bone>(5 + (hand == Hand::Left ? 0 : 6) + static_cast<int>(limb));
}
/// "pelvis", "left.thigh" …
std::string nameOf(Bone bone);
std::optional<Bone> boneNamed(std::string_view name);

/// Lengths as fractions of stature.
namespace proportion {
inline constexpr double kAnkleHeight = .039, kShank = .246, kThigh = .245;                // winter-segments
inline constexpr double kUpperArm = .186, kForearm = .146, kHand = .108;                  // winter-segments
inline constexpr double kHipHeight = .530, kShoulderHeight = .818;                        // winter-segments
// Our own split of hip height to shoulder height, and joint places chosen so that the flesh around
// them ends at the published breadths.
inline constexpr double kPelvis = .060, kLoin = .105, kChest = .153, kShoulderAboveLoin = .123;
inline constexpr double kNeck = .050, kHalfHips = .050, kHalfShoulders = .108;
}  // namespace proportion

/// Mass fractions (winter-masses). Limbs are of one side.
namespace mass {
inline constexpr double kTrunk = .497, kHeadAndNeck = .081, kUpperArm = .028, kForearm = .016, kHand = .006;
inline constexpr double kThigh = .100, kShank = .0465, kFoot = .0145;
/// Centres of mass from the near end of the bone.
inline constexpr double kArmAt = .436, kForearmAt = .430, kLegAt = .433;
}  // namespace mass

/// How far a joint goes in people without complaints, in degrees.
struct JointRange {
  std::string_view joint;
  double lowest, highest;
  std::string_view source;  ///< id in rules/sources, or "common practice, no source"
};
/// All ranges; `joint` is a key of JointAngles (joint_angles.h).
const std::array<JointRange, 18>& jointRanges();
/// nullptr when there is none of that name.
const JointRange* rangeOf(std::string_view joint);

}  // namespace stile::movement
