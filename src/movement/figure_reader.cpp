#include <algorithm>

#include "movement/figure.h"
#include "movement/joint_angles.h"
#include "movement/pose_reader.h"
#include "movement/posing.h"
#include "movement/prop.h"

namespace stile::movement {
namespace {

using json::Node;
using json::ObjectReader;

constexpr std::string_view kFolder = "rules/movement/";
constexpr std::string_view kPresets = "rules/movement/presets.json";

std::vector<std::string> wordsOf(Node node) {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < node.size(); ++i)
    if (node.at(i).isString()) words.push_back(node.at(i).string());
  return words;
}

void takeNumber(ObjectReader& reader, const char* key, double& into) {
  const auto node = reader.find(key);
  if (node && node->isNumber()) into = numberOf(*node);
}

void readProp(Node node, const std::string& subject, Prop& prop, base::Issues& issues) {
  ObjectReader reader(node, subject + ", prop", issues);
  if (const auto kind = reader.find("kind")) {
    prop.kind = reader.requireString("kind");
    const auto& kinds = propKinds();
    if (std::find(kinds.begin(), kinds.end(), prop.kind) == kinds.end())
      reader.issue(*kind, "there is no prop \"" + prop.kind + "\"");
  }
  if (const auto at = reader.find("at")) readVector(*at, prop.at, reader);
  takeNumber(reader, "heading", prop.heading);
  takeNumber(reader, "seat", prop.seat);
  takeNumber(reader, "height", prop.height);
  takeNumber(reader, "width", prop.width);
  takeNumber(reader, "length", prop.length);
  if (reader.find("hand")) prop.hand = reader.string("hand");
  if (const auto through = reader.find("through")) prop.through = wordsOf(*through);
  prop.isInFront = reader.boolean("front").value_or(prop.isInFront);
  reader.finish();
}

class FigureReader {
 public:
  FigureReader(const Presets& presets, base::Issues& issues) : presets_(presets), issues_(issues) {}

  Figure read(Node node) {
    ObjectReader reader(node, "figure", issues_);
    figure_.place = node.place();
    figure_.exercise = reader.requireString("exercise");
    reader.setSubject(figure_.exercise);
    if (const auto camera = reader.find("camera")) {
      Vector angles;
      if (readVector(*camera, angles, reader)) figure_.view = {angles.x, angles.y};
    }
    figure_.isGait = reader.boolean("gait").value_or(false);
    if (const auto working = reader.find("working")) {
      const std::string side = reader.string("working");
      if (side != "left" && side != "right") reader.issue(*working, "the working side is left or right");
      figure_.working = side == "left" ? Hand::Left : Hand::Right;
    }
    figure_.isColumn = reader.boolean("column").value_or(false);
    figure_.hasPaleFarLimbs = reader.boolean("paleFarLimbs").value_or(true);
    Form written;
    for (const Node& each : reader.array("props")) {
      Prop prop;
      readProp(each, figure_.exercise, prop, issues_);
      written.props.push_back(prop);
    }
    readPoses(reader, written);
    readScaledBy(reader, written);
    figure_.forms.push_back(written);
    for (const Node& each : reader.array("eased")) readEased(each, written);
    for (const Node& each : reader.array("arrows")) readArrow(each);
    figure_.worked = reader.strings("worked");
    figure_.panels = reader.strings("panels");
    if (figure_.panels.empty()) figure_.panels = figure_.names;
    if (const auto nudges = reader.find("nudges")) {
      for (std::size_t i = 0; i < nudges->size(); ++i)
        figure_.nudges[nudges->keyAt(i)] = numberOf(nudges->at(i));
    }
    reader.finish();
    return std::move(figure_);
  }

 private:
  void readPoses(ObjectReader& reader, Form& written) {
    Pose base;
    if (const auto node = reader.find("base")) readPose(*node, figure_.exercise, presets_, base, issues_);
    const auto poses = reader.require("poses");
    if (!poses) return;
    for (std::size_t i = 0; i < poses->size(); ++i) {
      Pose pose = base;
      readPose(poses->at(i), figure_.exercise + ", " + poses->keyAt(i), presets_, pose, issues_);
      figure_.names.push_back(poses->keyAt(i));
      written.poses.push_back(pose);
    }
    if (const auto node = reader.find("rest")) {
      written.rest = base;
      readPose(*node, figure_.exercise + ", rest", presets_, *written.rest, issues_);
    }
    if (written.poses.size() < 2)
      reader.issue(*poses, "a figure needs at least two key poses", "give a start and an end");
  }

  void readScaledBy(ObjectReader& reader, Form& written) {
    const auto node = reader.find("scaledBy");
    if (!node) return;
    written.isByPelvis = reader.string("scaledBy") == "pelvis";
    if (!written.isByPelvis)
      reader.issue(*node, "done smaller, a figure goes by its bones, or by its \"pelvis\"");
    if (!written.rest) reader.issue(*node, "\"scaledBy\" needs a \"rest\" from which the way is counted");
  }

