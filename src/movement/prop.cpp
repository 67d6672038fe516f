#include "movement/prop.h"

#include <cstdlib>
#include <sstream>

namespace stile::movement {
namespace {

/// Builds blocks around a prop's place, in its own frame: dx ahead, dy to its left.
class Carpenter {
 public:
  explicit Carpenter(const Prop& prop) : prop_(prop) {}

  void block(double dx, double dy, double low, double length, double width, double high,
             bool isHatched = false, bool isDark = false) {
    const Vector at = prop_.at + aboutZ(prop_.heading) * Vector{dx, dy, 0};
    blocks_.push_back(
        {{at.x, at.y, prop_.at.z + low}, length, width, high - low, prop_.heading, isHatched, isDark});
  }

  void legs(double length, double width, double low, double high) {
    for (const double dx : {-length / 2 + .02, length / 2 - .02})
      for (const double dy : {-width / 2 + .02, width / 2 - .02}) block(dx, dy, low, .035, .035, high);
  }

  void chair(bool hasArms) {
    const double seat = prop_.seat, deep = .42, wide = hasArms ? .50 : .42;
    legs(deep, wide, 0, seat - .04);
    for (const double dy : {-wide / 2 + .02, wide / 2 - .02})
      block(-deep / 2 + .02, dy, seat, .035, .035, seat + .46);
    block(-deep / 2 + .02, 0, seat + .24, .03, wide - .04, seat + .46);
    block(0, 0, seat - .045, deep, wide, seat);
    if (!hasArms) return;
    for (const double dy : {-wide / 2 + .02, wide / 2 - .02}) {
      block(deep / 2 - .04, dy, seat, .03, .03, seat + .20);
      block(0, dy, seat + .20, deep - .02, .045, seat + .235);
    }
  }

  std::vector<Block> run() {
    const std::string& kind = prop_.kind;
    const auto or_ = [](double value, double otherwise) { return value > 0 ? value : otherwise; };
    const double width = prop_.width, height = prop_.height, length = prop_.length;
    if (kind == "chair") chair(false);
    if (kind == "armChair") chair(true);
    if (kind == "stool")
      legs(.36, .36, 0, prop_.seat - .04), block(0, 0, prop_.seat - .045, .36, .36, prop_.seat);
    if (kind == "wall") block(.03, 0, 0, .13, or_(width, .9), or_(height, 1.9), true);
    if (kind == "post") block(0, 0, 0, .07, .10, or_(height, 1.5));
    if (kind == "door") {
      const double w = or_(width, .9), h = or_(height, 2.02);
      block(0, w / 2 + .045, 0, .12, .09, h);
      block(0, -w / 2 - .045, 0, .12, .09, h);
      block(0, 0, h, .12, w + .18, h + .09);
    }
    if (kind == "counter") {
      const double d = or_(length, .5), w = or_(width, 1.2);
      block(0, 0, 0, d - .06, w - .06, .86);
      block(0, 0, .86, d, w, .90);
    }
    if (kind == "table") {
      const double d = or_(length, .6), w = or_(width, .7), h = or_(height, .72);
      legs(d, w, 0, h - .04);
      block(0, 0, h - .04, d, w, h);
    }
    if (kind == "mat") block(0, 0, 0, or_(length, 1.9), or_(width, .62), .018);
    if (kind == "pillow") block(0, 0, .018, or_(length, .26), or_(width, .36), or_(height, .075));
    if (kind == "step") block(0, 0, 0, or_(length, .32), or_(width, .60), or_(height, .15));
    if (kind == "stairs")
      for (int i = 0; i < 4; ++i) block(.28 * i, 0, 0, .28, or_(width, .8), .17 * (i + 1));
    if (kind == "rail") {
      block(0, 0, 0, .03, .03, or_(height, .90));
      block(or_(length, .8), 0, 0, .03, .03, or_(height, .90));
      block(or_(length, .8) / 2, 0, or_(height, .90), or_(length, .8) + .06, .045, or_(height, .90) + .035);
    }
    if (kind == "bed")
      block(0, 0, .08, or_(length, 2.0), or_(width, .9), .30),
          block(0, 0, .30, or_(length, 2.0), or_(width, .9), .48);
    if (kind == "line") block(0, 0, 0, or_(length, 1.0), .03, .002, false, true);
    if (kind == "cycle") {
      block(-.02, 0, 0, .9, .10, .06);
      block(-.18, 0, .06, .07, .05, prop_.seat - .05);
      block(-.18, 0, prop_.seat - .05, .27, .17, prop_.seat);
      block(.40, 0, .06, .08, .06, or_(height, 1.04));
      block(.34, 0, or_(height, 1.04), .05, .46, or_(height, 1.04) + .04);
    }
    if (kind == "crossTrainer") {
      block(0, 0, 0, 1.2, .12, .06);
      block(.52, 0, .06, .08, .10, .95);
      block(.12, .10, .14, .34, .13, .18);
      block(-.16, -.10, .22, .34, .13, .26);
    }
    if (kind == "pedals")
      block(.04, 0, or_(height, .72), .22, .10, or_(height, .72) + .05),
          block(.04, 0, or_(height, .72) + .05, .06, .05, or_(height, .72) + .21);
    return std::move(blocks_);
  }

