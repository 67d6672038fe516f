// Limbs, hands and feet. Radii are drawing choices for an ordinary soft adult, not data.
#include <algorithm>
#include <cmath>

#include "movement/flesh.h"

namespace stile::movement {
namespace {

constexpr double H = kStature;

/// One station of a limb: fraction along it, radius and shift to the front, in statures.
struct Station {
  double along, radius, forward;
};
using Profile = std::vector<Station>;

const Profile kThigh{
    {0, .0425, -.006}, {.12, .0480, -.005}, {.3, .0462, 0}, {.7, .0385, .001}, {1, .0325, .002}};
const Profile kShank{
    {0, .0325, .002}, {.15, .0325, -.002}, {.35, .0335, -.007}, {.7, .0265, -.003}, {1, .0225, -.001}};
const Profile kUpperArm{{0, .0335, 0}, {.25, .0325, 0}, {.6, .0285, .001}, {1, .0225, 0}};
const Profile kForearm{{0, .0225, 0}, {.25, .0245, .001}, {.65, .0195, 0}, {1, .0155, 0}};

/// A smooth curve through the stations (Catmull and Rom), at `count` + 1 places.
Profile smoothed(const Profile& rough, int count) {
  Profile smooth;
  for (int i = 0; i <= count; ++i) {
    const double t = static_cast<double>(i) / count;
    std::size_t k = 0;
    while (k + 2 < rough.size() && rough[k + 1].along <= t + 1e-9) ++k;
    const Station &a = rough[k], &b = rough[k + 1], &before = rough[k > 0 ? k - 1 : 0],
                  &after = rough[std::min(k + 2, rough.size() - 1)];
    const double w = (t - a.along) / (b.along - a.along), span = b.along - a.along;
    const auto curve = [&](double Station::*value) {
      const double ma =
          k > 0 ? (b.*value - before.*value) / (b.along - before.along) * span : b.*value - a.*value;
      const double mb = k + 2 < rough.size() ? (after.*value - a.*value) / (after.along - a.along) * span
                                             : b.*value - a.*value;
      return (2 * w * w * w - 3 * w * w + 1) * (a.*value) + (w * w * w - 2 * w * w + w) * ma +
             (-2 * w * w * w + 3 * w * w) * (b.*value) + (w * w * w - w * w) * mb;
    };
    smooth.push_back({t, curve(&Station::radius), curve(&Station::forward)});
  }
  return smooth;
}

const char* wordOf(Limb limb) {
  switch (limb) {
    case Limb::Thigh:
      return "thigh";
    case Limb::Shank:
      return "shank";
    case Limb::Foot:
      return "foot";
    case Limb::UpperArm:
      return "upperArm";
    case Limb::Forearm:
      return "forearm";
    case Limb::Hand:
      return "hand";
  }
  return "";
}

std::string nameOfPart(Hand hand, Limb limb) {
  return (hand == Hand::Left ? "left." : "right.") + std::string(wordOf(limb));
}

/// Buttock and outer hip flow into the thigh: small balls on the pelvis, hulled to a thigh ring.
void addSeat(const Body& body, const Camera& camera, const Girth& girth, Hand hand, Part& part) {
  struct Ball {
    double x, y, z, radius;
  };
  const PlacedBone& pelvis = body[Bone::Pelvis];
  const Ring& ring = part.rings[3];
  const auto low =
      ringOutline(camera, ring.centre, ring.frame.y, ring.frame.x, ring.halfWidth, ring.halfDepth);
  for (const Ball& ball :
       {Ball{-.026, .046, -.018, .0420}, Ball{0, .0545, -.006, .0420}, Ball{.018, .042, .004, .0400}}) {
    const Vector at =
        pelvis.from + pelvis.frame * (Vector{ball.x, signOf(hand) * ball.y * girth.hips, ball.z} * H);
    const auto outline = ballOutline(camera, at, ball.radius * girth.hips * H);
    part.pieces.push_back({0, .2, hulled({&outline, &low})});
  }
}

}  // namespace

Part makeLimb(const Body& body, const Camera& camera, const Girth& girth, Hand hand, Limb limb) {
  const PlacedBone& bone = body.of(hand, limb);
  Part part;
  part.name = nameOfPart(hand, limb);
  const Profile& profile = limb == Limb::Thigh      ? kThigh
                           : limb == Limb::Shank    ? kShank
                           : limb == Limb::UpperArm ? kUpperArm
                                                    : kForearm;
  constexpr int kRings = 10;
  for (const Station& station : smoothed(profile, kRings)) {
    const Vector centre = mix(bone.from, bone.to, station.along) + bone.frame.x * (station.forward * H);
    const double thick =
        limb == Limb::Thigh ? girth.limb * (1 + (girth.hips - 1) * (1 - station.along)) : girth.limb;
    const double radius = station.radius * thick * H;
    const bool isEnd = station.along == 0 || station.along == 1;
    part.rings.push_back({station.along,
                          isEnd ? ballOutline(camera, centre, radius)
                                : ringOutline(camera, centre, bone.frame.y, bone.frame.x, radius, radius),
                          centre, bone.frame, radius, radius});
    part.depth += camera.depth(centre) / (kRings + 1);
  }
  for (std::size_t i = 0; i + 1 < part.rings.size(); ++i)
    part.pieces.push_back({part.rings[i].along, part.rings[i + 1].along,
                           hulled({&part.rings[i].outline, &part.rings[i + 1].outline})});
  if (limb == Limb::Thigh) {
    addSeat(body, camera, girth, hand, part);
    part.coverings = {{-9, 9, Cloth::Trousers}};
  } else if (limb == Limb::Shank) {
    part.coverings = {{-9, .9, Cloth::Trousers}, {.9, 9, Cloth::Skin}};
    part.hem = .9;
  } else if (limb == Limb::UpperArm) {
    part.coverings = {{-9, .6, Cloth::Shirt}, {.6, 9, Cloth::Skin}};
    part.hem = .6;
  }
  return part;
}

Part makeHand(const Body& body, const Camera& camera, Hand hand) {
  const PlacedHand& placed = body.hands[indexOf(hand)];
  const Vector wrist = body.of(hand, Limb::Forearm).to;
  const Vector thumb =
      hand == Hand::Left ? cross(placed.palm, placed.fingers) : cross(placed.fingers, placed.palm);
  const auto at = [&](double x, double y, double z) {
    return wrist + placed.fingers * (x * H) + thumb * (y * H) + placed.palm * (z * H);
  };
  Part part;
  part.name = nameOfPart(hand, Limb::Hand);
  part.depth = camera.depth(at(.05, 0, 0));
  const auto add = [&](double from, double to, drawing::Outline a, drawing::Outline b) {
    part.pieces.push_back({from, to, hulled({&a, &b})});
  };
  const auto ball = [&](double x, double y, double z, double radius) {
    return ballOutline(camera, at(x, y, z), radius * H);
  };
  if (placed.grip == Grip::Fist) {
    // Fingers curled round what is held: knuckles, the row of fingers under the palm, a thumb across.
    add(0, .3, ball(0, 0, 0, .0155), ball(.022, 0, .002, .0210));
    add(.3, 1, ball(.022, .006, .002, .0195), ball(.046, .008, .008, .0190));
    add(.3, 1, ball(.022, -.008, .002, .0190), ball(.042, -.010, .009, .0185));
    add(.3, 1, ball(.046, .008, .008, .0185), ball(.040, -.006, .022, .0165));
    add(.3, 1, ball(.040, .008, .022, .0150), ball(.026, .004, .026, .0130));
    add(.3, 1, ball(.022, .016, .010, .0105), ball(.046, .014, .030, .0085));
    return part;
  }
  struct Row {
    double along, wide, deep, lift;
  };
  constexpr Row rows[] = {{0, .0160, .0135, 0},       {.018, .0190, .0130, .001}, {.045, .0245, .0115, .001},
                          {.060, .0245, .0105, .002}, {.080, .0215, .0090, .004}, {.098, .0150, .0080, .007},
                          {.104, .0090, .0060, .008}};
  std::vector<drawing::Outline> rings;
  for (const Row& row : rows)
    rings.push_back(ringOutline(camera, at(row.along, row.along > .03 ? -.002 : 0, row.lift), thumb,
                                placed.palm, row.wide * H, row.deep * H, 2.3));
  for (std::size_t i = 0; i + 1 < rings.size(); ++i)
    add(rows[i].along / .104, rows[i + 1].along / .104, rings[i], rings[i + 1]);
  add(.3, 1, ball(.020, .014, .002, .0110), ball(.042, .034, .006, .0085));
  add(.3, 1, ball(.042, .034, .006, .0085), ball(.062, .037, .008, .0068));
  return part;
}

Part makeFoot(const Body& body, const Camera& camera, Hand hand) {
  const PlacedBone& bone = body.of(hand, Limb::Foot);
  const Frame &foot = bone.frame, toes = foot * aboutY(-body.toeBend[indexOf(hand)]);
  const double k = signOf(hand);
  const auto at = [&](double x, double y, double z) { return bone.from + foot * (Vector{x, y, z} * H); };
  const Vector ballOfFoot = at(.078, 0, -.026);
  const auto tip = [&](double x, double y, double z) { return ballOfFoot + toes * (Vector{x, y, z} * H); };
  const auto flat = [&](Vector centre, double longHalf, double wideHalf) {
    return ringOutline(camera, centre, foot.x, foot.y, longHalf * H, wideHalf * H);
  };
  const auto upright = [&](Vector centre, const Frame& frame, double wide, double high, double power) {
    return ringOutline(camera, centre, frame.y, frame.z, wide * H, high * H, power);
  };
  const auto heel = ballOutline(camera, at(-.020, 0, -.019), .0205 * H),
             ankle = ballOutline(camera, at(0, 0, .002), .0215 * H);
  const auto heelSole = flat(at(-.014, 0, -.037), .026, .0215);
  const auto instep = upright(at(.034, k * .001, -.016), foot, .0235, .0200, 2.4);
  const auto midSole = flat(at(.04, k * .002, -.035), .030, .0225);
  const auto ball = upright(at(.076, k * .002, -.024), foot, .0280, .0150, 2.8);
  const auto toe = upright(tip(.022, -k * .002, -.001), toes, .0245, .0125, 2.8);
  const auto end = upright(tip(.036, -k * .003, -.003), toes, .0150, .0085, 2.6);
  Part part;
  part.name = nameOfPart(hand, Limb::Foot);
  part.pieces = {{0, .3, hulled({&ankle, &heel})},
                 {.05, .4, hulled({&ankle, &heel, &heelSole})},
                 {.05, .6, hulled({&ankle, &instep, &heelSole})},
                 {.4, .8, hulled({&instep, &ball, &midSole})},
                 {.4, .8, hulled({&heelSole, &midSole, &instep})},
                 {.8, .95, hulled({&ball, &toe})},
                 {.9, 1, hulled({&toe, &end})}};
  part.depth = camera.depth(at(.03, 0, -.02));
  part.coverings = {{-9, 9, Cloth::Shoe}};
  return part;
}

}  // namespace stile::movement
