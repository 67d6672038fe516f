// Trunk, neck and head. Measures are drawing choices, in statures.
#include "movement/flesh.h"

namespace stile::movement {
namespace {

constexpr double H = kStature;

struct Row {
  Frame frame;
  Vector origin;
  double up, forward, halfWidth, halfDepth, power;
};

std::vector<Row> rowsOf(const Body& body, const Girth& girth) {
  const PlacedBone &pelvis = body[Bone::Pelvis], &loin = body[Bone::Loin], &chest = body[Bone::Chest];
  const Frame p = pelvis.frame, l = loin.frame, c = chest.frame;
  const double w = girth.waist, h = girth.hips, s = girth.shoulders, b = girth.belly;
  return {{p, pelvis.from, -.046, -.006, .060, .042, 2.2},
          {p, pelvis.from, -.022, -.010, .0955 * h, .060 * h, 2.1},
          {p, pelvis.from, .012, -.009, .0960 * h, .069 * h, 2.3},
          {p, pelvis.from, .045, -.003 + b * .5, .0900 * (h + w) / 2, .065 * w, 2.3},
          {mix(p, l, .5), loin.from, .012, .006 + b, .0870 * w, .0645 * w, 2.3},
          {l, loin.from, .040, .009 + b, .0830 * w, .0640 * w, 2.3},
          {l, loin.from, .075, .007 + b, .0820 * w, .0625 * w, 2.3},
          {mix(l, c, .5), chest.from, -.002, .003 + b * .5, .0830 * (w + s) / 2, .0605 * (w + s) / 2, 2.3},
          {c, chest.from, .030, .002, .0870 * s, .063, 2.4},
          {c, chest.from, .065, .001, .0900 * s, .064, 2.5},
          {c, chest.from, .095, -.002, .0900 * s, .060, 2.5},
          {c, chest.from, .120, -.006, .080 * s, .050, 2.4},
          {c, chest.from, .138, -.010, .055, .040, 2.2},
          {c, chest.from, .150, -.011, .036, .033, 2.0}};
}

}  // namespace

Part makeTorso(const Body& body, const Camera& camera, const Girth& girth) {
  Part part;
  part.name = "torso";
  const std::vector<Row> rows = rowsOf(body, girth);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Row& row = rows[i];
    const Vector centre = row.origin + row.frame * (Vector{row.forward, 0, row.up} * H);
    part.rings.push_back({static_cast<double>(i) / static_cast<double>(rows.size() - 1),
                          ringOutline(camera, centre, row.frame.y, row.frame.x, row.halfWidth * H,
                                      row.halfDepth * H, row.power),
                          centre, row.frame, row.halfWidth * H, row.halfDepth * H});
    part.depth += camera.depth(centre) / static_cast<double>(rows.size());
  }
  for (std::size_t i = 0; i + 1 < part.rings.size(); ++i)
    part.pieces.push_back({part.rings[i].along, part.rings[i + 1].along,
                           hulled({&part.rings[i].outline, &part.rings[i + 1].outline})});
  for (const Hand hand : kHands) {  // the slope from the neck and the cap of the shoulder
    const auto cap = ballOutline(camera, body.of(hand, Limb::UpperArm).from, .0325 * girth.limb * H);
    for (std::size_t i = 9; i <= 12; ++i)
      part.pieces.push_back(
          {part.rings[i].along, part.rings[i + 1].along, hulled({&part.rings[i].outline, &cap})});
  }
  part.hem = part.rings[3].along;
  part.coverings = {{-9, part.hem, Cloth::Trousers}, {part.hem, 9, Cloth::Shirt}};
  return part;
}

Part makeNeck(const Body& body, const Camera& camera) {
  const PlacedBone& neck = body[Bone::Neck];
  const Vector low = neck.from + neck.frame * (Vector{.006, 0, -.002} * H);
  const Vector high = neck.to + body[Bone::Head].frame * (Vector{.004, 0, .012} * H);
  Part part;
  part.name = "neck";
  struct Station {
    double along, radius;
  };
  for (const Station& station : {Station{0, .0300}, Station{.35, .0275}, Station{1, .0270}}) {
    const Vector centre = mix(low, high, station.along);
    const double radius = station.radius * H;
    part.rings.push_back(
        {station.along, ballOutline(camera, centre, radius), centre, neck.frame, radius, radius});
    part.depth += camera.depth(centre) / 3;
  }
  for (std::size_t i = 0; i + 1 < part.rings.size(); ++i)
    part.pieces.push_back({part.rings[i].along, part.rings[i + 1].along,
                           hulled({&part.rings[i].outline, &part.rings[i + 1].outline})});
  return part;
}

}  // namespace stile::movement