 private:
  const Prop& prop_;
  std::vector<Block> blocks_;
};

std::vector<Hand> handsOf(const Prop& prop) {
  if (prop.hand == "left") return {Hand::Left};
  if (prop.hand == "both") return {Hand::Left, Hand::Right};
  return {Hand::Right};
}

}  // namespace

const std::vector<std::string>& propKinds() {
  static const std::vector<std::string> kinds{
      "chair",  "armChair", "stool",  "wall",   "post", "door", "counter", "table",       "mat",
      "pillow", "step",     "stairs", "rail",   "bed",  "line", "cycle",   "pedals",      "water",
      "band",   "towel",    "strap",  "weight", "bag",  "ball", "tree",    "crossTrainer"};
  return kinds;
}

bool isSeat(const Prop& prop) {
  return prop.kind == "chair" || prop.kind == "armChair" || prop.kind == "stool";
}

std::vector<Block> blocksOf(const Prop& prop) {
  return Carpenter(prop).run();
}

std::vector<Rod> rodsOf(const Prop& prop, const Body& body) {
  std::vector<Rod> rods;
  if (prop.kind == "cycle") {
    const Frame turn = aboutZ(prop.heading);
    const Vector hub = prop.at + turn * Vector{.22, 0, .30};
    rods.push_back({hub + turn * Vector{.10, -.03, 0}, hub + turn * Vector{.10, .03, 0}, .17, false});
    rods.push_back({hub + turn * Vector{0, -.10, 0}, hub + turn * Vector{0, .10, 0}, .025, true});
  }
  if (prop.kind == "pedals") {
    const Vector hub =
        prop.at + aboutZ(prop.heading) * Vector{.04, 0, (prop.height > 0 ? prop.height : .72) + .21};
    rods.push_back({hub - aboutZ(prop.heading).y * .06, hub + aboutZ(prop.heading).y * .06, .085, false});
  }
  if (prop.kind == "tree") {
    rods.push_back({prop.at, prop.at + Vector{0, 0, 1.1}, .05, false});
    rods.push_back({prop.at + Vector{0, 0, 1.45}, prop.at + Vector{0, .01, 1.45}, .42, false});
  }
  if (prop.kind == "crossTrainer") {
    const Frame turn = aboutZ(prop.heading);
    for (const double side : {.13, -.13}) {
      const Vector pivot = prop.at + turn * Vector{.52, side, .10};
      rods.push_back({pivot, prop.at + turn * Vector{.46, side * 1.5, prop.height > 0 ? prop.height : 1.25},
                      .018, false});
    }
    rods.push_back(
        {prop.at + turn * Vector{-.48, -.03, .28}, prop.at + turn * Vector{-.48, .03, .28}, .22, false});
  }
  for (const Hand hand : handsOf(prop)) {
    const PlacedHand& placed = body.hands[movement::indexOf(hand)];
    const Vector wrist = body.of(hand, Limb::Forearm).to;
    const Vector grasp = wrist + placed.fingers * (.040 * kStature) + placed.palm * (.016 * kStature);
    const Vector across = cross(placed.palm, placed.fingers);
    if (prop.kind == "weight") {
      for (const double end : {-1.0, 1.0})
        rods.push_back({grasp + across * (end * .055), grasp + across * (end * .115), .043, true});
      rods.push_back({grasp - across * .06, grasp + across * .06, .013, false});
    }
    if (prop.kind == "ball") {
      // It lies on the open hand; a closed one holds the lower half and makes it a little smaller.
      const bool isHeld = placed.grip == Grip::Fist;
      const double radius = isHeld ? .046 : .050;
      const Vector middle = grasp + placed.palm * (isHeld ? .034 : radius);
      rods.push_back({middle, middle, radius, false});
    }
    if (prop.kind == "bag") {
      const Vector low = grasp + Vector{0, 0, -.16};
      for (const double side : {-.085, .085}) rods.push_back({grasp, low + Vector{side, 0, 0}, .004, true});
      rods.push_back({low, low + Vector{0, 0, -.16}, .090, false});
    }
  }
  return rods;
}

std::vector<Vector> courseOf(const Prop& prop, const Body& body) {
  std::vector<Vector> course;
  for (const std::string& words : prop.through) {
    if (const auto anchor = anchorOf(body, words)) {
      course.push_back(*anchor);
      continue;
    }
    std::istringstream numbers(words);
    Vector point;
    if (numbers >> point.x >> point.y >> point.z) course.push_back(point);
  }
  return course;
}

}  // namespace stile::movement
