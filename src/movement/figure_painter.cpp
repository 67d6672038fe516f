#include "movement/figure_painter.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "movement/head.h"
#include "movement/mark.h"

namespace stile::movement {
namespace {

using drawing::Colour;
using drawing::Outline;
using drawing::Region;

constexpr double kTolerance = .10;  // drawing units a simplified outline may be off

Colour fillOf(Cloth cloth, bool isFar) {
  switch (cloth) {
    case Cloth::Skin:
      return isFar ? Colour::FigureFarSkin : Colour::FigureSkin;
    case Cloth::Shirt:
      return isFar ? Colour::FigureFarShirt : Colour::FigureShirt;
    case Cloth::Trousers:
      return isFar ? Colour::FigureFarTrousers : Colour::FigureTrousers;
    case Cloth::Shoe:
      return isFar ? Colour::FigureFarShoe : Colour::FigureShoe;
    case Cloth::Hair:
      return Colour::FigureHair;
  }
  return Colour::None;
}

bool isSamePaint(const drawing::Paint& a, const drawing::Paint& b) {
  return a.fill == b.fill && a.stroke == b.stroke && a.strokeWidth == b.strokeWidth &&
         a.hasRoundEnds == b.hasRoundEnds;
}

/// Paths that follow each other with the same paint become one: fewer bytes, the same picture. Outlines of
/// regions all turn the same way, so that what they cover twice stays covered.
std::vector<drawing::Shape> merged(std::vector<drawing::Shape> shapes) {
  std::vector<drawing::Shape> fewer;
  for (drawing::Shape& shape : shapes) {
    auto* path = std::get_if<drawing::Path>(&shape.form);
    auto* before = fewer.empty() ? nullptr : std::get_if<drawing::Path>(&fewer.back().form);
    if (path != nullptr && before != nullptr && isSamePaint(path->paint, before->paint))
      before->steps.insert(before->steps.end(), path->steps.begin(), path->steps.end());
    else
      fewer.push_back(std::move(shape));
  }
  return fewer;
}

class Painter {
 public:
  Painter(Parts parts, const Body& body, const Camera& camera, const FigureStyle& style)
      : body_(body), camera_(camera), style_(style), girth_(girthOf(style.build)), parts_(std::move(parts)) {}

  std::vector<drawing::Shape> run() {
    for (const auto& [name, nearer] : style_.nudges)
      if (const auto at = parts_.find(name); at != parts_.end()) at->second.depth -= nearer;
    std::vector<const Part*> order;
    for (const auto& [name, part] : parts_) order.push_back(&part);
    std::stable_sort(order.begin(), order.end(),
                     [](const Part* a, const Part* b) { return a->depth > b->depth; });
    for (const Part* part : order) {
      paint(*part);
      done_.insert(part->name);
    }
    return merged(std::move(shapes_));
  }

 private:
  static Colour inkOf(const Part& part) { return part.isFar ? Colour::FigureFarInk : Colour::FigureInk; }

  void ink(const Region& region, Colour colour, double factor = 1) {
    if (region.isEmpty()) return;
    shapes_.push_back(
        {pathOf(simplified(region, kTolerance),
                {.stroke = colour, .strokeWidth = 2 * style_.lineWidth * factor, .hasRoundEnds = true})});
  }
  void fill(const Region& region, Colour colour) {
    if (!region.isEmpty()) shapes_.push_back({pathOf(region, {.fill = colour})});
  }

  /// The line of limbs that will be painted over this part later, where they grow out of it.
  void inkOfLaterJoins(const Part& part) {
    for (const auto& [name, join] : part.joins) {
      const auto other = parts_.find(name);
      if (other == parts_.end() || done_.count(name) != 0) continue;
      const auto theirs = other->second.joins.find(part.name);
      if (theirs == other->second.joins.end()) continue;
      const Join& root = theirs->second;
      if (root.at != 0 && root.at != 1) continue;
      const auto outlines =
          root.at == 0 ? other->second.outlines(-9, root.length) : other->second.outlines(1 - root.length, 9);
      ink(drawing::unionOf(outlines), inkOf(other->second));
    }
  }

  /// The shirt hangs over the top of a thigh, unless the knee is drawn up or points at the viewer.
  bool isTucked(const Part& part) const {
    if (part.name.find("thigh") == std::string::npos || done_.count("torso") == 0) return false;
    const Vector thigh = body_[*boneNamed(part.name)].frame.z;
    const bool isFarSide = part.joins.count("torso") == 0;
    return !isFarSide && dot(thigh, body_[Bone::Pelvis].frame.z) > -.17 &&
           std::abs(dot(thigh, camera_.into())) < .6;
  }

