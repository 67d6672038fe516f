// Reads poses from JSON, as overlays: what a pose does not name it takes from the pose it starts from.
#pragma once

#include <map>
#include <string>

#include "base/issue.h"
#include "json/reader.h"
#include "movement/pose.h"

namespace stile::movement {

/// Poses and arm positions that figures may start from, by name. Arms are written for the left side.
struct Presets {
  std::map<std::string, Pose> poses;
  std::map<std::string, Arm> arms;
};

/// Reads numbers of one array into a vector (two or three of them).
bool readVector(json::Node node, Vector& into, json::ObjectReader& reader);
double numberOf(json::Node node);

/// Overlays `node` on `pose`. Keys: from, pelvis, trunk, neck, seated, leftLeg, rightLeg, bothLegs,
/// leftArm, rightArm, bothArms; "both" is written for the left and mirrored for the right.
void readPose(json::Node node, const std::string& subject, const Presets& presets, Pose& pose,
              base::Issues& issues);

Presets readPresets(const std::string& text, const std::string& file, base::Issues& issues);

}  // namespace stile::movement
