// Bodies on the way from one key pose to the next, and a pose in the mirror.
#include <algorithm>
#include <cmath>

#include "movement/figure.h"
#include "movement/posing.h"
#include "movement/prop.h"

namespace stile::movement {
namespace {

constexpr double H = kStature;
constexpr double kStays = .012;  // metres: a contact that moves less keeps its place

class Way {
 public:
  Way(const Body& a, const Body& b, double t) : a_(a), b_(b), t_(t) {}

  Body run() {
    body_ = t_ < .5 ? a_ : b_;
    body_.isSeated = a_.isSeated && b_.isSeated;
    body_.legMiss = body_.armMiss = {0, 0};
    root();
    for (const Hand hand : kHands) {
      leg(hand);
      arm(hand);
    }
    return body_;
  }

 private:
  Frame turned(Bone parent, Bone child) const {
    return body_[parent].frame *
           mix(inside(a_[parent].frame, a_[child].frame), inside(b_[parent].frame, b_[child].frame), t_);
  }

  /// Places a bone on its parent; its ends keep their distance from the parent's far joint.
  void carry(Bone parent, Bone child) {
    const Frame frame = turned(parent, child);
    const auto offset = [&](const Body& body) {
      return inside(body[parent].frame, body[child].from - body[parent].to);
    };
    const Vector from = body_[parent].to + body_[parent].frame * mix(offset(a_), offset(b_), t_);
    const Vector along = inside(a_[child].frame, a_[child].to - a_[child].from);
    body_[child] = {frame, from, from + frame * along};
  }

  void root() {
    const PlacedBone &from = a_[Bone::Pelvis], &to = b_[Bone::Pelvis];
    const Frame frame = mix(from.frame, to.frame, t_);
    Vector at = mix(from.from, to.from, t_);
    // Planted legs must still reach their feet: where straight lines would pull them off, the pelvis sinks.
    for (const Hand hand : kHands) {
      if (!stays(hand)) continue;
      const Vector hip = at + frame * Vector{0, signOf(hand) * proportion::kHalfHips * H, 0};
      const Vector foot = mix(ankle(a_, hand), ankle(b_, hand), t_);
      const double longest = std::max(reach(a_, hand), reach(b_, hand));
      const double dx = hip.x - foot.x, dy = hip.y - foot.y;
      const double highest = foot.z + std::sqrt(std::max(0.0, longest * longest - dx * dx - dy * dy));
      if (hip.z > highest) at.z -= hip.z - highest;
    }
    const Vector along = inside(from.frame, from.to - from.from);
    body_[Bone::Pelvis] = {frame, at, at + frame * along};
    carry(Bone::Pelvis, Bone::Loin);
    carry(Bone::Loin, Bone::Chest);
    carry(Bone::Chest, Bone::Neck);
    carry(Bone::Neck, Bone::Head);
  }

  static Vector ankle(const Body& body, Hand hand) { return body.of(hand, Limb::Foot).from; }
  static double reach(const Body& body, Hand hand) {
    return length(body.of(hand, Limb::Thigh).from - ankle(body, hand));
  }
  bool stays(Hand hand) const {
    const std::size_t i = indexOf(hand);
    return a_.isPlanted[i] && b_.isPlanted[i] &&
           length(a_.of(hand, Limb::Foot).to - b_.of(hand, Limb::Foot).to) < .15;
  }

  void leg(Hand hand) {
    const Bone thigh = boneOf(hand, Limb::Thigh), shank = boneOf(hand, Limb::Shank),
               foot = boneOf(hand, Limb::Foot);
    carry(Bone::Pelvis, thigh);
    const Vector hip = body_[Bone::Pelvis].from +
                       body_[Bone::Pelvis].frame * Vector{0, signOf(hand) * proportion::kHalfHips * H, 0};
    body_[thigh] = {body_[thigh].frame, hip, hip - body_[thigh].frame.z * (proportion::kThigh * H)};
    carry(thigh, shank);
    carry(shank, foot);
    if (!stays(hand)) {
      body_.toeBend[indexOf(hand)] = a_.toeBend[indexOf(hand)] * (1 - t_) + b_.toeBend[indexOf(hand)] * t_;
      return;
    }
    const Frame planted = mix(a_[foot].frame, b_[foot].frame, t_);
    const Vector target = mix(a_[foot].from, b_[foot].from, t_);
    // The pole bends the knee the way the carried thigh already points.
    const Vector pole = body_[thigh].frame.x + body_[shank].frame.x * .3;
    place(thigh, shank, solveTwoBone(hip, target, proportion::kThigh * H, proportion::kShank * H, pole), hip,
          1);
    body_[foot] = {planted, body_[shank].to, body_[shank].to + planted * Vector{.11 * H, 0, -.03 * H}};
    body_.toeBend[indexOf(hand)] = a_.toeBend[indexOf(hand)] * (1 - t_) + b_.toeBend[indexOf(hand)] * t_;
  }

