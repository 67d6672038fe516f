// The figure of one exercise: its key poses in each form, the things around it, and how it is shown.
// Read from rules/movement/*.json; the picture is made by picture.h, the demands by demands.h.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/issue.h"
#include "drawing/shape.h"
#include "movement/body.h"
#include "movement/pose.h"

namespace stile::movement {

/// A thing in the room. Measures in metres; what a kind does not use is ignored.
struct Prop {
  std::string kind;  ///< see propKinds()
  Vector at;
  double heading = 0;
  double seat = .45, height = 0, width = 0, length = 0;
  std::string hand;                  ///< of things that are held: "left", "right" or "both"
  std::vector<std::string> through;  ///< band, towel, strap: anchors or "x y z" points it runs through
  bool isInFront = false;            ///< painted after the figure
  bool operator==(const Prop&) const = default;
};
/// Every kind a file may name.
const std::vector<std::string>& propKinds();

/// An arrow along the path of a point of the body from the pose before to this one, between two
/// points, or from one point some way across the page.
struct Arrow {
  std::string pose;      ///< the panel it stands in
  std::string follows;   ///< anchor whose way it shows, or ""
  std::string from, to;  ///< anchors, when it follows nothing
  Vector by;             ///< with `from` alone: how far it goes on the page, x to the right, z up, metres
  Vector shift;          ///< moved on the page in the same way
  double bend = .2;
  bool isBoth = false;  ///< a head at either end: to and fro
};

struct View {
  double azimuth = -66, elevation = 8;  ///< 0 looks at the face, -90 at the right side
};

/// One way to do the exercise: as written, or eased.
struct Form {
  std::vector<Pose> poses;  ///< as many as the figure has key poses
  std::vector<Prop> props;
  double reach = 1;  ///< how far the last pose goes from the one before it: .5 = half as far
  std::optional<Pose> rest;  ///< where a share is counted from; the first key pose if there is none
  double share = 1;          ///< how far every key pose goes from the rest: .5 = half as far
  /// With a share, only pelvis and trunk go part of the way: feet and hands keep what they rest on, and a
  /// seat comes up to whoever sits down less deep.
  bool isByPelvis = false;
};

struct Figure {
  std::string exercise;             ///< id in the library
  std::vector<std::string> names;   ///< of the key poses: start … end
  std::vector<std::string> panels;  ///< those that are drawn
  Hand working = Hand::Right;       ///< the side that works in the poses, of one-sided exercises
  bool isGait = false;              ///< steps: a moment on one narrow foot is walking, not balance work
  bool isColumn = false;            ///< panels under each other (lying figures)
  bool hasPaleFarLimbs = true;
  View view;
  std::vector<Form> forms;  ///< first as written, then one per easing of the exercise
  std::vector<Arrow> arrows;
  std::vector<std::string> worked;       ///< areas that work or stretch, drawn in the last panel
  std::map<std::string, double> nudges;  ///< parts painted nearer to the viewer, metres
  base::Place place;

  std::size_t indexOf(const std::string& pose) const;  ///< of the key pose; 0 when unknown
};

/// The bodies of the key poses of a form.
std::vector<Body> bodiesOf(const Form& form);

/// The things around a form; a seat stands as high as its share of the way down asks.
std::vector<Prop> propsOf(const Form& form);

/// The form done smaller: every key pose that share of the way from the rest, 1 = as it is.
Form scaled(Form form, double share);

/// All figures, by exercise id.
using Figures = std::map<std::string, Figure>;

/// Reads rules/movement/*.json. Unknown members, bones and presets are issues, and so are key poses
/// that no body can take, named by joint and range.
Figures readFigures(const std::map<std::string, std::string>& files, base::Issues& issues);

}  // namespace stile::movement
