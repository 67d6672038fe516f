#include "movement/flesh.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stile::movement {
namespace {

constexpr double H = kStature;

void linkTogether(Parts& parts, const std::string& a, const std::string& b, Join ofA, Join ofB) {
  parts[a].joins[b] = ofA;
  parts[b].joins[a] = ofB;
}

/// Left or right is the far one when the pair is turned more than about 33 degrees from the viewer.
bool isFarSide(const Body& body, const Camera& camera, Hand hand, Limb limb, double halfWidth) {
  const double apart =
      camera.depth(body.of(Hand::Left, limb).from) - camera.depth(body.of(Hand::Right, limb).from);
  return signOf(hand) * apart > .55 * 2 * halfWidth * H;
}

/// An arm that does nothing may be pale when it is the far one; one that is lifted or bent is meant to be seen.
bool hangs(const Body& body, Hand hand) {
  const Vector down = -body[Bone::Chest].frame.z;
  const auto isDown = [&](Limb limb, double within) {
    const PlacedBone& bone = body.of(hand, limb);
    return angleBetween(bone.to - bone.from, down) < within;
  };
  return isDown(Limb::UpperArm, 35) && isDown(Limb::Forearm, 50);
}

void orderSide(const Body& body, const Camera& camera, Hand hand, bool hasPaleFarLimbs, Parts& parts) {
  const std::string side = hand == Hand::Left ? "left." : "right.";
  linkTogether(parts, side + "upperArm", "torso", {0, .30}, {2, 0});
  linkTogether(parts, side + "forearm", side + "upperArm", {0, .17}, {1, .15});
  linkTogether(parts, side + "hand", side + "forearm", {0, .25}, {1, .12});
  linkTogether(parts, side + "thigh", "torso", {0, .26}, {2, 0});
  linkTogether(parts, side + "shank", side + "thigh", {0, .15}, {1, .14});
  linkTogether(parts, side + "foot", side + "shank", {-1, 0}, {1, .08});
  parts[side + "upperArm"].depth -= .06;
  parts[side + "forearm"].depth -= .07;
  parts[side + "hand"].depth -= .10;
  parts[side + "foot"].depth += .02;
  Part &thigh = parts[side + "thigh"], &torso = parts["torso"];
  thigh.depth -= .02;
  const bool farLeg = isFarSide(body, camera, hand, Limb::Thigh, proportion::kHalfHips);
  const bool farArm = isFarSide(body, camera, hand, Limb::UpperArm, proportion::kHalfShoulders);
  if (farLeg) {
    thigh.joins.erase("torso");
    torso.joins.erase(side + "thigh");
    thigh.depth = std::max(thigh.depth, torso.depth + .01);
  } else {
    thigh.depth = std::min(thigh.depth, torso.depth - .01);
  }
  for (const char* name : {"thigh", "shank", "foot"}) parts[side + name].isFar = farLeg && hasPaleFarLimbs;
  for (const char* name : {"upperArm", "forearm", "hand"})
    parts[side + name].isFar = farArm && hasPaleFarLimbs && hangs(body, hand);
}

/// Enough corners for a curve of that radius to look round, a multiple of four.
int cornersOf(double radius) {
  constexpr double kOff = .0010;  // metres by which the middle of an edge may miss the curve
  const int corners = static_cast<int>(std::numbers::pi / std::sqrt(2 * kOff / std::max(radius, .001)));
  return std::clamp((corners + 3) / 4 * 4, 8, 28);
}

}  // namespace

std::vector<drawing::Outline> Part::outlines(double from, double to) const {
  std::vector<drawing::Outline> found;
  for (const Piece& piece : pieces)
    if (piece.to > from + 1e-6 && piece.from < to - 1e-6) found.push_back(piece.outline);
  return found;
}

Girth girthOf(Build build) {
  if (build == Build::Slight) return {.97, .93, 1.03, .94, 0, true};
  return {1.06, 1.14, 1.06, 1.04, .010, false};
}

drawing::Outline ringOutline(const Camera& camera, Vector centre, Vector wide, Vector deep, double halfWidth,
                             double halfDepth, double power) {
  const drawing::Point middle = camera.at(centre), across = camera.at(wide * halfWidth),
                       along = camera.at(deep * halfDepth);
  const int corners = cornersOf(std::max(halfWidth, halfDepth)), quarter = corners / 4;
  const double exponent = 2 / power;
  const auto bulged = [&](double v) { return power == 2 ? v : std::pow(v, exponent); };
  drawing::Outline outline(static_cast<std::size_t>(corners));
  const auto put = [&](int i, double x, double y) {
    outline[static_cast<std::size_t>(i)] = {middle.x + across.x * x + along.x * y,
                                            middle.y + across.y * x + along.y * y};
  };
  for (int i = 0; i < quarter; ++i) {
    const double t = 2 * std::numbers::pi * i / corners;
    const double x = bulged(std::cos(t)), y = bulged(std::sin(t));
    put(i, x, y);
    put(i + quarter, -y, x);
    put(i + 2 * quarter, -x, -y);
    put(i + 3 * quarter, y, -x);
  }
  return outline;
}

drawing::Outline ballOutline(const Camera& camera, Vector centre, double radius) {
  const drawing::Point at = camera.at(centre);
  const int corners = cornersOf(radius);
  drawing::Outline outline;
  outline.reserve(static_cast<std::size_t>(corners));
  for (int i = 0; i < corners; ++i) {
    const double t = 2 * std::numbers::pi * i / corners;
    outline.push_back(
        {at.x + radius * camera.scale() * std::cos(t), at.y + radius * camera.scale() * std::sin(t)});
  }
  return outline;
}

drawing::Outline hulled(std::initializer_list<const drawing::Outline*> outlines) {
  std::vector<drawing::Point> points;
  for (const auto* outline : outlines) points.insert(points.end(), outline->begin(), outline->end());
  return drawing::hullOf(std::move(points));
}

Parts partsOf(const Body& body, const Camera& camera, const Girth& girth, bool hasPaleFarLimbs) {
  Parts parts;
  const auto put = [&parts](Part part) { parts[part.name] = std::move(part); };
  put(makeTorso(body, camera, girth));
  put(makeNeck(body, camera));
  put(makeHead(body, camera, girth));
  for (const Hand hand : kHands) {
    for (const Limb limb : {Limb::Thigh, Limb::Shank, Limb::UpperArm, Limb::Forearm})
      put(makeLimb(body, camera, girth, hand, limb));
    put(makeHand(body, camera, hand));
    put(makeFoot(body, camera, hand));
  }
  for (const Hand hand : kHands) orderSide(body, camera, hand, hasPaleFarLimbs, parts);
  linkTogether(parts, "neck", "torso", {0, .2}, {2, 0});
  Part &neck = parts["neck"], &head = parts["head"];
  neck.depth = std::min(neck.depth, parts["torso"].depth - .01);
  head.depth -= .03;
  const bool seenFromBelow = dot(body[Bone::Head].frame.z, camera.into()) >= .85;
  if (head.depth > neck.depth && !seenFromBelow) head.depth = neck.depth - .001;
  return parts;
}

Parts scaled(Parts parts, double factor) {
  const auto scale = [factor](drawing::Outline& outline) {
    for (drawing::Point& point : outline) point = {point.x * factor, point.y * factor};
  };
  for (auto& [name, part] : parts) {
    for (Ring& ring : part.rings) scale(ring.outline);
    for (Piece& piece : part.pieces) scale(piece.outline);
  }
  return parts;
}

}  // namespace stile::movement