  void place(Bone near, Bone far, const TwoBone& solved, Vector root, double bends) {
    const Vector left = cross(-solved.axis, solved.bendsTo * bends);
    const auto frame = [&](Vector direction) {
      const Vector z = -direction, y = unit(across(left, z));
      return Frame{cross(y, z), y, z};
    };
    body_[near] = {frame(unit(solved.joint - root)), root, solved.joint};
    body_[far] = {frame(unit(solved.end - solved.joint)), solved.joint, solved.end};
  }

  void arm(Hand hand) {
    const Bone upper = boneOf(hand, Limb::UpperArm), fore = boneOf(hand, Limb::Forearm),
               palm = boneOf(hand, Limb::Hand);
    carry(Bone::Chest, upper);
    carry(upper, fore);
    carry(fore, palm);
    if (length(a_[palm].to - b_[palm].to) < kStays) {
      const Vector root = body_[upper].from;
      const Vector pole = -(body_[upper].frame.x + body_[fore].frame.x * .3);
      place(upper, fore,
            solveTwoBone(root, mix(a_[palm].from, b_[palm].from, t_), proportion::kUpperArm * H,
                         proportion::kForearm * H, pole),
            root, -1);
      const Frame frame = mix(a_[palm].frame, b_[palm].frame, t_);
      body_[palm] = {frame, body_[fore].to, body_[fore].to - frame.z * (proportion::kHand * H)};
    }
    PlacedHand& placed = body_.hands[indexOf(hand)];
    placed.fingers = -body_[palm].frame.z;
    placed.palm = body_[palm].frame.y;
  }

