#include "movement/head.h"

#include <cmath>
#include <numbers>

namespace stile::movement {
namespace {

using drawing::Colour;
using drawing::Outline;
using drawing::Paint;
constexpr double H = kStature;

struct Skull {
  Skull(const Body& body, const Camera& seenBy)
      : camera(seenBy), frame(body[Bone::Head].frame), base(body[Bone::Head].from) {}

  Vector at(double x, double y, double z) const { return base + frame * (Vector{x, y, z} * H); }
  Outline ball(double x, double y, double z, double radius) const {
    return ballOutline(camera, at(x, y, z), radius * H);
  }

  /// The outline of an egg, as the hull of rings through its centre.
  Outline egg(Vector centre, double x, double y, double z) const {
    const double m = (x + y) / 2;
    const Outline a = ringOutline(camera, centre, frame.x, frame.z, x * H, z * H),
                  b = ringOutline(camera, centre, frame.y, frame.z, y * H, z * H),
                  c = ringOutline(camera, centre, frame.x, frame.y, x * H, y * H),
                  d = ringOutline(camera, centre, unit(frame.x + frame.y), frame.z, m * H, z * H),
                  e = ringOutline(camera, centre, unit(frame.x - frame.y), frame.z, m * H, z * H);
    return hulled({&a, &b, &c, &d, &e});
  }

  Outline dome() const { return egg(at(.008, 0, .046), .0545, .0455, .0530); }
  Outline face() const { return egg(at(.022, 0, .026), .0390, .0425, .0420); }
  Outline lower() const {
    const Outline cheeks = face(), jaw = egg(at(.021, 0, .002), .0330, .0345, .0250),
                  chin = ball(.034, 0, -.008, .0190);
    return hulled({&cheeks, &jaw, &chin});
  }
  Outline nose() const {
    const Outline tip = ball(.0650, 0, .018, .0070), top = ball(.054, 0, .042, .006),
                  under = ball(.052, 0, .014, .010);
    return hulled({&tip, &top, &under});
  }
  Vector crown() const { return at(.004, 0, .049); }
  Outline hair() const { return egg(crown(), .0585, .0495, .0560); }
  Outline bun() const { return ball(-.066, 0, .060, .0240); }
  Outline nape() const {  // long hair gathered at the back
    const Outline low = ball(-.030, 0, .010, .0300), back = ball(-.030, 0, .045, .0340);
    return hulled({&low, &back});
  }

