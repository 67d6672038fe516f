#include "movement/pose_reader.h"

#include <cstdlib>

#include "movement/body.h"
#include "movement/posing.h"

namespace stile::movement {
namespace {

using json::Node;
using json::ObjectReader;

void takeNumber(ObjectReader& reader, const char* key, double& into) {
  const auto node = reader.find(key);
  if (!node) return;
  if (node->isNumber())
    into = numberOf(*node);
  else
    reader.issue(*node, std::string("\"") + key + "\" must be a number");
}

void takeDirection(ObjectReader& reader, const char* key, Direction& into) {
  const auto node = reader.find(key);
  if (!node) return;
  if (!node->isString()) {
    into.along.clear();
    readVector(*node, into.world, reader);
    return;
  }
  const std::string words = node->string();
  const auto colon = words.find(':');
  if (!boneNamed(std::string_view(words).substr(0, colon)) || colon == std::string::npos ||
      std::string("xyz").find(words.back()) == std::string::npos) {
    reader.issue(*node, "\"" + words + "\" is no axis of a bone", "write it like left.thigh:-z");
    return;
  }
  into.along = words;
}

bool isAnchor(const std::string& words) {
  return anchorOf(poseBody(Pose{}), words).has_value();
}

void readFoot(ObjectReader& reader, Node node, Leg& leg, double heading) {
  FootContact foot = leg.foot.value_or(FootContact{{}, heading, 0, 0});
  if (readVector(node, foot.at, reader)) leg.foot = foot;
}

void readLeg(Node node, const std::string& subject, double heading, Leg& leg, base::Issues& issues) {
  ObjectReader reader(node, subject, issues);
  if (const auto foot = reader.find("foot")) readFoot(reader, *foot, leg, heading);
  double raise = 0, pitch = 0, footHeading = heading;
  if (leg.foot) footHeading = leg.foot->heading, raise = leg.foot->raise, pitch = leg.foot->pitch;
  takeNumber(reader, "heading", footHeading);
  takeNumber(reader, "raise", raise);
  takeNumber(reader, "pitch", pitch);
  if (leg.foot) leg.foot->heading = footHeading, leg.foot->raise = raise, leg.foot->pitch = pitch;
  if (const auto hip = reader.find("hip")) {
    Vector angles;
    if (readVector(*hip, angles, reader)) {
      leg.foot.reset();
      leg.hipFlexion = angles.x, leg.hipAbduction = angles.y, leg.hipRotation = angles.z;
    }
  }
  takeNumber(reader, "knee", leg.knee);
  takeNumber(reader, "ankle", leg.ankle);
  takeNumber(reader, "leastKnee", leg.leastKnee);
  if (const auto pole = reader.find("pole")) {
    Vector direction;
    if (readVector(*pole, direction, reader)) leg.pole = direction;
  }
  if (reader.find("on")) leg.on = reader.string("on");
  reader.finish();
}

void readArm(Node node, const std::string& subject, const Presets& presets, Arm& arm, base::Issues& issues) {
  ObjectReader reader(node, subject, issues);
  if (const std::string from = reader.string("from"); !from.empty()) {
    const auto preset = presets.arms.find(from);
    if (preset == presets.arms.end())
      reader.issue(node, "there is no arm position \"" + from + "\"",
                   "name one of rules/movement/presets.json");
    else
      arm = preset->second;
  }
  if (const auto up = reader.find("up")) {
    Vector angles;
    if (readVector(*up, angles, reader)) {
      arm.reaches = false;
      arm.elevation = angles.x, arm.plane = angles.y, arm.rotation = angles.z;
      if (!reader.find("on")) arm.on.clear();
    }
  }
  if (const auto to = reader.find("to")) {
    arm.reaches = true;
    arm.to.clear();
    if (!to->isString())
      readVector(*to, arm.point, reader);
    else if (isAnchor(to->string()))
      arm.to = to->string();
    else
      reader.issue(*to, "\"" + to->string() + "\" is no place on the body",
                   "write it like left.thigh:0.5:front");
  }
  if (const auto offset = reader.find("offset")) readVector(*offset, arm.offset, reader);
  takeNumber(reader, "elbow", arm.elbow);
  takeNumber(reader, "pronation", arm.pronation);
  takeNumber(reader, "wrist", arm.wrist);
  takeDirection(reader, "fingers", arm.fingers);
  takeDirection(reader, "palm", arm.palm);
  if (const auto pole = reader.find("pole")) {
    Vector direction;
    if (readVector(*pole, direction, reader)) arm.pole = direction;
  }
  if (const auto grip = reader.find("grip")) {
    const std::string words = reader.string("grip");
    if (words != "flat" && words != "fist" && words != "wrist")
      reader.issue(*grip, "\"" + words + "\" is no grip", "use flat, fist or wrist");
    arm.grip = words == "fist" ? Grip::Fist : words == "wrist" ? Grip::Wrist : Grip::Flat;
  }
  if (reader.find("on")) arm.on = reader.string("on");
  reader.finish();
}

void readTurns(ObjectReader& reader, const char* key, double& flexion, double& sideBend, double& rotation,
               base::Issues& issues) {
  const auto node = reader.find(key);
  if (!node) return;
  ObjectReader part(*node, reader.subject() + ", " + key, issues);
  takeNumber(part, "flex", flexion);
  takeNumber(part, "sideBend", sideBend);
  takeNumber(part, "rotate", rotation);
  part.finish();
}

void readPelvis(ObjectReader& reader, Pose& pose, base::Issues& issues) {
  const auto node = reader.find("pelvis");
  if (!node) return;
  ObjectReader part(*node, reader.subject() + ", pelvis", issues);
  if (const auto at = part.find("at")) {
    readVector(*at, pose.at, part);
    pose.hasHeight = at->size() == 3;
  }
  takeNumber(part, "heading", pose.heading);
  takeNumber(part, "pitch", pose.pitch);
  takeNumber(part, "roll", pose.roll);
  takeNumber(part, "turn", pose.turn);
  part.finish();
}

}  // namespace

double numberOf(Node node) {
  return std::strtod(node.numberText().c_str(), nullptr);
}

bool readVector(Node node, Vector& into, ObjectReader& reader) {
  const bool fits = node.isArray() && (node.size() == 2 || node.size() == 3);
  for (std::size_t i = 0; fits && i < node.size(); ++i) {
    if (!node.at(i).isNumber()) {
      reader.issue(node.at(i), "this must be a number");
      return false;
    }
  }
  if (!fits) {
    reader.issue(node, "two or three numbers belong here", "write [x, y] or [x, y, z]");
    return false;
  }
  into = {numberOf(node.at(0)), numberOf(node.at(1)), node.size() == 3 ? numberOf(node.at(2)) : 0};
  return true;
}

void readPose(Node node, const std::string& subject, const Presets& presets, Pose& pose,
              base::Issues& issues) {
  ObjectReader reader(node, subject, issues);
  if (const std::string from = reader.string("from"); !from.empty()) {
    const auto preset = presets.poses.find(from);
    if (preset == presets.poses.end())
      reader.issue(node, "there is no pose \"" + from + "\" to start from",
                   "name one of rules/movement/presets.json");
    else
      pose = preset->second;
  }
  readPelvis(reader, pose, issues);
  readTurns(reader, "trunk", pose.trunkFlexion, pose.trunkSideBend, pose.trunkRotation, issues);
  readTurns(reader, "neck", pose.neckFlexion, pose.neckSideBend, pose.neckRotation, issues);
  if (const auto seated = reader.boolean("seated")) pose.isSeated = *seated;
  const auto leg = [&](const char* key, Leg& into, double heading) {
    if (const auto at = reader.find(key)) readLeg(*at, subject + ", " + key, heading, into, issues);
  };
  const auto arm = [&](const char* key, Arm& into) {
    if (const auto at = reader.find(key)) readArm(*at, subject + ", " + key, presets, into, issues);
  };
  if (reader.find("bothLegs")) {
    leg("bothLegs", pose.legs[0], pose.heading);
    Leg right = mirroredLeg(pose.legs[1]);
    leg("bothLegs", right, -pose.heading);
    pose.legs[1] = mirroredLeg(right);
  }
  leg("leftLeg", pose.legs[0], pose.heading);
  leg("rightLeg", pose.legs[1], pose.heading);
  if (reader.find("bothArms")) {
    arm("bothArms", pose.arms[0]);
    Arm right = mirroredArm(pose.arms[1]);
    arm("bothArms", right);
    pose.arms[1] = mirroredArm(right);
  }
  // A preset is written for the left; named for the right arm it is taken in the mirror.
  if (const auto at = reader.find("leftArm"))
    readArm(*at, subject + ", leftArm", presets, pose.arms[0], issues);
  if (const auto at = reader.find("rightArm")) {
    Presets right = presets;
    for (auto& [name, preset] : right.arms) preset = mirroredArm(preset);
    readArm(*at, subject + ", rightArm", right, pose.arms[1], issues);
  }
  reader.finish();
}

Presets readPresets(const std::string& text, const std::string& file, base::Issues& issues) {
  Presets presets;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return presets;
  ObjectReader reader(document->root(), file, issues);
  if (const auto arms = reader.find("arms")) {
    for (std::size_t i = 0; i < arms->size(); ++i) {
      Arm arm;
      readArm(arms->at(i), arms->keyAt(i), presets, arm, issues);
      presets.arms[arms->keyAt(i)] = arm;
    }
  }
  if (const auto poses = reader.find("poses")) {
    for (std::size_t i = 0; i < poses->size(); ++i) {
      Pose pose;
      readPose(poses->at(i), poses->keyAt(i), presets, pose, issues);
      presets.poses[poses->keyAt(i)] = pose;
    }
  }
  reader.finish();
  return presets;
}

}  // namespace stile::movement
