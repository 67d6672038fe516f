// The figure as flat parts: each limb a chain of rings, and the hull of each neighbouring pair of
// projected rings a convex piece of the part. The painter joins the pieces.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "drawing/region.h"
#include "movement/body.h"
#include "movement/camera.h"

namespace stile::movement {

enum class Cloth { Skin, Shirt, Trousers, Shoe, Hair };

/// A ring of a part: its outline on the page and in space.
struct Ring {
  double along = 0;          ///< 0 near joint … 1 far joint
  drawing::Outline outline;  ///< projected
  Vector centre;
  Frame frame;
  double halfWidth = 0, halfDepth = 0;  ///< metres, along frame.y and frame.x
};

struct Piece {
  double from = 0, to = 0;
  drawing::Outline outline;
};

/// What covers a part between two fractions of its length.
struct Covering {
  double from = -9, to = 9;
  Cloth cloth = Cloth::Skin;
};

/// Where a part grows out of another one of the same colour, no line is drawn between them.
struct Join {
  double at = 0;  ///< 0 = my near end, 1 = my far end, anything else: only the other part leaves its line out
  double length = 0;  ///< fraction of my length without a line
};

struct Part {
  std::string name;
  std::vector<Ring> rings;
  std::vector<Piece> pieces;
  std::vector<Covering> coverings{{}};
  std::map<std::string, Join> joins;  ///< by the name of the other part
  double depth = 0;
  bool isFar = false;
  double hem = -1;  ///< fraction at which a cloth ends, or -1

  std::vector<drawing::Outline> outlines(double from = -9, double to = 9) const;
};

using Parts = std::map<std::string, Part>;

/// Flesh of a build: factors on the width of parts.
struct Girth {
  double limb = 1, waist = 1, hips = 1, shoulders = 1,
         belly = 0;  ///< belly: how far the loin's front stands out, in statures
  bool hasBun = false;
};
Girth girthOf(Build build);

/// All parts of the body as the camera sees them, with their depth. Names: torso, neck, head,
/// left.thigh …
Parts partsOf(const Body& body, const Camera& camera, const Girth& girth, bool hasPaleFarLimbs);
/// The same parts seen that much larger.
Parts scaled(Parts parts, double factor);

// The makers of single parts, for partsOf() alone.
Part makeTorso(const Body& body, const Camera& camera, const Girth& girth);
Part makeLimb(const Body& body, const Camera& camera, const Girth& girth, Hand hand, Limb limb);
Part makeNeck(const Body& body, const Camera& camera);
Part makeHead(const Body& body, const Camera& camera, const Girth& girth);
Part makeHand(const Body& body, const Camera& camera, Hand hand);
Part makeFoot(const Body& body, const Camera& camera, Hand hand);

/// Outline of a flat ring; a power over 2 makes it boxy. Half sizes in metres.
drawing::Outline ringOutline(const Camera& camera, Vector centre, Vector wide, Vector deep, double halfWidth,
                             double halfDepth, double power = 2);
drawing::Outline ballOutline(const Camera& camera, Vector centre, double radius);
/// The hull of several outlines.
drawing::Outline hulled(std::initializer_list<const drawing::Outline*> outlines);

}  // namespace stile::movement
