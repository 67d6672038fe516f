#include "movement/picture.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "drawing/flattened.h"
#include "drawing/region.h"
#include "movement/arrow_painter.h"
#include "movement/camera.h"
#include "movement/figure_painter.h"
#include "movement/posing.h"
#include "movement/prop.h"

namespace stile::movement {
namespace {

using drawing::Box;
using drawing::Colour;
using drawing::Point;
using drawing::Shape;

class PictureMaker {
 public:
  PictureMaker(const Figure& figure, Form form, const PictureOptions& options)
      : figure_(figure), form_(std::move(form)), options_(options) {
    bodies_ = bodiesOf(form_);
    form_.props = propsOf(form_);
  }

  drawing::Drawing panels() {
    std::vector<std::size_t> shown;
    for (const std::string& name : figure_.panels) shown.push_back(figure_.indexOf(name));
    return lay(shown, {});
  }

  drawing::Drawing frame(const Body& body) {
    bodies_.push_back(body);
    std::vector<std::size_t> all;
    for (std::size_t i = 0; i + 1 < bodies_.size(); ++i) all.push_back(i);
    return lay({bodies_.size() - 1}, all);
  }

 private:
  Camera cameraAt(double scale) const {
    return Camera({figure_.view.azimuth + options_.turn, figure_.view.elevation}, scale);
  }

  Parts partsAt(const Camera& camera, std::size_t pose) const {
    return partsOf(bodies_[pose], camera, girthOf(options_.build), figure_.hasPaleFarLimbs);
  }

  /// What a panel covers at a scale, with everything that is painted in it.
  Box boxOf(const Camera& camera, std::size_t pose, const Parts& parts) const {
    Box box;
    for (const auto& [name, part] : parts)
      for (const Piece& piece : part.pieces)
        for (const Point& point : piece.outline) box.take(point);
    for (const Prop& prop : form_.props)
      for (const Point& point : extentOf(prop, bodies_[pose], camera)) box.take(point);
    for (std::size_t i = 0; options_.hasSeatHeight && i < form_.props.size(); ++i) {
      const Point beside = camera.at(besideSeat(form_.props[i]));
      if (isRaised(i)) box.take({beside.x - .34 * camera.scale(), beside.y});
    }
    for (const Arrow& arrow : figure_.arrows) {
      if (pose >= figure_.names.size() || arrow.pose != figure_.names[pose]) continue;
      if (const auto ends = endsOf(arrow, camera)) {
        const double margin = .04 * camera.scale();
        for (const Point& end : {ends->first, ends->second}) {
          box.take({end.x - margin, end.y - margin});
          box.take({end.x + margin, end.y + margin});
        }
      }
    }
    return box;
  }

  std::optional<Point> placeOf(const std::string& words, std::size_t otherwise, const Camera& camera) const {
    const auto at = words.find('@');
    const std::size_t pose = at == std::string::npos ? otherwise : figure_.indexOf(words.substr(at + 1));
    const auto place = anchorOf(bodies_[pose], words.substr(0, at));
    if (!place) return std::nullopt;
    return camera.at(*place);
  }

  /// Where an arrow begins and ends on the page.
  std::optional<std::pair<Point, Point>> endsOf(const Arrow& arrow, const Camera& camera) const {
    const std::size_t pose = figure_.indexOf(arrow.pose), before = pose == 0 ? bodies_.size() - 1 : pose - 1;
    auto from = placeOf(arrow.follows.empty() ? arrow.from : arrow.follows,
                        arrow.follows.empty() ? pose : before, camera);
    auto to = placeOf(!arrow.follows.empty() ? arrow.follows
                      : arrow.to.empty()     ? arrow.from
                                             : arrow.to,
                      pose, camera);
    if (to && arrow.follows.empty())
      *to = {to->x + arrow.by.x * camera.scale(), to->y - arrow.by.z * camera.scale()};
    if (!from || !to) return std::nullopt;
    // Long enough to be seen, not so long that it fills the picture.
    const double size = std::hypot(to->x - from->x, to->y - from->y), least = .20 * camera.scale(),
                 most = .42 * camera.scale();
    if (!arrow.follows.empty() && size > 1e-6 && (size < least || size > most)) {
      const double factor = std::clamp(size, least, most) / size;
      *from = {to->x - (to->x - from->x) * factor, to->y - (to->y - from->y) * factor};
    }
    const double dx = arrow.shift.x * camera.scale(), dy = -arrow.shift.z * camera.scale();
    return std::pair{Point{from->x + dx, from->y + dy}, Point{to->x + dx, to->y + dy}};
  }

