#include "movement/posing.h"

#include <algorithm>
#include <cmath>

namespace stile::movement {
namespace {

constexpr double H = kStature;
using namespace proportion;

/// The frame of a bone that points along `direction` and bends about `leftAxis`.
Frame frameAlong(Vector direction, Vector leftAxis) {
  const Vector z = -direction, y = unit(across(leftAxis, z));
  return {cross(y, z), y, z};
}

struct PlacedFoot {
  Frame frame;
  Vector ankle;
};

PlacedFoot placeFoot(const FootContact& foot) {
  const Frame flat = aboutZ(foot.heading) * aboutY(-foot.pitch);
  const Frame frame = flat * aboutY(foot.raise);
  const Vector toBall{.078 * H, 0, (-.039 + .010) * H};
  const Vector ball = foot.at + Vector{0, 0, kAnkleHeight * H} + flat * toBall;
  return {frame, ball - frame * toBall};
}

class Poser {
 public:
  explicit Poser(const Pose& pose) : pose_(pose) {}
  Body run();

 private:
  double standingHeight(const Frame& pelvis) const;
  void placeTrunk(const Frame& pelvis, Vector at);
  void placeLeg(Hand hand);
  void placeArm(Hand hand);
  Vector shoulderAt(Hand hand, double elevation, double plane) const;
  void placeHand(Hand hand, Vector fingers, Vector palm);
  Vector worldOf(const Direction& direction) const;
  bool leansOnOtherArm(Hand hand) const;