  const Camera& camera;
  Frame frame;
  Vector base;
};

constexpr Vector kHairAxes{.0585, .0495, .0560};

/// The part of the hair's egg on the positive side of a plane, as seen: for the cap or for the face side.
Outline capOutline(const Skull& skull, Vector normal, double off, double grow) {
  std::vector<drawing::Point> points;
  const Vector u = unit(cross(normal, {.3, .9, .1})), w = cross(normal, u);
  for (int j = 0; j <= 12; ++j) {
    const double h = off + (1 - off) * j / 12, q = std::sqrt(std::max(0.0, 1 - h * h));
    for (int i = 0; i < 28; ++i) {
      const double t = 2 * std::numbers::pi * i / 28;
      const Vector s = normal * h + u * (q * std::cos(t)) + w * (q * std::sin(t));
      if (dot(skull.frame * Vector{s.x / kHairAxes.x, s.y / kHairAxes.y, s.z / kHairAxes.z},
              skull.camera.into()) > 0)
        continue;
      const Vector off3{s.x * kHairAxes.x, s.y * kHairAxes.y, s.z * kHairAxes.z};
      points.push_back(skull.camera.at(skull.crown() + skull.frame * (off3 * (grow * H))));
    }
  }
  return drawing::hullOf(std::move(points));
}

drawing::Shape filled(const std::vector<Outline>& outlines, Colour colour) {
  return {pathOf(drawing::Region{outlines}, {.fill = colour})};
}

void addFeatures(const Skull& skull, double lineWidth, std::vector<drawing::Shape>& shapes) {
  const Camera& camera = skull.camera;
  for (const double side : {1.0, -1.0}) {
    if (dot(skull.frame * unit({.9, side * .45, 0}), camera.into()) < -.34)
      shapes.push_back({drawing::Circle{camera.at(skull.at(.056, side * .0175, .034)),
                                        .0052 * H * camera.scale(),
                                        {.fill = Colour::FigureInk}}});
    if (dot(skull.frame * unit({-.15, side, 0}), camera.into()) < -.35)
      shapes.push_back({drawing::Circle{
          camera.at(skull.at(-.002, side * .046, .024)),
          .0115 * H * camera.scale(),
          {.fill = Colour::FigureSkin, .stroke = Colour::FigureInk, .strokeWidth = lineWidth * .8}}});
  }
  if (dot(skull.frame.x, camera.into()) >= -.35) return;
  drawing::Path mouth;
  mouth.paint = {.stroke = Colour::FigureInk, .strokeWidth = lineWidth * .9, .hasRoundEnds = true};
  const auto lip = [&](double y) {
    return camera.at(skull.at(.055 - std::abs(y) * .25, y, std::abs(y) > .01 ? -.0055 : -.0105));
  };
  mouth.steps = {{drawing::PathStep::Kind::Move, lip(-.013), {}, {}},
                 {drawing::PathStep::Kind::Cubic, lip(.013), lip(-.005), lip(.005)}};
  shapes.push_back({mouth});
}

}  // namespace

Part makeHead(const Body& body, const Camera& camera, const Girth& girth) {
  const Skull skull(body, camera);
  Part part;
  part.name = "head";
  const Outline dome = skull.dome(), face = skull.face();
  part.pieces = {
      {0, 1, hulled({&dome, &face})}, {0, 1, skull.lower()}, {0, 1, skull.nose()}, {0, 1, skull.hair()}};
  if (girth.hasBun) {
    part.pieces.push_back({0, 1, skull.bun()});
    part.pieces.push_back({0, 1, skull.nape()});
  }
  part.depth = camera.depth(skull.at(.008, 0, .046));
  return part;
}

std::vector<drawing::Shape> headDetails(const Body& body, const Camera& camera, const Girth& girth,
                                        double lineWidth) {
  const Skull skull(body, camera);
  std::vector<drawing::Shape> shapes;
  const Vector across =
      girth.hasBun ? unit({-.62, 0, .78}) : unit({-.70, 0, .71});  // the hair ends at this plane
  const double off = girth.hasBun ? -.10 : -.06;
  std::vector<Outline> back;
  if (girth.hasBun) back = {skull.bun(), skull.nape()};
  const bool bunIsNear = dot(skull.frame.x, camera.into()) > 0;
  if (girth.hasBun && !bunIsNear) shapes.push_back(filled(back, Colour::FigureHair));
  // Whichever of hair and face is convex in this view goes on top.
  if (dot(skull.frame * across, camera.into()) < 0) {
    if (girth.hasBun && !bunIsNear) {
      const Outline dome = skull.dome(), face = skull.face();
      shapes.push_back(filled({hulled({&dome, &face}), skull.lower(), skull.nose()}, Colour::FigureSkin));
    }
    shapes.push_back(filled({capOutline(skull, across, off, 1)}, Colour::FigureHair));
  } else {
    shapes.push_back(filled({skull.hair()}, Colour::FigureHair));
    shapes.push_back(
        filled({capOutline(skull, -across, -off, .94), skull.lower(), skull.nose()}, Colour::FigureSkin));
  }
  if (girth.hasBun && bunIsNear) {
    shapes.push_back(filled(back, Colour::FigureHair));
    shapes.push_back({pathOf(drawing::Region{{skull.bun()}},
                             {.stroke = Colour::FigureInk, .strokeWidth = lineWidth * 1.4})});
    shapes.push_back(filled({skull.bun()}, Colour::FigureHair));  // a line's area follows it
  }
  addFeatures(skull, lineWidth, shapes);
  return shapes;
}

}  // namespace stile::movement