  const Body& a_;
  const Body& b_;
  double t_;
  Body body_;
};

Vector mirrored(Vector v) {
  return {v.x, -v.y, v.z};
}

std::string mirroredWords(std::string words) {
  const auto swap = [&](std::size_t at, std::string_view one, std::string_view other) {
    if (words.compare(at, one.size(), one) == 0) {
      words.replace(at, one.size(), other);
      return true;
    }
    return words.compare(at, other.size(), other) == 0 ? (words.replace(at, other.size(), one), true) : false;
  };
  swap(0, "left.", "right.");
  const auto last = words.rfind(':');
  if (last != std::string::npos && last + 1 < words.size()) swap(last + 1, "left", "right");
  return words;
}

Direction mirrored(const Direction& direction) {
  Direction result{mirrored(direction.world), mirroredWords(direction.along)};
  // A bone's left axis becomes the other bone's right axis.
  if (!result.along.empty() && result.along.back() == 'y') {
    const auto colon = result.along.find(':');
    result.along = result.along[colon + 1] == '-' ? result.along.substr(0, colon) + ":y"
                                                  : result.along.substr(0, colon) + ":-y";
  }
  return result;
}

Leg mirrored(Leg leg) {
  if (leg.foot) {
    leg.foot->at = mirrored(leg.foot->at);
    leg.foot->heading = -leg.foot->heading;
  }
  if (leg.pole) leg.pole = mirrored(*leg.pole);
  return leg;
}

Arm mirrored(Arm arm) {
  arm.to = mirroredWords(arm.to);
  arm.point = mirrored(arm.point);
  arm.offset = mirrored(arm.offset);
  arm.fingers = mirrored(arm.fingers);
  arm.palm = mirrored(arm.palm);
  if (arm.pole) arm.pole = mirrored(*arm.pole);
  return arm;
}

}  // namespace

Body between(const Body& a, const Body& b, double t) {
  return Way(a, b, t).run();
}

namespace {

/// A key pose part of the way from the rest. A foot that is lifted is off the floor however low, and a hand
/// leans on something only if it did so at rest.
Body smaller(const Body& rest, const Body& whole, double share) {
  Body body = between(rest, whole, share);
  for (std::size_t i = 0; i < 2; ++i) {
    body.isPlanted[i] = rest.isPlanted[i] && whole.isPlanted[i];
    if (rest.hands[i].on != whole.hands[i].on) body.hands[i].on.clear();
  }
  return body;
}

/// The hips of a key pose, only part of the way down from the rest.
Vector hipsOf(const Form& form, const Pose& pose) {
  Vector hips = poseBody(pose)[Bone::Pelvis].from;
  const double rest = poseBody(*form.rest)[Bone::Pelvis].from.z;
  hips.z = rest + (hips.z - rest) * form.share;
  return hips;
}

/// How much higher than written a form done smaller sits, metres.
double seatRise(const Form& form) {
  if (!form.isByPelvis || !form.rest || form.share >= 1) return 0;
  for (const Pose& pose : form.poses)
    if (pose.isSeated) return hipsOf(form, pose).z - poseBody(pose)[Bone::Pelvis].from.z;
  return 0;
}

/// A key pose with the hips part of the way down and the trunk leaning less. Legs are solved anew; a hand on
/// the chair rises with it.
Pose smallerByPelvis(const Form& form, const Pose& pose, double rise) {
  Pose result = pose;
  result.at = hipsOf(form, pose);
  result.hasHeight = true;
  for (double Pose::*angle :
       {&Pose::pitch, &Pose::roll, &Pose::trunkFlexion, &Pose::trunkSideBend, &Pose::trunkRotation,
        &Pose::neckFlexion, &Pose::neckSideBend, &Pose::neckRotation})
    result.*angle = (*form.rest).*angle * (1 - form.share) + pose.*angle * form.share;
  for (Arm& arm : result.arms)
    if (arm.reaches && arm.to.empty() && arm.on == "chair") arm.point.z += rise;
  return result;
}

}  // namespace

std::vector<Prop> propsOf(const Form& form) {
  std::vector<Prop> props = form.props;
  const double rise = seatRise(form);
  for (Prop& prop : props)
    if (isSeat(prop)) prop.seat += rise;
  return props;
}

std::vector<Body> bodiesOf(const Form& form) {
  std::vector<Body> bodies;
  if (form.isByPelvis && form.rest && form.share < 1) {
    const double rise = seatRise(form);
    for (const Pose& pose : form.poses) bodies.push_back(poseBody(smallerByPelvis(form, pose, rise)));
    return bodies;
  }
  for (const Pose& pose : form.poses) bodies.push_back(poseBody(pose));
  if (form.reach < 1 && bodies.size() > 1)
    bodies.back() = between(bodies[bodies.size() - 2], bodies.back(), form.reach);
  if (form.share < 1) {
    const Body rest = form.rest ? poseBody(*form.rest) : bodies.front();
    for (std::size_t i = form.rest ? 0 : 1; i < bodies.size(); ++i)
      bodies[i] = smaller(rest, bodies[i], form.share);
  }
  return bodies;
}

Form scaled(Form form, double share) {
  form.share *= share;
  return form;
}

Leg mirroredLeg(const Leg& leg) {
  return mirrored(leg);
}
Arm mirroredArm(const Arm& arm) {
  return mirrored(arm);
}

Pose mirrored(const Pose& pose) {
  Pose result = pose;
  result.at = mirrored(pose.at);
  result.heading = -pose.heading;
  result.roll = -pose.roll;
  result.turn = -pose.turn;
  result.trunkSideBend = -pose.trunkSideBend;
  result.trunkRotation = -pose.trunkRotation;
  result.neckSideBend = -pose.neckSideBend;
  result.neckRotation = -pose.neckRotation;
  result.legs = {mirrored(pose.legs[1]), mirrored(pose.legs[0])};
  result.arms = {mirrored(pose.arms[1]), mirrored(pose.arms[0])};
  return result;
}

}  // namespace stile::movement