  const Pose& pose_;
  Body body_;
};

// The lowest height at which every planted leg still keeps its least bend.
double Poser::standingHeight(const Frame& pelvis) const {
  double best = kHipHeight * H;
  bool isFirst = true;
  for (const Hand hand : kHands) {
    const Leg& leg = pose_.legs[indexOf(hand)];
    if (!leg.foot) continue;
    const double thigh = kThigh * H, shank = kShank * H;
    const double reach =
        std::sqrt(thigh * thigh + shank * shank + 2 * thigh * shank * std::cos(toRadians(leg.leastKnee)));
    const Vector hip = pelvis * Vector{0, signOf(hand) * kHalfHips * H, 0};
    const Vector ankle = placeFoot(*leg.foot).ankle;
    const double dx = ankle.x - pose_.at.x - hip.x, dy = ankle.y - pose_.at.y - hip.y;
    const double height = ankle.z + std::sqrt(std::max(0.0, reach * reach - dx * dx - dy * dy)) - hip.z;
    best = isFirst ? height : std::min(best, height);
    isFirst = false;
  }
  return best;
}

// Two joints share each movement of the trunk: the chest turns, the loin bends (our own split).
void Poser::placeTrunk(const Frame& pelvis, Vector at) {
  const auto part = [this](double bend, double turn) {
    return aboutX(-pose_.trunkSideBend * bend) * aboutY(pose_.trunkFlexion * bend) *
           aboutZ(pose_.trunkRotation * turn);
  };
  const Frame loin = pelvis * part(.55, .2), chest = loin * part(.45, .8);
  const Vector l5 = at + pelvis * Vector{-.006 * H, 0, kPelvis * H};
  const Vector t12 = l5 + loin * Vector{.004 * H, 0, kLoin * H};
  const Vector c7 = t12 + chest * Vector{-.014 * H, 0, kChest * H};
  const Frame half =
      aboutX(-pose_.neckSideBend / 2) * aboutY(pose_.neckFlexion / 2) * aboutZ(pose_.neckRotation / 2);
  const Frame neck = chest * half, head = neck * half;
  const Vector skull = c7 + neck * Vector{.016 * H, 0, kNeck * H};
  body_[Bone::Pelvis] = {pelvis, at, l5};
  body_[Bone::Loin] = {loin, l5, t12};
  body_[Bone::Chest] = {chest, t12, c7};
  body_[Bone::Neck] = {neck, c7, skull};
  body_[Bone::Head] = {head, skull, skull + head * Vector{.010 * H, 0, .060 * H}};
}

void Poser::placeLeg(Hand hand) {
  const Leg& leg = pose_.legs[indexOf(hand)];
  const PlacedBone& pelvis = body_[Bone::Pelvis];
  const Vector hip = pelvis.from + pelvis.frame * Vector{0, signOf(hand) * kHalfHips * H, 0};
  Frame thigh, shank, foot;
  Vector knee, ankle;
  if (leg.foot) {
    const PlacedFoot placed = placeFoot(*leg.foot);
    const Vector pole = leg.pole ? pelvis.frame * *leg.pole : placed.frame.x + pelvis.frame.x * .6;
    const TwoBone solved = solveTwoBone(hip, placed.ankle, kThigh * H, kShank * H, pole);
    const Vector left = cross(-solved.axis, solved.bendsTo);
    knee = solved.joint;
    ankle = solved.end;
    thigh = frameAlong(unit(knee - hip), left);
    shank = frameAlong(unit(ankle - knee), left);
    foot = placed.frame;
    body_.legMiss[indexOf(hand)] = solved.miss;
    body_.toeBend[indexOf(hand)] = leg.foot->raise;
    body_.isPlanted[indexOf(hand)] = !leg.on.empty();
    body_.standsOn[indexOf(hand)] = leg.on;
  } else {
    const double side = signOf(hand);
    thigh = pelvis.frame * aboutY(-leg.hipFlexion) * aboutX(side * leg.hipAbduction) *
            aboutZ(-side * leg.hipRotation);
    knee = hip - thigh.z * (kThigh * H);
    shank = thigh * aboutY(leg.knee);
    ankle = knee - shank.z * (kShank * H);
    foot = shank * aboutY(-leg.ankle);
  }
  body_.of(hand, Limb::Thigh) = {thigh, hip, knee};
  body_.of(hand, Limb::Shank) = {shank, knee, ankle};
  body_.of(hand, Limb::Foot) = {foot, ankle, ankle + foot * Vector{.11 * H, 0, -.03 * H}};
}

// The shoulder girdle follows the arm: up and in above 50 degrees, forward across the body, back behind.
Vector Poser::shoulderAt(Hand hand, double elevation, double plane) const {
  double up = std::clamp((elevation - 50) / 110, 0.0, 1.0);
  up = up * up * (3 - 2 * up);
  const double share = elevation > 8 ? std::min(1.0, elevation / 80) : 0;
  const double forward = std::clamp((plane - 80) / 50, 0.0, 1.0) * share,
               back = std::clamp(-plane / 60, 0.0, 1.0) * share;
  const PlacedBone& chest = body_[Bone::Chest];
  return chest.from + chest.frame * Vector{(-.008 + .026 * forward - .016 * back) * H,
                                           signOf(hand) * (kHalfShoulders - .020 * up - .016 * forward) * H,
                                           (kShoulderAboveLoin + .034 * up) * H};
}

Vector Poser::worldOf(const Direction& direction) const {
  const auto colon = direction.along.find(':');
  if (colon == std::string::npos) return unit(direction.world);
  const auto bone = boneNamed(std::string_view(direction.along).substr(0, colon));
  if (!bone || direction.along.size() == colon + 1) return unit(direction.world);
  const Frame& frame = body_[*bone].frame;
  const char axis = direction.along.back();
  const Vector along = axis == 'x' ? frame.x : axis == 'y' ? frame.y : frame.z;
  return direction.along[colon + 1] == '-' ? -along : along;
}

void Poser::placeHand(Hand hand, Vector fingers, Vector palm) {
  PlacedHand& placed = body_.hands[indexOf(hand)];
  const Arm& arm = pose_.arms[indexOf(hand)];
  placed = {fingers, palm, arm.grip, arm.on};
  const Vector wrist = body_.of(hand, Limb::Forearm).to;
  body_.of(hand, Limb::Hand) = {frameAlong(fingers, palm), wrist, wrist + fingers * (kHand * H)};
}

void Poser::placeArm(Hand hand) {
  const Arm& arm = pose_.arms[indexOf(hand)];
  const Frame chest = body_[Bone::Chest].frame;
  const double side = signOf(hand);
  if (!arm.reaches) {
    const Vector shoulder = shoulderAt(hand, arm.elevation, arm.plane);
    const Frame upper = chest * aboutZ(-side * arm.plane) * aboutX(side * arm.elevation) *
                        aboutZ(side * arm.plane - side * arm.rotation);
    const Vector elbow = shoulder - upper.z * (kUpperArm * H);
    const Frame fore = upper * aboutY(-arm.elbow);
    body_.of(hand, Limb::UpperArm) = {upper, shoulder, elbow};
    body_.of(hand, Limb::Forearm) = {fore, elbow, elbow - fore.z * (kForearm * H)};
    const Frame turned = fore * aboutZ(-side * arm.pronation) * aboutX(-side * arm.wrist);
    placeHand(hand, -turned.z, turned.y * -side);
    return;
  }
  const Vector fingers = worldOf(arm.fingers), palm = unit(across(worldOf(arm.palm), fingers));
  const Vector point =
      (arm.to.empty() ? arm.point : anchorOf(body_, arm.to).value_or(arm.point)) + arm.offset;
  const double hold = arm.grip == Grip::Flat ? .052 : arm.grip == Grip::Fist ? .040 : 0;
  const Vector wrist = point - fingers * (hold * H) - palm * (hold > 0 ? .014 * H : 0);
  const Vector pole = chest * arm.pole.value_or(Vector{-.5, .6 * side, -.8});
  double elevation = arm.elevation, plane = arm.plane;
  Vector give;
  TwoBone solved;
  // The girdle moves with the arm and the arm with the girdle: a few rounds settle both. What is
  // then still out of reach is met by at most 3 % of stature of protraction.
  for (int round = 0; round < 6; ++round) {
    const Vector shoulder = shoulderAt(hand, elevation, plane) + give;
    solved = solveTwoBone(shoulder, wrist, kUpperArm * H, kForearm * H, pole);
    if (solved.miss > 0) {
      const double more = std::min(solved.miss + .004, .030 * H - length(give));
      give = give + solved.axis * std::max(0.0, more);
    }
    const Vector left = cross(-solved.axis, -solved.bendsTo);
    const Frame upper = frameAlong(unit(solved.joint - shoulder), left);
    body_.of(hand, Limb::UpperArm) = {upper, shoulder, solved.joint};
    body_.of(hand, Limb::Forearm) = {frameAlong(unit(solved.end - solved.joint), left), solved.joint,
                                     solved.end};
    const Vector down = inside(chest, -upper.z);
    elevation = angleBetween(down, {0, 0, -1});
    plane = elevation > 8 ? toDegrees(std::atan2(down.x, down.y * side)) : 0;
  }
  body_.armMiss[indexOf(hand)] = solved.miss;
  placeHand(hand, fingers, palm);
}

bool Poser::leansOnOtherArm(Hand hand) const {
  const std::string& to = pose_.arms[indexOf(hand)].to;
  return to.find("Arm") != std::string::npos || to.find("forearm") != std::string::npos ||
         to.find("hand") != std::string::npos;
}

Body Poser::run() {
  const Frame pelvis = aboutZ(pose_.heading) * aboutY(pose_.pitch) * aboutX(pose_.roll) * aboutZ(pose_.turn);
  Vector at = pose_.at;
  if (!pose_.hasHeight) at.z = standingHeight(pelvis);
  body_.isSeated = pose_.isSeated;
  placeTrunk(pelvis, at);
  for (const Hand hand : kHands) placeLeg(hand);
  // An arm that holds the other one comes last.
  const bool leftLast = leansOnOtherArm(Hand::Left);
  placeArm(leftLast ? Hand::Right : Hand::Left);
  placeArm(leftLast ? Hand::Left : Hand::Right);
  return body_;
}

}  // namespace

TwoBone solveTwoBone(Vector root, Vector target, double near, double far, Vector pole, double leastBend) {
  const Vector span = target - root;
  const double distance = length(span);
  const double furthest =
      std::sqrt(near * near + far * far + 2 * near * far * std::cos(toRadians(leastBend)));
  const double reached = std::clamp(distance, std::abs(near - far) + 1e-4, furthest);
  TwoBone result;
  result.axis = unit(span);
  result.bendsTo = unit(across(pole, result.axis));
  const double along = (near * near - far * far + reached * reached) / (2 * reached);
  const double off = std::sqrt(std::max(0.0, near * near - along * along));
  result.joint = root + result.axis * along + result.bendsTo * off;
  result.end = root + result.axis * reached;
  result.miss = distance > furthest + 1e-6 ? distance - furthest : 0;
  return result;
}

Body poseBody(const Pose& pose) {
  return Poser(pose).run();
}

}  // namespace stile::movement
