// The figures of the library: all can be drawn, none are alike, and moving between poses breaks nothing.
#include "movement/figure.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <set>

#include "drawing/svg.h"
#include "drawn_content.h"
#include "movement/demands.h"
#include "movement/joint_angles.h"
#include "movement/picture.h"
#include "movement/posing.h"

using namespace stile;
using namespace stile::movement;

namespace {

/// How far two figures' key poses lie apart: the largest distance of a joint, metres, each body seen
/// from its own pelvis.
double apart(const Figure& a, const Figure& b) {
  const auto first = bodiesOf(a.forms.front()), second = bodiesOf(b.forms.front());
  double most = 0;
  for (const bool isEnd : {false, true}) {
    const Body &p = isEnd ? first.back() : first.front(), &q = isEnd ? second.back() : second.front();
    for (std::size_t i = 0; i < kBoneCount; ++i) {
      const Vector u = p.bones[i].to - p.bones[0].from, v = q.bones[i].to - q.bones[0].from;
      most = std::max(most, length(u - v));
    }
  }
  return most;
}

std::multiset<std::string> propsOf(const Figure& figure) {
  std::multiset<std::string> kinds;
  for (const Prop& prop : figure.forms.front().props) kinds.insert(prop.kind);
  return kinds;
}

std::string svgOf(const Figure& figure, const PictureOptions& options = {}) {
  return toSvg(pictureOf(figure, 0, options), {drawing::Theme::Paper, "f", true});
}

}  // namespace

TEST_CASE("Every figure file is read without an issue, and there are at least ninety figures") {
  base::Issues issues;
  const Figures figures = readFigures(figureFiles(), issues);
  std::string all;
  for (const auto& issue : issues.all()) all += toText(issue) + "\n";
  INFO(all);
  CHECK_FALSE(issues.hasErrors());
  CHECK(figures.size() >= 90);
}

TEST_CASE("No two drawings are alike") {
  const Figures& figures = realFigures();
  std::set<std::string> pictures;
  for (const auto& [id, figure] : figures) {
    INFO(id);
    CHECK(pictures.insert(svgOf(figure)).second);
  }
  for (auto a = figures.begin(); a != figures.end(); ++a)
    for (auto b = std::next(a); b != figures.end(); ++b) {
      if (propsOf(a->second) != propsOf(b->second)) continue;
      INFO(a->first << " and " << b->first);
      CHECK(apart(a->second, b->second) > .04);
    }
}

TEST_CASE("Start and end of an exercise differ enough to be seen") {
  for (const auto& [id, figure] : realFigures()) {
    const auto bodies = bodiesOf(figure.forms.front());
    double most = 0;
    for (std::size_t i = 0; i < kBoneCount; ++i)
      most = std::max(most, length(bodies.front().bones[i].to - bodies.back().bones[i].to));
    // A head that turns keeps its place: look at where the face points.
    most =
        std::max(most, .12 * length(bodies.front()[Bone::Head].frame.x - bodies.back()[Bone::Head].frame.x));
    INFO(id);
    // Squeezing and tightening show by hands, marks and arrows alone.
    const bool isInner = id == "grip-squeeze" || id == "breathing-lying" || id == "pelvic-floor-squeeze" ||
                         id == "pelvic-floor-lying" || id == "bracing-seated";
    CHECK((most > .05 || (isInner && (!figure.worked.empty() || !figure.arrows.empty()))));
  }
}

TEST_CASE("Between two key poses bones keep their length and planted feet their place") {
  for (const auto& [id, figure] : realFigures()) {
    const auto bodies = bodiesOf(figure.forms.front());
    for (std::size_t i = 0; i + 1 < bodies.size(); ++i)
      for (const double t : {.25, .5, .75}) {
        const Body body = between(bodies[i], bodies[i + 1], t);
        INFO(id << " at " << t);
        for (std::size_t k = 0; k < kBoneCount; ++k) {
          const auto whole = [k](const Body& of) { return length(of.bones[k].to - of.bones[k].from); };
          CHECK(whole(body) == Approx(whole(bodies[i])).margin(.001));
        }
        for (const Hand hand : kHands) {
          const Vector a = bodies[i].of(hand, Limb::Foot).to, b = bodies[i + 1].of(hand, Limb::Foot).to;
          const bool stays = bodies[i].isPlanted[indexOf(hand)] && bodies[i + 1].isPlanted[indexOf(hand)] &&
                             length(a - b) < .01;
          if (stays) CHECK(length(body.of(hand, Limb::Foot).to - a) < .02);
        }
      }
  }
}

