#include "documents/pdf_path.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numbers>
#include <utility>

namespace stile::documents {

using drawing::Colour;
using drawing::Point;

void PathWriter::number(double value) {
  // A hundredth of a unit is far below what paper shows.
  const long hundredths = std::lround(value * 100);
  char text[24];
  const long whole = std::labs(hundredths) / 100, rest = std::labs(hundredths) % 100;
  if (hundredths < 0) path_ += '-';
  path_.append(text, std::to_chars(text, text + sizeof text, whole).ptr);
  if (rest != 0) {
    path_ += '.';
    path_ += static_cast<char>('0' + rest / 10);
    if (rest % 10 != 0) path_ += static_cast<char>('0' + rest % 10);
  }
  path_ += ' ';
}

void PathWriter::begin() {
  path_.clear();
  least_ = {1e9, 1e9}, most_ = {-1e9, -1e9};
}

void PathWriter::point(Point point, char step) {
  least_ = {std::min(least_.x, point.x), std::min(least_.y, point.y)};
  most_ = {std::max(most_.x, point.x), std::max(most_.y, point.y)};
  number(point.x);
  number(point.y);
  if (step == 0) return;
  path_ += step;
  path_ += '\n';
}

void PathWriter::cubic(Point a, Point b, Point to) {
  point(a, 0);
  point(b, 0);
  point(to, 'c');
}

void PathWriter::colour(Colour colour, const char* area) {
  const std::string_view value = drawing::valueOf(colour, drawing::Theme::Paper);
  for (const std::size_t at : {1, 3, 5}) {
    int part = 0;
    std::from_chars(value.data() + at, value.data() + at + 2, part, 16);
    char text[24];
    out_.append(text, std::to_chars(text, text + sizeof text, part / 255.0, std::chars_format::fixed, 4).ptr);
    out_ += ' ';
  }
  out_ += area;
}

void PathWriter::line(const drawing::Paint& paint) {
  if (state_.stroke != paint.stroke) colour(paint.stroke, "RG\n");
  if (state_.width != paint.strokeWidth) {
    const std::string path = std::exchange(path_, {});
    number(paint.strokeWidth);
    out_ += std::exchange(path_, path) + "w\n";
  }
  if (state_.isDashed != paint.isDashed) out_ += paint.isDashed ? "[6 4] 0 d\n" : "[] 0 d\n";
  if (state_.hasRoundEnds != paint.hasRoundEnds) out_ += paint.hasRoundEnds ? "1 J 1 j\n" : "0 J 0 j\n";
  state_.stroke = paint.stroke, state_.width = paint.strokeWidth;
  state_.isDashed = paint.isDashed, state_.hasRoundEnds = paint.hasRoundEnds;
}

/// Lines 2.4 wide, 9 apart, at 45 degrees, inside the path.
void PathWriter::hatched() {
  const Point least = least_, most = most_;
  const std::string outline = path_;
  out_ += "q\n";
  colour(Colour::HatchGround, "rg\n");
  out_ += outline + "f\n" + outline + "W n\n";
  colour(Colour::Hatch, "RG\n");
  out_ += "2.4 w [] 0 d 0 J 0 j\n";
  const double step = 9 * std::numbers::sqrt2, height = most.y - least.y;
  path_.clear();
  for (double x = least.x - height; x < most.x + step; x += step) {
    point({x, most.y}, 'm');
    point({x + height, least.y}, 'l');
  }
  out_ += path_ + "S\nQ\n";
  path_ = outline;
}

void PathWriter::painted(const drawing::Paint& paint) {
  const bool isLined = paint.stroke != Colour::None,
             isFilled = !paint.isHatched && paint.fill != Colour::None;
  if (paint.isHatched) hatched();
  if (isFilled && state_.fill != paint.fill) {
    colour(paint.fill, "rg\n");
    state_.fill = paint.fill;
  }
  if (isLined) line(paint);
  if (isLined || isFilled) out_ += path_ + (isLined && isFilled ? "B\n" : isLined ? "S\n" : "f\n");
}

void PathWriter::write(const drawing::Rectangle& form) {
  begin();
  point({form.x, form.y}, 'm');
  point({form.x + form.width, form.y}, 'l');
  point({form.x + form.width, form.y + form.height}, 'l');
  point({form.x, form.y + form.height}, 'l');
  path_ += "h\n";
  painted(form.paint);
}

void PathWriter::write(const drawing::Circle& form) {
  // Four cubics, off by less than 3 of 10,000 of the radius (the usual 4/3 (sqrt 2 - 1)).
  const auto [x, y] = form.centre;
  const double r = form.radius, k = r * 4.0 / 3 * (std::numbers::sqrt2 - 1);
  begin();
  point({x + r, y}, 'm');
  cubic({x + r, y + k}, {x + k, y + r}, {x, y + r});
  cubic({x - k, y + r}, {x - r, y + k}, {x - r, y});
  cubic({x - r, y - k}, {x - k, y - r}, {x, y - r});
  cubic({x + k, y - r}, {x + r, y - k}, {x + r, y});
  path_ += "h\n";
  painted(form.paint);
}

void PathWriter::write(const drawing::Line& form) {
  begin();
  point(form.from, 'm');
  point(form.to, 'l');
  painted(form.paint);
}

void PathWriter::write(const drawing::Polygon& form) {
  begin();
  for (const Point& each : form.points) point(each, path_.empty() ? 'm' : 'l');
  path_ += "h\n";
  if (!form.points.empty()) painted(form.paint);
}

void PathWriter::write(const drawing::Path& form) {
  using Kind = drawing::PathStep::Kind;
  begin();
  Point at;
  for (const drawing::PathStep& step : form.steps) {
    const auto &a = step.control1, &to = step.to;
    if (step.kind == Kind::Move) point(to, 'm');
    if (step.kind == Kind::Line) point(to, 'l');
    if (step.kind == Kind::Quadratic)  // raised to a cubic
      cubic({at.x + 2 * (a.x - at.x) / 3, at.y + 2 * (a.y - at.y) / 3},
            {to.x + 2 * (a.x - to.x) / 3, to.y + 2 * (a.y - to.y) / 3}, to);
    if (step.kind == Kind::Cubic) cubic(a, step.control2, to);
    if (step.kind == Kind::Close)
      path_ += "h\n";
    else
      at = to;
  }
  if (!form.steps.empty()) painted(form.paint);
}

std::string PathWriter::taken() {
  state_ = {};
  return std::exchange(out_, {});
}

}  // namespace stile::documents
