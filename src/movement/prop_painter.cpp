#include <algorithm>
#include <array>
#include <cmath>

#include "movement/flesh.h"
#include "movement/prop.h"

namespace stile::movement {
namespace {

using drawing::Colour;
using drawing::Outline;

struct Face {
  Vector normal;
  std::array<Vector, 4> corners;
};

std::vector<Face> facesOf(const Block& block) {
  const Frame turn = aboutZ(block.heading);
  const auto corner = [&](int i, int j, int k) {
    return block.centre + turn * Vector{i * block.length / 2, j * block.width / 2, 0} +
           Vector{0, 0, k > 0 ? block.height : 0};
  };
  std::vector<Face> faces;
  for (const int sign : {1, -1}) {
    faces.push_back({turn.x * sign,
                     {corner(sign, 1, 1), corner(sign, 1, -1), corner(sign, -1, -1), corner(sign, -1, 1)}});
    faces.push_back({turn.y * sign,
                     {corner(1, sign, 1), corner(1, sign, -1), corner(-1, sign, -1), corner(-1, sign, 1)}});
    faces.push_back({{0, 0, static_cast<double>(sign)},
                     {corner(1, 1, sign), corner(1, -1, sign), corner(-1, -1, sign), corner(-1, 1, sign)}});
  }
  return faces;
}

double depthOf(const Block& block, const Camera& camera) {
  return camera.depth(block.centre + Vector{0, 0, block.height / 2});
}

class PropPainter {
 public:
  PropPainter(const Camera& camera, double lineWidth) : camera_(camera), lineWidth_(lineWidth) {}

  void block(const Block& block) {
    for (const Face& face : facesOf(block)) {
      if (dot(face.normal, camera_.into()) >= -.01) continue;
      drawing::Polygon polygon;
      for (const Vector& corner : face.corners) polygon.points.push_back(camera_.at(corner));
      polygon.paint = {.fill = block.isDark         ? Colour::PropDark
                               : face.normal.z > .5 ? Colour::PropTop
                                                    : Colour::PropFace,
                       .stroke = Colour::PropInk,
                       .strokeWidth = lineWidth_ * .85,
                       .hasRoundEnds = true};
      shapes_.push_back({polygon});
      if (block.isHatchedAtEnds && std::abs(dot(face.normal, aboutZ(block.heading).y)) > .9)
        hatch(polygon.points);
    }
  }

  void rod(const Rod& rod) {
    if (length(rod.to - rod.from) < 1e-6)
      return area(ballOutline(camera_, rod.from, rod.radius), Colour::PropTop);
    const Outline a = roundAt(rod, rod.from), b = roundAt(rod, rod.to);
    const Colour fill = rod.isDark ? Colour::PropDark : Colour::PropTop;
    area(hulled({&a, &b}), fill);
    const bool fromIsNear = camera_.depth(rod.from) < camera_.depth(rod.to);
    area(fromIsNear ? a : b, fill);
  }

  void course(const std::vector<Vector>& course, bool isBroad) {
    drawing::Path path;
    for (const Vector& point : course)
      path.steps.push_back(
          {path.steps.empty() ? drawing::PathStep::Kind::Move : drawing::PathStep::Kind::Line,
           camera_.at(point),
           {},
           {}});
    const double width = isBroad ? 5.4 : 2.2;
    path.paint = {
        .stroke = Colour::FigureInk, .strokeWidth = lineWidth_ * (width + 1.6), .hasRoundEnds = true};
    shapes_.push_back({path});
    path.paint = {.stroke = isBroad ? Colour::FigureHalo : Colour::PropDark,
                  .strokeWidth = lineWidth_ * width,
                  .hasRoundEnds = true};
    shapes_.push_back({path});
  }

  /// A water line: waves across the picture at a height.
  void water(const Prop& prop) {
    const double half = (prop.length > 0 ? prop.length : 1.6) / 2;
    for (const double drop : {0.0, .10, .20}) {
      drawing::Path path;
      path.paint = {.stroke = drop == 0 ? Colour::PropInk : Colour::PropDark,
                    .strokeWidth = lineWidth_ * (drop == 0 ? 1.4 : 1),
                    .hasRoundEnds = true};
      const drawing::Point centre = camera_.at({prop.at.x, prop.at.y, prop.height - drop});
      const double wave = .11 * camera_.scale(), high = .025 * camera_.scale(),
                   reach = half * camera_.scale() * (1 - drop);
      path.steps.push_back({drawing::PathStep::Kind::Move, {centre.x - reach, centre.y}, {}, {}});
      for (double x = -reach; x < reach - 1; x += wave * 2)
        path.steps.push_back({drawing::PathStep::Kind::Cubic,
                              {centre.x + x + wave * 2, centre.y},
                              {centre.x + x + wave * .7, centre.y - high * 2},
                              {centre.x + x + wave * 1.3, centre.y + high * 2}});
      shapes_.push_back({path});
    }
  }

