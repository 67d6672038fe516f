#include "movement/joint_angles.h"

#include <algorithm>
#include <cmath>

namespace stile::movement {
namespace {

double arcSine(double value) {
  return toDegrees(std::asin(std::clamp(value, -1.0, 1.0)));
}

struct Bend {
  double flexion, sideBend, rotation;
};

/// Side-bend, then flexion, then rotation, as poseBody() applies them.
Bend bendOf(const Frame& lower, const Frame& upper) {
  const Frame turn = inside(lower, upper);
  const double flexion = arcSine(turn.z.x), sideBend = toDegrees(std::atan2(turn.z.y, turn.z.z));
  const Frame rest = inside(aboutX(-sideBend) * aboutY(flexion), turn);
  return {flexion, sideBend, toDegrees(std::atan2(rest.x.y, rest.x.x))};
}

struct HipAngles {
  double flexion, abduction, rotation;
};

HipAngles hipOf(const Frame& pelvis, const Frame& thigh, Hand hand) {
  const Frame turn = inside(pelvis, thigh);
  const Vector down = -turn.z;
  const double side = signOf(hand), abduction = arcSine(down.y) * side;
  double flexion = toDegrees(std::atan2(down.x, -down.z));
  if (flexion < -100) flexion += 360;  // a thigh drawn past the trunk
  const Frame rest = inside(aboutY(-flexion) * aboutX(side * abduction), turn);
  return {flexion, abduction, toDegrees(std::atan2(rest.x.y, rest.x.x)) * -side};
}

LimbAngles limbsOf(const Body& body, Hand hand) {
  LimbAngles angles;
  const Frame &thigh = body.of(hand, Limb::Thigh).frame, &shank = body.of(hand, Limb::Shank).frame;
  const HipAngles hip = hipOf(body[Bone::Pelvis].frame, thigh, hand);
  angles.hipFlexion = hip.flexion;
  angles.hipAbduction = hip.abduction;
  angles.hipRotation = hip.rotation;
  angles.kneeFlexion = angleBetween(thigh.z, shank.z);
  angles.ankleDorsiflexion = arcSine(dot(body.of(hand, Limb::Foot).frame.x, shank.z));
  const Frame &upper = body.of(hand, Limb::UpperArm).frame, &fore = body.of(hand, Limb::Forearm).frame;
  const Vector down = inside(body[Bone::Chest].frame, -upper.z);
  angles.shoulderElevation = angleBetween(down, {0, 0, -1});
  if (angles.shoulderElevation > 8)
    angles.shoulderPlane = toDegrees(std::atan2(down.x, down.y * signOf(hand)));
  angles.shoulderExtension =
      down.z < 0 ? std::max(0.0, toDegrees(std::atan2(-down.x, -down.z))) : std::max(0.0, arcSine(-down.x));
  const double plane = angles.shoulderPlane < -90 ? angles.shoulderPlane + 360 : angles.shoulderPlane;
  if (angles.shoulderElevation > 30) angles.shoulderHorizontalAdduction = std::max(0.0, plane);
  angles.elbowFlexion = angleBetween(upper.z, fore.z);
  const PlacedHand& placed = body.hands[indexOf(hand)];
  const double bend = angleBetween(placed.fingers, -fore.z);
  angles.wristFlexion = dot(-fore.z, placed.palm) < 0 ? bend : -bend;
  return angles;
}

class Examiner {
 public:
  explicit Examiner(const Body& body) : body_(body), angles_(anglesOf(body)) {}

  std::vector<std::string> run() {
    test("trunkFlexion", "trunk flexion", angles_.trunkFlexion);
    test("trunkSideBend", "trunk side-bend", angles_.trunkSideBend);
    test("trunkRotation", "trunk rotation", angles_.trunkRotation);
    test("neckFlexion", "neck flexion", angles_.neckFlexion);
    test("neckSideBend", "neck side-bend", angles_.neckSideBend);
    test("neckRotation", "neck rotation", angles_.neckRotation);
    for (const Hand hand : kHands) limbs(hand);
    floor();
    return std::move(found_);
  }

