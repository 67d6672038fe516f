// A pose as a clinician writes it: joint angles, and contacts that inverse kinematics will meet.
// Angles in degrees, places in metres in the world. Plain data, read by pose_reader.h.
//
// Signs: flexion, dorsiflexion, abduction (outward on either side) and internal rotation are
// positive. Trunk: side-bend and rotation are positive to the left. Pelvis: heading about the
// vertical, then pitch (positive = tipped forward; -90 = on the back, 90 = face down), then roll
// (positive = the left hip higher) and turn about the long axis of the body.
#pragma once

#include <array>
#include <optional>
#include <string>

#include "movement/skeleton.h"
#include "movement/vector.h"

namespace stile::movement {

/// A foot planted somewhere: `at` is the floor point under the ankle.
struct FootContact {
  Vector at;
  double heading = 0;
  double raise = 0;  ///< heel up about the ball of the foot
  double pitch = 0;  ///< toes up about the heel
  bool operator==(const FootContact&) const = default;
};

struct Leg {
  std::optional<FootContact> foot;  ///< if set, hip and knee are solved
  double hipFlexion = 0, hipAbduction = 0, hipRotation = 0, knee = 3, ankle = 0;
  std::optional<Vector> pole;  ///< where the knee points, in the pelvis frame
  double leastKnee = 4;        ///< bend a standing leg keeps at least
  std::string on = "floor";    ///< what the foot stands on; "" = nothing
};

enum class Grip { Flat, Fist, Wrist };

/// A direction in the world, or along an axis of a bone ("left.thigh:-z").
struct Direction {
  Vector world{1, 0, 0};
  std::string along;
};

struct Arm {
  bool reaches = false;  ///< true: the hand is brought to `to`, shoulder and elbow are solved
  double elevation = 6, plane = 0, rotation = 0;  ///< plane 0 = out to the side, 90 = forward
  double elbow = 8, pronation = 0, wrist = 0;
  std::string to;  ///< anchor on the body ("right.thigh:0.46:back"), or "" for `point`
  Vector point, offset;
  Direction fingers, palm{{0, 0, -1}, {}};
  std::optional<Vector> pole;  ///< where the elbow points, in the chest frame
  Grip grip = Grip::Flat;
  std::string on;  ///< fixed thing the hand leans on: wall, chair, counter, floor …; "" = none
};

struct Pose {
  Vector at;               ///< middle of the hip joints
  bool hasHeight = false;  ///< false: the height follows from the planted feet
  double heading = 0, pitch = 0, roll = 0, turn = 0;
  double trunkFlexion = 0, trunkSideBend = 0, trunkRotation = 0;
  double neckFlexion = 0, neckSideBend = 0, neckRotation = 0;
  std::array<Leg, 2> legs;  ///< left, right
  std::array<Arm, 2> arms;
  bool isSeated = false;  ///< the weight rests on a seat
};

}  // namespace stile::movement
