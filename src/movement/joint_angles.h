// The joint angles of a posed body, measured from its bones: what a goniometer would read.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "movement/body.h"

namespace stile::movement {

/// Angles of one leg and one arm, degrees.
struct LimbAngles {
  double hipFlexion = 0;    ///< thigh against pelvis; negative = extension
  double hipAbduction = 0;  ///< negative = past the midline
  double hipRotation = 0;   ///< positive = internal
  double kneeFlexion = 0;
  double ankleDorsiflexion = 0;
  double shoulderElevation = 0;  ///< upper arm against the long axis of the trunk
  double shoulderPlane =
      0;  ///< 0 = out to the side, 90 = forward, over 90 = across; 0 under 8 degrees of elevation
  double shoulderExtension = 0;  ///< upper arm behind the plane of the chest
  double shoulderHorizontalAdduction =
      0;  ///< of a raised arm: 0 out to the side, 90 straight ahead, more across the chest
  double elbowFlexion = 0;
  double wristFlexion = 0;  ///< positive = toward the palm
};

struct JointAngles {
  double trunkFlexion = 0, trunkSideBend = 0,
         trunkRotation = 0;  ///< side-bend and rotation positive to the left
  double neckFlexion = 0, neckSideBend = 0, neckRotation = 0;
  double loinPitch = 0;             ///< flexion of the loin against the pelvis
  std::array<LimbAngles, 2> limbs;  ///< left, right
};

/// Hip: flexion about the pelvis' left axis, then abduction, then rotation about the thigh (the order
/// of Grood and Suntay 1983, from memory). Shoulder: elevation in a plane (the idea of the ISB
/// recommendation, Wu et al. 2005, from memory).
JointAngles anglesOf(const Body& body);

/// Hip flexion with the trunk counted as well as the pelvis, whichever folds more: a client, and a
/// goniometer along the trunk, judge it so.
double cautiousHipFlexion(const Body& body, Hand hand);

/// Where a body goes beyond the joint ranges of the skeleton, misses a contact or sinks into the
/// floor. One plain sentence each, with the joint and the range.
std::vector<std::string> impossibilities(const Body& body);

}  // namespace stile::movement