  drawing::Drawing lay(const std::vector<std::size_t>& shown, const std::vector<std::size_t>& alsoMeasured) {
    constexpr double kProbe = 100;  // units per metre, for measuring
    const double gap = .10 * kProbe;
    const Camera probe = cameraAt(kProbe);
    std::vector<Box> boxes;
    std::vector<Parts> parts;  // as the probe sees them
    for (const std::size_t pose : shown) {
      parts.push_back(partsAt(probe, pose));
      Box box = boxOf(probe, pose, parts.back());
      for (const std::size_t other : alsoMeasured) {
        const Box more = boxOf(probe, other, partsAt(probe, other));
        box.take({more.left, more.top});
        box.take({more.right, more.bottom});
      }
      boxes.push_back(box);
    }
    double across = 0, along = 0, widest = 0, tallest = 0, top = 1e9, bottom = -1e9;
    for (const Box& box : boxes) {
      across += box.width() + gap, along += box.height() + gap;
      widest = std::max(widest, box.width() + gap);
      top = std::min(top, box.top), bottom = std::max(bottom, box.bottom);
    }
    tallest = bottom - top + gap;
    const double needWidth = figure_.isColumn ? widest : across,
                 needHeight = figure_.isColumn ? along : tallest;
    const double scale = kProbe * std::min(options_.width / needWidth, options_.height / needHeight);
    const double k = scale / kProbe;
    drawing::Drawing drawing;
    drawing.width = options_.width;
    drawing.height = options_.height;
    const Camera camera = cameraAt(scale);
    double place = figure_.isColumn ? (options_.height - along * k) / 2 : (options_.width - across * k) / 2;
    const double floor = options_.height - (options_.height - tallest * k) / 2 - gap * k / 2 - bottom * k;
    std::vector<Shape> shapes;
    for (std::size_t i = 0; i < shown.size(); ++i) {
      const Box& box = boxes[i];
      Point move;
      if (figure_.isColumn) {
        move = {options_.width / 2 - (box.left + box.right) / 2 * k, place + gap * k / 2 - box.top * k};
        place += (box.height() + gap) * k;
      } else {
        move = {place + gap * k / 2 - box.left * k, floor};
        place += (box.width() + gap) * k;
      }
      const bool isLast = i + 1 == shown.size();
      std::vector<Shape> panel = paint(shown[i], scaled(std::move(parts[i]), k), camera, isLast);
      moveBy(panel, move);
      if (options_.isMirrored) mirror(panel, move.x + (box.left + box.right) / 2 * k);
      std::move(panel.begin(), panel.end(), std::back_inserter(shapes));
    }
    // Frames come many a second and are not kept; only panels are worth flattening.
    const bool isFrame = shown.front() >= figure_.names.size();
    drawing.shapes.push_back(
        {drawing::Group{"figure", isFrame ? std::move(shapes) : drawing::flattened(shapes)}});
    return drawing;
  }

  std::vector<Shape> paint(std::size_t pose, Parts parts, const Camera& camera, bool isLast) const {
    const Body& body = bodies_[pose];
    const double line = std::clamp(camera.scale() / 130, .8, 2.4);
    std::vector<Shape> shapes;
    const auto add = [&shapes](std::vector<Shape> more) {
      std::move(more.begin(), more.end(), std::back_inserter(shapes));
    };
    add(ground(body, camera));
    for (const Prop& prop : form_.props)
      if (!prop.isInFront) add(paintProp(prop, body, camera, line));
    FigureStyle style{options_.build, line, figure_.nudges, {}};
    if (isLast) style.worked = figure_.worked;
    add(paintBody(std::move(parts), body, camera, style));
    for (const Prop& prop : form_.props)
      if (prop.isInFront) add(paintProp(prop, body, camera, line));
    for (const Arrow& arrow : figure_.arrows) {
      if (pose >= figure_.names.size() || arrow.pose != figure_.names[pose]) continue;
      if (const auto ends = endsOf(arrow, camera))
        add(paintArrow(ends->first, ends->second, arrow.bend, arrow.isBoth, line));
    }
    if (options_.hasSeatHeight && pose == figure_.indexOf(figure_.panels.front()))
      for (std::size_t i = 0; i < form_.props.size(); ++i)
        if (isRaised(i)) add(seatHeight(form_.props[i], camera, line));
    return shapes;
  }

