// The skeleton against published tables.
#include "movement/skeleton.h"

#include <catch2/catch.hpp>
#include <string>

#include "movement/joint_angles.h"
#include "movement/posing.h"

using namespace stile::movement;

namespace {

/// Standing straight: both feet under the hips, knees almost straight.
Body standing() {
  Pose pose;
  for (const Hand hand : kHands) {
    Leg& leg = pose.legs[indexOf(hand)];
    leg.foot = FootContact{{0, signOf(hand) * proportion::kHalfHips * kStature, 0}, 0, 0, 0};
    leg.leastKnee = 0;
  }
  return poseBody(pose);
}

double lengthOf(const PlacedBone& bone) {
  return length(bone.to - bone.from) / kStature;
}

}  // namespace

TEST_CASE("Bones of a posed body have the published lengths") {
  // Drillis and Contini 1966, in Winter, Biomechanics, fig. 4.1: fractions of stature (second-hand).
  const Body body = standing();
  for (const Hand hand : kHands) {
    CHECK(lengthOf(body.of(hand, Limb::Thigh)) == Approx(.245).margin(1e-6));
    CHECK(lengthOf(body.of(hand, Limb::Shank)) == Approx(.246).margin(1e-6));
    CHECK(lengthOf(body.of(hand, Limb::UpperArm)) == Approx(.186).margin(1e-6));
    CHECK(lengthOf(body.of(hand, Limb::Forearm)) == Approx(.146).margin(1e-6));
    CHECK(lengthOf(body.of(hand, Limb::Hand)) == Approx(.108).margin(1e-6));
    CHECK(body.of(hand, Limb::Shank).from.z / kStature == Approx(.285).margin(.001));
    CHECK(body.of(hand, Limb::Thigh).from.z / kStature == Approx(.530).margin(.001));
    CHECK(body.of(hand, Limb::UpperArm).from.z / kStature == Approx(.818).margin(.002));
    CHECK(body.of(hand, Limb::Foot).from.z / kStature == Approx(.039).margin(1e-4));
  }
}

TEST_CASE("The masses of all parts add up to one body") {
  // Winter's anthropometric table (after Dempster), read in a university hand-out.
  const double limbs =
      mass::kUpperArm + mass::kForearm + mass::kHand + mass::kThigh + mass::kShank + mass::kFoot;
  CHECK(mass::kTrunk + mass::kHeadAndNeck + 2 * limbs == Approx(1.0).margin(1e-6));
  // In relaxed standing the centre of mass lies at about 55 to 57 % of stature (from memory).
  const double height = centreOfMass(standing()).z / kStature;
  CHECK(height > .54);
  CHECK(height < .58);
}

TEST_CASE("Joint ranges are those of the published table") {
  // American Academy of Orthopaedic Surgeons, Joint Motion, 1965: shoulder and elbow read, the rest
  // from memory. What lies beyond the table is named in skeleton.cpp.
  const auto reaches = [](const char* joint, double lowest, double highest) {
    const JointRange* range = rangeOf(joint);
    REQUIRE(range != nullptr);
    CHECK(range->lowest == lowest);
    CHECK(range->highest == highest);
  };
  reaches("kneeFlexion", 0, 135);
  reaches("ankleDorsiflexion", -50, 20);
  reaches("trunkFlexion", -25, 80);
  reaches("trunkSideBend", -35, 35);
  reaches("trunkRotation", -45, 45);
  reaches("neckFlexion", -45, 45);
  reaches("neckRotation", -60, 60);
  reaches("shoulderElevation", 0, 180);
  reaches("shoulderExtension", 0, 60);
  reaches("elbowFlexion", 0, 150);
  reaches("hipAbduction", -30, 45);
  reaches("wristFlexion", -70, 80);
  reaches("wristDeviation", -30, 20);
  reaches("neckSideBend", -45, 45);
  CHECK(rangeOf("hipFlexion")->lowest == -30);
  CHECK(rangeOf("hipRotation")->highest == 45);  // inward; outward the drawings go beyond the table's 45
  CHECK(rangeOf("kneeTwist") == nullptr);
}

TEST_CASE("Joint ranges lie near public tables that were read") {
  // Legs: "Normal values for range of motion of joints", MSD Manual, professional edition, table 1 (as
  // reprinted on medicospace.com and pdfcoffee.com); hip extension, which that table has as 15, and
  // horizontal adduction: a list "after Kurz" (yoga-age.com, second-hand). Spine and neck: means of 300
  // healthy people of 18 to 29 years by the Academy's method (Apti et al., Journal of Turkish Spinal Surgery
  // 2023, abstract); means of supple people are no limits, so each range may fall short of them by 15 degrees
  // or pass them by 11. Loaded ankle: 30 to 38 (podiatryfaq.com).
  constexpr const char *kManual = "MSD Manual", *kKurz = "after Kurz", *kApti = "Apti 2023",
                       *kLunge = "podiatryfaq";
  struct Read {
    const char* joint;
    bool isHighest;
    double degrees, within;
    const char* source;
  };
  const Read table[] = {
      {"hipFlexion", true, 125, 5, kManual},
      {"hipFlexion", false, -30, 0, kKurz},
      {"hipAbduction", true, 45, 0, kManual},
      {"hipAbduction", false, -30, 0, kKurz},
      {"hipRotation", true, 45, 0, kManual},
      {"kneeFlexion", true, 130, 5, kManual},
      {"ankleDorsiflexion", true, 20, 0, kManual},
      {"ankleDorsiflexion", false, -50, 0, kManual},
      {"trunkFlexion", true, 69.9, 11, kApti},
      {"trunkFlexion", false, -40, 15, kApti},
      {"trunkSideBend", true, 36.3, 2, kApti},
      {"trunkRotation", true, 38.4, 7, kApti},
      {"neckFlexion", true, 57.7, 13, kApti},
      {"neckFlexion", false, -59.1, 15, kApti},
      {"neckSideBend", true, 42.1, 3, kApti},
      {"neckRotation", true, 71.1, 12, kApti},
      {"ankleDorsiflexionStanding", true, 38, 2, kLunge},
      {"shoulderHorizontalAdduction", true, 130, 0, kKurz},
  };
  for (const Read& each : table) {
    const JointRange* range = rangeOf(each.joint);
    INFO(each.joint << ", " << each.source);
    REQUIRE(range != nullptr);
    CHECK((each.isHighest ? range->highest : range->lowest) ==
          Approx(each.degrees).margin(each.within + .01));
  }
}

TEST_CASE("A standing body asks next to nothing of its joints") {
  const JointAngles angles = anglesOf(standing());
  for (const LimbAngles& limb : angles.limbs) {
    CHECK(std::abs(limb.hipFlexion) < 2);
    CHECK(limb.kneeFlexion < 2);
    CHECK(std::abs(limb.ankleDorsiflexion) < 2);
  }
  CHECK(impossibilities(standing()).empty());
}