  std::vector<drawing::Shape> take() { return std::move(shapes_); }

 private:
  Outline roundAt(const Rod& rod, Vector centre) const {
    const Vector axis = unit(rod.to - rod.from);
    Vector side = cross(axis, {0, 0, 1});
    if (length(side) < .1) side = {1, 0, 0};
    side = unit(side);
    return ringOutline(camera_, centre, side, cross(axis, side), rod.radius, rod.radius);
  }

  void area(const Outline& outline, Colour fill) {
    shapes_.push_back({pathOf(drawing::Region{{outline}},
                              {.fill = fill, .stroke = Colour::FigureInk, .strokeWidth = lineWidth_ * .8})});
  }

  void hatch(const Outline& face) {
    const auto [left, right] =
        std::minmax_element(face.begin(), face.end(), [](auto a, auto b) { return a.x < b.x; });
    const auto [top, bottom] =
        std::minmax_element(face.begin(), face.end(), [](auto a, auto b) { return a.y < b.y; });
    const double step = .055 * camera_.scale(), wide = right->x - left->x;
    const drawing::Region inside = drawing::unionOf({face});
    for (double y = top->y - wide; y < bottom->y + wide; y += step)
      for (const Outline& line : clippedLine({{left->x, y + wide}, {right->x, y}}, inside))
        if (line.size() == 2)
          shapes_.push_back(
              {drawing::Line{line[0], line[1], {.stroke = Colour::PropInk, .strokeWidth = lineWidth_ * .5}}});
  }

  const Camera& camera_;
  double lineWidth_;
  std::vector<drawing::Shape> shapes_;
};

}  // namespace

std::vector<drawing::Shape> paintProp(const Prop& prop, const Body& body, const Camera& camera,
                                      double lineWidth) {
  PropPainter painter(camera, lineWidth);
  std::vector<Block> blocks = blocksOf(prop);
  std::stable_sort(blocks.begin(), blocks.end(),
                   [&](const Block& a, const Block& b) { return depthOf(a, camera) > depthOf(b, camera); });
  if (isSeat(prop)) {
    // The seat hides the legs below it and is hidden by nothing but the back and the arms.
    const auto seat = std::find_if(blocks.begin(), blocks.end(),
                                   [&](const Block& b) { return b.length > .3 && b.width > .3; });
    if (seat != blocks.end() && camera.into().z < 0) {
      const Block block = *seat;
      blocks.erase(seat);
      const auto above = std::stable_partition(blocks.begin(), blocks.end(),
                                               [&](const Block& b) { return b.centre.z < prop.seat - .01; });
      const bool backIsNear = dot(aboutZ(prop.heading).x, camera.into()) > 0;
      if (backIsNear) {
        blocks.insert(above, block);
      } else {
        // Seen from the front: the back first, then the seat, then what stands on it at the front.
        const auto front = std::stable_partition(above, blocks.end(), [&](const Block& b) {
          return dot(aboutZ(prop.heading).x, b.centre - prop.at) < -.1;
        });
        blocks.insert(front, block);
      }
    }
  }
  for (const Block& block : blocks) painter.block(block);
  for (const Rod& rod : rodsOf(prop, body)) painter.rod(rod);
  if (const auto course = courseOf(prop, body); course.size() > 1)
    painter.course(course, prop.kind == "towel");
  if (prop.kind == "water") painter.water(prop);
  return painter.take();
}

std::vector<drawing::Point> extentOf(const Prop& prop, const Body& body, const Camera& camera) {
  std::vector<drawing::Point> points;
  for (const Block& block : blocksOf(prop))
    for (const Face& face : facesOf(block))
      for (const Vector& corner : face.corners) points.push_back(camera.at(corner));
  for (const Rod& rod : rodsOf(prop, body)) {
    for (const Vector& end : {rod.from, rod.to})
      for (const drawing::Point& point : ballOutline(camera, end, rod.radius)) points.push_back(point);
  }
  for (const Vector& point : courseOf(prop, body)) points.push_back(camera.at(point));
  if (prop.kind == "water") {
    const double half = (prop.length > 0 ? prop.length : 1.6) / 2 * camera.scale();
    const drawing::Point centre = camera.at({prop.at.x, prop.at.y, prop.height});
    points.push_back({centre.x - half, centre.y});
    points.push_back({centre.x + half, centre.y});
  }
  return points;
}

}  // namespace stile::movement