TEST_CASE("A mirrored pose asks of the left what the pose asks of the right") {
  for (const auto& [id, figure] : realFigures()) {
    for (const Pose& pose : figure.forms.front().poses) {
      const Demands one = demandsOf(poseBody(pose), false),
                    other = demandsOf(poseBody(mirrored(pose)), false);
      INFO(id);
      for (const auto& [movement, degrees] : one.limbs[1])
        CHECK(other.limbs[0].at(movement) == Approx(degrees).margin(.05));
      for (const auto& [movement, degrees] : one.limbs[0])
        CHECK(other.limbs[1].at(movement) == Approx(degrees).margin(.05));
      CHECK(one.bans == other.bans);
      CHECK(one.limbBans[0] == other.limbBans[1]);
    }
  }
}

TEST_CASE("An eased form never asks more of the movement that is eased") {
  for (const auto& [id, figure] : realFigures())
    for (std::size_t form = 1; form < figure.forms.size(); ++form) {
      if (figure.forms[form].reach >= 1) continue;
      const Demands full = demandsOf(figure, 0), eased = demandsOf(figure, form);
      INFO(id << ", eased " << form);
      for (const auto& [movement, degrees] : eased.trunk) CHECK(degrees <= full.trunk.at(movement) + 8);
    }
}

TEST_CASE("A movement done smaller ends nearer to its rest, with whole bones and feet in their place") {
  for (const char* id : {"mini-squat", "overhead-press", "side-leg-raise", "marching-standing", "cat-back"}) {
    const Form& form = realFigures().at(id).forms.front();
    const auto whole = bodiesOf(form), half = bodiesOf(scaled(form, .5)), same = bodiesOf(scaled(form, 1));
    const Body rest = form.rest ? poseBody(*form.rest) : whole.front();
    INFO(id);
    double ofWhole = 0, ofHalf = 0;
    for (std::size_t i = 0; i < kBoneCount; ++i) {
      const PlacedBone& bone = half.back().bones[i];
      CHECK(length(bone.to - bone.from) == Approx(length(rest.bones[i].to - rest.bones[i].from)).margin(.001));
      CHECK(length(same.back().bones[i].to - whole.back().bones[i].to) == Approx(0).margin(1e-9));
      ofWhole = std::max(ofWhole, length(whole.back().bones[i].to - rest.bones[i].to));
      ofHalf = std::max(ofHalf, length(bone.to - rest.bones[i].to));
    }
    CHECK(ofHalf < ofWhole);
    CHECK(ofHalf > ofWhole * .3);
    for (const Hand hand : kHands) {
      // A foot that leaves the floor is off it however small the movement.
      const std::size_t i = indexOf(hand);
      CHECK(half.back().isPlanted[i] == (rest.isPlanted[i] && whole.back().isPlanted[i]));
    }
  }
}

TEST_CASE("Going down less deep, the seat comes up, feet stay, and hands keep the arms of the chair") {
  for (const char* id : {"sit-to-stand", "sit-to-stand-hands"}) {
    const Figure& figure = realFigures().at(id);
    const Form &whole = figure.forms.front(), less = scaled(whole, .8);
    const auto bodies = bodiesOf(less), before = bodiesOf(whole);
    INFO(id);
    const double seat = propsOf(less).front().seat, written = whole.props.front().seat;
    CHECK(propsOf(whole) == whole.props);
    CHECK(seat > written + .05);
    const double rise = bodies.front()[Bone::Pelvis].from.z - before.front()[Bone::Pelvis].from.z;
    CHECK(seat - written == Approx(rise).margin(1e-9));
    CHECK(bodies.front().isSeated);
    for (std::size_t i = 0; i < bodies.size(); ++i) {
      CHECK(impossibilities(bodies[i]).empty());
      for (const Hand hand : kHands) {
        CHECK(length(bodies[i].of(hand, Limb::Foot).from - before[i].of(hand, Limb::Foot).from) < .002);
        if (before[i].hands[indexOf(hand)].on != "chair") continue;
        const Vector moved = bodies[i].of(hand, Limb::Hand).to - before[i].of(hand, Limb::Hand).to;
        CHECK(length(moved - Vector{0, 0, rise}) < .01);
      }
    }
    // Standing is standing, however high the seat.
    CHECK(length(bodies.back()[Bone::Head].to - before.back()[Bone::Head].to) < .002);
    CHECK(svgOf(figure, {.share = .8}) != svgOf(figure));
  }
}