  /// A pale patch under everything near the floor roots the figure better than a line.
  std::vector<Shape> ground(const Body& body, const Camera& camera) const {
    std::vector<Point> points;
    for (const PlacedBone& bone : body.bones)
      for (const Vector& end : {bone.from, bone.to})
        if (end.z < .42) points.push_back(camera.at({end.x, end.y, 0}));
    for (const Prop& prop : form_.props) {
      if (prop.kind == "mat" || prop.kind == "bed") return {};
      for (const Block& block : blocksOf(prop)) {
        if (block.centre.z > .03) continue;
        const Frame turn = aboutZ(block.heading);
        for (const double i : {-.5, .5})
          for (const double j : {-.5, .5}) {
            const Vector corner = block.centre + turn * Vector{i * block.length, j * block.width, 0};
            points.push_back(camera.at({corner.x, corner.y, 0}));
          }
      }
    }
    const drawing::Outline hull = drawing::hullOf(std::move(points));
    if (hull.size() < 3) return {};
    return {{pathOf(drawing::Region{{hull}}, {.fill = Colour::FigureGround,
                                              .stroke = Colour::FigureGround,
                                              .strokeWidth = .13 * camera.scale(),
                                              .hasRoundEnds = true})}};
  }

  /// A seat that stands at another height than in the form as written.
  bool isRaised(std::size_t prop) const {
    const auto& written = figure_.forms.front().props;
    return prop < written.size() && form_.props[prop].kind != "cycle" &&
           form_.props[prop].seat != written[prop].seat;
  }

  static Vector besideSeat(const Prop& prop) {
    return prop.at + aboutZ(prop.heading) * Vector{-.05, -.30, 0};
  }

  std::vector<Shape> seatHeight(const Prop& prop, const Camera& camera, double line) const {
    const Vector foot = besideSeat(prop);
    const Point low = camera.at({foot.x, foot.y, 0}), high = camera.at({foot.x, foot.y, prop.seat});
    std::vector<Shape> shapes = paintArrow(low, high, 0, true, line);
    drawing::TextRun text{{(low.x + high.x) / 2 - line * 5, (low.y + high.y) / 2},
                          std::to_string(std::lround(prop.seat * 100)) + " cm",
                          .10 * camera.scale(),
                          true,
                          drawing::Align::End,
                          Colour::FigureMark};
    shapes.push_back({text});
    return shapes;
  }

  template <class Change>
  static void changePoints(std::vector<Shape>& shapes, const Change& change) {
    for (Shape& shape : shapes) {
      std::visit(
          [&](auto& form) {
            using T = std::decay_t<decltype(form)>;
            if constexpr (std::is_same_v<T, drawing::Circle>) form.centre = change(form.centre);
            if constexpr (std::is_same_v<T, drawing::Line>)
              form.from = change(form.from), form.to = change(form.to);
            if constexpr (std::is_same_v<T, drawing::Polygon>)
              for (Point& point : form.points) point = change(point);
            if constexpr (std::is_same_v<T, drawing::Path>)
              for (drawing::PathStep& step : form.steps)
                step.to = change(step.to), step.control1 = change(step.control1),
                step.control2 = change(step.control2);
            if constexpr (std::is_same_v<T, drawing::TextRun>) form.at = change(form.at);
            if constexpr (std::is_same_v<T, drawing::Group>) changePoints(form.shapes, change);
          },
          shape.form);
    }
  }

  static void moveBy(std::vector<Shape>& shapes, Point move) {
    changePoints(shapes, [move](Point point) { return Point{point.x + move.x, point.y + move.y}; });
  }
  static void mirror(std::vector<Shape>& shapes, double middle) {
    changePoints(shapes, [middle](Point point) { return Point{2 * middle - point.x, point.y}; });
    for (Shape& shape : shapes)
      if (auto* text = std::get_if<drawing::TextRun>(&shape.form)) text->align = drawing::Align::Start;
  }

  const Figure& figure_;
  Form form_;
  const PictureOptions& options_;
  std::vector<Body> bodies_;
};

Form formOf(const Figure& figure, std::size_t form, double share) {
  return scaled(figure.forms[std::min(form, figure.forms.size() - 1)], share);
}

}  // namespace

drawing::Drawing pictureOf(const Figure& figure, std::size_t form, const PictureOptions& options) {
  return PictureMaker(figure, formOf(figure, form, options.share), options).panels();
}

Body bodyAt(const Form& form, double t) {
  const std::vector<Body> bodies = bodiesOf(form);
  const double steps = static_cast<double>(bodies.size() - 1), at = std::clamp(t, 0.0, 1.0) * steps;
  const std::size_t first = std::min(static_cast<std::size_t>(at), bodies.size() - 2);
  const double part = at - static_cast<double>(first);
  if (part <= 0) return bodies[first];
  if (part >= 1) return bodies[first + 1];
  return between(bodies[first], bodies[first + 1], part);
}

drawing::Drawing frameOf(const Figure& figure, std::size_t form, double t, const PictureOptions& options) {
  const Form chosen = formOf(figure, form, options.share);
  return PictureMaker(figure, chosen, options).frame(bodyAt(chosen, t));
}

}  // namespace stile::movement
