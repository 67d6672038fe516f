// From a written pose to a posed body: forward kinematics for angles, two-bone inverse kinematics
// for contacts. Bones are never stretched; a contact out of reach is recorded as a miss.
#pragma once

#include "base/issue.h"
#include "movement/body.h"

namespace stile::movement {

/// Where two bones meet their target.
struct TwoBone {
  Vector joint, end;
  Vector bendsTo;   ///< direction in which the joint stands off the line, length 1
  Vector axis;      ///< from the root to the target, length 1
  double miss = 0;  ///< metres by which the target is out of reach
};

/// Solves a chain of lengths `near` and `far` from `root` toward `target`, its joint on the side of
/// `pole`, never straighter than `leastBend` degrees. Closed form by the law of cosines.
TwoBone solveTwoBone(Vector root, Vector target, double near, double far, Vector pole, double leastBend = 1);

/// Anchors or directions that name no bone leave the hand at its written point.
Body poseBody(const Pose& pose);

/// The body a fraction `t` of the way from one key pose to another: feet and hands that stay where
/// they are keep their place, everything else turns the shortest way.
Body between(const Body& a, const Body& b, double t);

/// A limb, or the whole pose, seen in a mirror: left and right exchanged.
Leg mirroredLeg(const Leg& leg);
Arm mirroredArm(const Arm& arm);
Pose mirrored(const Pose& pose);

}  // namespace stile::movement