  Region shirtTail() const {
    const auto& rings = parts_.at("torso").rings;
    return Region{{hulled({&rings[3].outline, &rings[5].outline})}};
  }

  double depthOf(const Part& part, const Covering& covering) const {
    double sum = 0;
    int count = 0;
    for (const Ring& ring : part.rings) {
      if (ring.along < covering.from || ring.along > covering.to) continue;
      sum += camera_.depth(ring.centre);
      ++count;
    }
    return count == 0 ? 0 : sum / count;
  }

  void paint(const Part& part) {
    inkOfLaterJoins(part);
    double from = -9, to = 9;
    for (const auto& [name, join] : part.joins) {
      if (done_.count(name) == 0) continue;
      if (join.at == 0) from = join.length;
      if (join.at == 1) to = 1 - join.length;
    }
    const bool tucked = isTucked(part);
    const auto visible = [&](const Region& region) {
      return tucked ? differenceOf(region, shirtTail()) : region;
    };
    ink(visible(drawing::unionOf(part.outlines(from, to))), inkOf(part));
    std::vector<Covering> coverings = part.coverings;
    std::stable_sort(coverings.begin(), coverings.end(), [&](const Covering& a, const Covering& b) {
      return depthOf(part, a) > depthOf(part, b);
    });
    for (const Covering& covering : coverings) {
      std::vector<Outline> outlines;
      for (const Piece& piece : part.pieces) {  // they all turn the same way, so that they add up
        const double middle = (piece.from + piece.to) / 2;
        if (middle >= covering.from && middle < covering.to) outlines.push_back(piece.outline);
      }
      fill(visible(Region{std::move(outlines)}), fillOf(covering.cloth, part.isFar));
    }
    if (part.hem >= 0) hem(part);
    marks(part);
    if (part.name == "head")
      for (drawing::Shape& shape : headDetails(body_, camera_, girth_, style_.lineWidth))
        shapes_.push_back(std::move(shape));
  }

  /// The visible half of a ring where a cloth ends.
  void hem(const Part& part) {
    const auto ring = std::find_if(part.rings.begin(), part.rings.end(),
                                   [&](const Ring& each) { return std::abs(each.along - part.hem) < 1e-6; });
    if (ring == part.rings.end()) return;
    const std::size_t n = ring->outline.size();
    const auto isVisible = [&](std::size_t i) {
      const double t = 2 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(n);
      return camera_.faces(ring->frame.y * std::cos(t) + ring->frame.x * std::sin(t));
    };
    std::size_t start = 0;
    while (start < n && (isVisible(start) || !isVisible((start + 1) % n))) ++start;
    Outline line;
    for (std::size_t k = 1; k <= n && isVisible((start + k) % n); ++k)
      line.push_back(ring->outline[(start + k) % n]);
    if (line.size() < 2) return;
    drawing::Path path;
    path.paint = {.stroke = inkOf(part), .strokeWidth = style_.lineWidth * .8};
    for (std::size_t i = 0; i < line.size(); i += (i + 3 < line.size() || i + 1 == line.size() ? 2 : 1))
      path.steps.push_back(
          {path.steps.empty() ? drawing::PathStep::Kind::Move : drawing::PathStep::Kind::Line,
           line[i],
           {},
           {}});
    shapes_.push_back({path});
  }

  /// A white rim keeps the mark apart from dark cloth in black and white.
  void marks(const Part& part) {
    Region whole;
    for (const std::string& area : style_.worked) {
      const auto outlines = markOutlines(area, part, body_, camera_);
      if (outlines.empty()) continue;
      if (whole.isEmpty()) whole = drawing::unionOf(part.outlines());
      const Region mark = intersectionOf(drawing::unionOf(outlines), whole);
      fill(intersectionOf(drawing::grown(mark, style_.lineWidth * .75), whole), Colour::FigureHalo);
      fill(mark, Colour::FigureMark);
    }
  }

  const Body& body_;
  const Camera& camera_;
  const FigureStyle& style_;
  Girth girth_;
  Parts parts_;
  std::set<std::string> done_;
  std::vector<drawing::Shape> shapes_;
};

}  // namespace

std::vector<drawing::Shape> paintBody(Parts parts, const Body& body, const Camera& camera,
                                      const FigureStyle& style) {
  return Painter(std::move(parts), body, camera, style).run();
}

}  // namespace stile::movement