 private:
  void test(const char* joint, const std::string& words, double value) {
    const JointRange* range = rangeOf(joint);
    constexpr double kRounding = .5;
    if (value >= range->lowest - kRounding && value <= range->highest + kRounding) return;
    found_.push_back(words + " of " + whole(value) + " degrees is outside its range of " +
                     whole(range->lowest) + " to " + whole(range->highest));
  }

  void limbs(Hand hand) {
    const std::string side = hand == Hand::Left ? "left " : "right ";
    const std::size_t i = indexOf(hand);
    const LimbAngles& limb = angles_.limbs[i];
    test("hipFlexion", side + "hip flexion", limb.hipFlexion);
    test("hipAbduction", side + "hip abduction", limb.hipAbduction);
    // Rotation cannot be told from abduction when the thigh lies along the axis of flexion.
    if (std::abs(limb.hipAbduction) < 60) test("hipRotation", side + "hip rotation", limb.hipRotation);
    test("kneeFlexion", side + "knee flexion", limb.kneeFlexion);
    test(body_.isPlanted[i] ? "ankleDorsiflexionStanding" : "ankleDorsiflexion", side + "ankle dorsiflexion",
         limb.ankleDorsiflexion);
    test("shoulderElevation", side + "shoulder elevation", limb.shoulderElevation);
    test("shoulderExtension", side + "shoulder extension",
         limb.shoulderElevation < 90 ? limb.shoulderExtension : 0);
    test("shoulderHorizontalAdduction", side + "shoulder horizontal adduction",
         limb.shoulderHorizontalAdduction);
    test("elbowFlexion", side + "elbow flexion", limb.elbowFlexion);
    constexpr double kReached = .004;
    if (body_.legMiss[i] > kReached)
      found_.push_back("the " + side + "foot is " + whole(body_.legMiss[i] * 1000) + " mm out of reach");
    if (body_.armMiss[i] > kReached)
      found_.push_back("the " + side + "hand is " + whole(body_.armMiss[i] * 1000) + " mm out of reach");
  }

  void floor() {
    for (std::size_t i = 0; i < kBoneCount; ++i) {
      const Bone bone = static_cast<Bone>(i);
      const double lowest = std::min(body_.bones[i].from.z, body_.bones[i].to.z);
      if (lowest < -.035)
        found_.push_back(nameOf(bone) + " is " + whole(-lowest * 100) + " cm below the floor");
    }
  }

  static std::string whole(double value) { return std::to_string(std::lround(value)); }

  const Body& body_;
  JointAngles angles_;
  std::vector<std::string> found_;
};

}  // namespace

JointAngles anglesOf(const Body& body) {
  JointAngles angles;
  const Bend loin = bendOf(body[Bone::Pelvis].frame, body[Bone::Loin].frame);
  const Bend chest = bendOf(body[Bone::Loin].frame, body[Bone::Chest].frame);
  angles.loinPitch = loin.flexion;
  angles.trunkFlexion = loin.flexion + chest.flexion;
  angles.trunkSideBend = loin.sideBend + chest.sideBend;
  angles.trunkRotation = loin.rotation + chest.rotation;
  const Bend neck = bendOf(body[Bone::Chest].frame, body[Bone::Neck].frame);
  const Bend head = bendOf(body[Bone::Neck].frame, body[Bone::Head].frame);
  angles.neckFlexion = neck.flexion + head.flexion;
  angles.neckSideBend = neck.sideBend + head.sideBend;
  angles.neckRotation = neck.rotation + head.rotation;
  for (const Hand hand : kHands) angles.limbs[indexOf(hand)] = limbsOf(body, hand);
  return angles;
}

double cautiousHipFlexion(const Body& body, Hand hand) {
  const Frame& thigh = body.of(hand, Limb::Thigh).frame;
  return std::max(hipOf(body[Bone::Pelvis].frame, thigh, hand).flexion,
                  hipOf(body[Bone::Loin].frame, thigh, hand).flexion);
}

std::vector<std::string> impossibilities(const Body& body) {
  return Examiner(body).run();
}

}  // namespace stile::movement