TEST_CASE("Builds have names that settings and records use") {
  for (const Build build : {Build::Slight, Build::Sturdy}) CHECK(buildOf(idOf(build)) == build);
  CHECK_FALSE(buildOf("heavy"));
}

TEST_CASE("Pictures fit their frame, in both builds, mirrored and turned") {
  for (const auto& [id, figure] : realFigures())
    for (const Build build : {Build::Slight, Build::Sturdy})
      for (const bool isMirrored : {false, true}) {
        const drawing::Drawing picture = pictureOf(figure, 0, {.build = build, .isMirrored = isMirrored});
        double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
        const auto take = [&](drawing::Point p) {
          left = std::min(left, p.x), right = std::max(right, p.x), top = std::min(top, p.y),
          bottom = std::max(bottom, p.y);
        };
        for (const auto& panel : picture.shapes)
          for (const auto& shape : std::get<drawing::Group>(panel.form).shapes)
            if (const auto* path = std::get_if<drawing::Path>(&shape.form);
                path != nullptr && path->paint.fill != drawing::Colour::FigureGround)
              for (const auto& step : path->steps)
                if (step.kind != drawing::PathStep::Kind::Close) take(step.to);
        INFO(id);
        CHECK(left > -4);
        CHECK(top > -4);
        CHECK(right < picture.width + 4);
        CHECK(bottom < picture.height + 4);
      }
}

TEST_CASE("A picture is small, the same each time, and turns") {
  const Figure& figure = realFigures().at("sit-to-stand");
  CHECK(svgOf(figure) == svgOf(figure));
  CHECK(svgOf(figure) != svgOf(figure, {.turn = 40}));
  for (const auto& [id, each] : realFigures())
    for (std::size_t form = 0; form < each.forms.size(); ++form)
      for (const Build build : {Build::Slight, Build::Sturdy}) {
        INFO(id << ", form " << form);
        const auto picture = pictureOf(each, form, {.build = build, .hasSeatHeight = form > 0});
        CHECK(toSvg(picture, {drawing::Theme::Paper, "f", true}).size() <= 15 * 1024);
      }
  CHECK(toSvg(frameOf(figure, 0, .3), {}) != toSvg(frameOf(figure, 0, .7), {}));
}

TEST_CASE("Broken figures are refused with place and remedy") {
  const auto complaint = [](const std::string& figure) {
    auto files = figureFiles();
    files["rules/movement/broken.json"] = "{ \"figures\": [ " + figure + " ] }";
    base::Issues issues;
    readFigures(files, issues);
    return issues.all().empty() ? std::string() : toText(issues.all().front());
  };
  CHECK(
      complaint(
          R"({ "exercise": "x", "poses": { "a": {}, "b": { "rightLeg": { "hip": [0, 0, 0], "knee": 160 } } }, "base": { "from": "stand" } })")
          .find("right knee flexion of 160 degrees is outside its range of 0 to 135") != std::string::npos);
  CHECK(complaint(R"({ "exercise": "x", "poses": { "a": { "from": "stnad" }, "b": {} } })")
            .find("there is no pose \"stnad\"") != std::string::npos);
  CHECK(
      complaint(
          R"({ "exercise": "x", "base": { "from": "stand" }, "poses": { "a": {}, "b": { "rightArm": { "to": "left.elbow" } } } })")
          .find("no place on the body") != std::string::npos);
  CHECK(complaint(R"({ "exercise": "x", "base": { "from": "stand" }, "poses": { "a": {} } })")
            .find("at least two key poses") != std::string::npos);
  CHECK(
      complaint(
          R"({ "exercise": "x", "props": [ { "kind": "sofa" } ], "base": { "from": "stand" }, "poses": { "a": {}, "b": {} } })")
          .find("there is no prop") != std::string::npos);
}