  void readEased(Node node, const Form& written) {
    ObjectReader reader(node, figure_.exercise + ", eased", issues_);
    Form form = written;
    if (const auto all = reader.find("all")) {
      for (std::size_t i = 0; i < form.poses.size(); ++i)
        readPose(*all, figure_.exercise + ", eased", presets_, form.poses[i], issues_);
      if (form.rest) readPose(*all, figure_.exercise + ", eased", presets_, *form.rest, issues_);
    }
    for (std::size_t i = 0; i < form.poses.size(); ++i) {
      if (const auto pose = reader.find(figure_.names[i]))
        readPose(*pose, figure_.exercise + ", eased " + figure_.names[i], presets_, form.poses[i], issues_);
    }
    if (const auto props = reader.find("props")) {
      for (std::size_t i = 0; i < props->size() && i < form.props.size(); ++i)
        if (props->at(i).isObject()) readProp(props->at(i), figure_.exercise, form.props[i], issues_);
    }
    takeNumber(reader, "reach", form.reach);
    if (form.reach < 0 || form.reach > 1) reader.issue(node, "\"reach\" is a fraction from 0 to 1");
    raiseSeat(reader, form);
    reader.finish();
    figure_.forms.push_back(form);
  }

  /// A higher seat lifts the sitter and the hands with it; `lean` tips the trunk (negative = back).
  void raiseSeat(ObjectReader& reader, Form& form) {
    double up = 0, lean = 0;
    takeNumber(reader, "raiseSeat", up);
    takeNumber(reader, "lean", lean);
    const auto raise = [&](Pose& pose) {
      if (!pose.isSeated) return;
      pose.at.z += up;
      pose.pitch += lean;
      for (Arm& arm : pose.arms)
        if (arm.reaches && arm.to.empty()) arm.point.z += up;
    };
    for (Pose& pose : form.poses) raise(pose);
    if (form.rest) raise(*form.rest);
    for (Prop& prop : form.props)
      if (isSeat(prop)) prop.seat += up;
  }

  void readArrow(Node node) {
    ObjectReader reader(node, figure_.exercise + ", arrow", issues_);
    Arrow arrow;
    arrow.pose = reader.string("pose", figure_.names.empty() ? "" : figure_.names.back());
    arrow.follows = reader.string("follows");
    arrow.from = reader.string("from");
    arrow.to = reader.string("to");
    for (const auto& [key, into] : {std::pair{"shift", &arrow.shift}, std::pair{"by", &arrow.by}}) {
      const auto given = reader.find(key);
      if (given && readVector(*given, *into, reader)) *into = {into->x, 0, into->y};
    }
    takeNumber(reader, "bend", arrow.bend);
    arrow.isBoth = reader.boolean("both").value_or(false);
    for (const std::string* words : {&arrow.follows, &arrow.from, &arrow.to}) {
      const auto at = words->find('@');
      if (!words->empty() && !anchorOf(Body{}, words->substr(0, at)))
        reader.issue(node, "\"" + *words + "\" is no place on the body",
                     "write it like left.hand or head:1:top@start");
    }
    reader.finish();
    figure_.arrows.push_back(arrow);
  }

  const Presets& presets_;
  base::Issues& issues_;
  Figure figure_;
};

void checkBodies(const Figure& figure, base::Issues& issues) {
  for (std::size_t f = 0; f < figure.forms.size(); ++f) {
    const std::vector<Body> bodies = bodiesOf(figure.forms[f]);
    for (std::size_t i = 0; i < bodies.size(); ++i) {
      const std::string where =
          figure.exercise + ", " + figure.names[i] + (f == 0 ? "" : ", eased " + std::to_string(f));
      for (const std::string& trouble : impossibilities(bodies[i]))
        issues.error(figure.place, where, trouble, "mend the pose in rules/movement");
    }
  }
}

}  // namespace

std::size_t Figure::indexOf(const std::string& pose) const {
  const auto at = std::find(names.begin(), names.end(), pose);
  return at == names.end() ? 0 : static_cast<std::size_t>(at - names.begin());
}

Figures readFigures(const std::map<std::string, std::string>& files, base::Issues& issues) {
  Figures figures;
  Presets presets;
  if (const auto at = files.find(std::string(kPresets)); at != files.end())
    presets = readPresets(at->second, at->first, issues);
  for (const auto& [path, text] : files) {
    if (path.compare(0, kFolder.size(), kFolder) != 0 || path == kPresets) continue;
    const auto document = json::Document::parse(text, path, issues);
    if (!document) continue;
    ObjectReader reader(document->root(), path, issues);
    for (const Node& node : reader.array("figures")) {
      Figure figure = FigureReader(presets, issues).read(node);
      checkBodies(figure, issues);
      const auto [at, isNew] = figures.emplace(figure.exercise, figure);
      if (!isNew)
        issues.error(figure.place, figure.exercise, "this exercise has two figures", "delete one of them");
    }
    reader.finish();
  }
  return figures;
}

}  // namespace stile::movement
