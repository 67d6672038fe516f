#include "drawing/svg.h"

#include <cmath>
#include <cstdlib>

#include "base/utf8.h"

namespace stile::drawing {
namespace {

/// Hundredths as whole numbers, so that no locale or printing mode shows through.
std::string number(double value) {
  const long long hundredths = std::llround(value * 100);
  const long long size = std::llabs(hundredths);
  std::string text = (hundredths < 0 ? "-" : "") + std::to_string(size / 100);
  const long long rest = size % 100;
  if (rest == 0) return text;
  text += "." + std::string(rest < 10 ? "0" : "") + std::to_string(rest);
  if (text.back() == '0') text.pop_back();
  return text;
}

/// The data of a path: steps from point to point in tenths, which no eye tells from hundredths, and no sign
/// or letter that can be left out. Every step is measured from the rounded point before, so nothing adds up.
class PathData {
 public:
  explicit PathData(bool isInTenths) : isInTenths_(isInTenths) {}

  void move(Point to) { step('m', 'l', {to}); }
  void line(Point to) { step('l', 'l', {to}); }
  void quadratic(Point control, Point to) { step('q', 'q', {control, to}); }
  void cubic(Point first, Point second, Point to) { step('c', 'c', {first, second, to}); }
  void close() {
    text_ += 'z';
    at_ = start_;
    repeated_ = 0;
  }
  const std::string& text() const { return text_; }

 private:
  struct Tenths {
    long long x = 0, y = 0;
  };

  /// `letter` is left out where the step before goes on with it by itself.
  void step(char letter, char next, std::initializer_list<Point> points) {
    bool isFirst = letter != repeated_;
    if (isFirst) text_ += letter;
    Tenths last = at_;
    for (const Point& point : points) {
      last = {std::llround(point.x * 10), std::llround(point.y * 10)};
      put(last.x - at_.x, isFirst);
      put(last.y - at_.y, false);
      isFirst = false;
    }
    at_ = last;
    if (letter == 'm') start_ = at_;
    repeated_ = next;
  }

  void put(long long tenths, bool isAfterLetter) {
    if (tenths < 0) text_ += '-';
    if (tenths >= 0 && !isAfterLetter) text_ += ' ';
    const long long size = std::llabs(tenths);
    if (isInTenths_) {
      text_ += std::to_string(size);
      return;
    }
    if (size >= 10 || size == 0) text_ += std::to_string(size / 10);
    if (size % 10 != 0) text_ += '.' + std::to_string(size % 10);
  }

  bool isInTenths_;
  std::string text_;
  Tenths at_, start_;
  char repeated_ = 0;
};

/// True when every stroke of the shapes has round ends, and there is one; then the group around them can say
/// so.
bool haveRoundEnds(const std::vector<Shape>& shapes) {
  bool isAny = false;
  for (const Shape& shape : shapes) {
    const bool isRound = std::visit(
        [&isAny](const auto& form) {
          using T = std::decay_t<decltype(form)>;
          if constexpr (std::is_same_v<T, Group>) {
            isAny = isAny || haveRoundEnds(form.shapes);
            return form.shapes.empty() || haveRoundEnds(form.shapes);
          } else if constexpr (std::is_same_v<T, TextRun> || std::is_same_v<T, Circle>) {
            return true;
          } else {
            if (form.paint.stroke == Colour::None) return true;
            if (form.paint.hasRoundEnds) isAny = true;
            return form.paint.hasRoundEnds;
          }
        },
        shape.form);
    if (!isRound) return false;
  }
  return isAny;
}

class SvgWriter {
 public:
  explicit SvgWriter(const SvgOptions& options) : options_(options) {}

  std::string write(const Drawing& drawing) {
    const std::string title = options_.idPrefix + "-title", description = options_.idPrefix + "-description";
    std::string body;
    for (const Shape& shape : drawing.shapes) body += element(shape);
    std::string text = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + number(drawing.width) +
                       "\" height=\"" + number(drawing.height) + "\" viewBox=\"0 0 " +
                       measure(drawing.width) + " " + measure(drawing.height) +
                       "\" role=\"img\" aria-labelledby=\"" + escaped(title) + "\" aria-describedby=\"" +
                       escaped(description) +
                       "\" font-family=\"'Clear Sans', 'Noto Sans', Arial, sans-serif\">\n";
    text += "<title id=\"" + escaped(title) + "\">" + escaped(drawing.title) + "</title>\n";
    text += "<desc id=\"" + escaped(description) + "\">" + escaped(drawing.description) + "</desc>\n";
    if (usesHatching_) text += hatching();
    return text + body + "</svg>\n";
  }

 private:
  std::string measure(double value) const {
    return options_.isCompact ? std::to_string(std::llround(value * 10)) : number(value);
  }
  std::string pair(Point point) const { return measure(point.x) + " " + measure(point.y); }

  std::string hatchId() const { return escaped(options_.idPrefix) + "-hatch"; }

  std::string value(Colour colour) const { return std::string(valueOf(colour, options_.theme)); }

  std::string hatching() const {
    return "<defs><pattern id=\"" + hatchId() +
           "\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)" +
           (options_.isCompact ? " scale(10)" : "") +
           "\">"
           "<rect width=\"9\" height=\"9\" fill=\"" +
           value(Colour::HatchGround) + "\"/><rect width=\"2.4\" height=\"9\" fill=\"" +
           value(Colour::Hatch) + "\"/></pattern></defs>\n";
  }

  std::string painted(const Paint& paint) {
    std::string text = " fill=\"";
    if (paint.isHatched) {
      usesHatching_ = true;
      text += "url(#" + hatchId() + ")\"";
    } else {
      text += value(paint.fill) + "\"";
    }
    if (paint.stroke == Colour::None) return text;
    text += " stroke=\"" + value(paint.stroke) + "\" stroke-width=\"" + measure(paint.strokeWidth) + "\"";
    if (paint.isDashed) text += " stroke-dasharray=\"" + measure(6) + " " + measure(4) + "\"";
    if (paint.hasRoundEnds && !isRoundBySelf_) text += kRound;
    return text;
  }

  std::string element(const Shape& shape) {
    return std::visit([this](const auto& form) { return of(form); }, shape.form);
  }

  std::string of(const Rectangle& form) {
    return "<rect x=\"" + measure(form.x) + "\" y=\"" + measure(form.y) + "\" width=\"" +
           measure(form.width) + "\" height=\"" + measure(form.height) + "\"" + painted(form.paint) + "/>\n";
  }
  std::string of(const Circle& form) {
    return "<circle cx=\"" + measure(form.centre.x) + "\" cy=\"" + measure(form.centre.y) + "\" r=\"" +
           measure(form.radius) + "\"" + painted(form.paint) + "/>\n";
  }
  std::string of(const Line& form) {
    return "<path d=\"M" + pair(form.from) + "L" + pair(form.to) + "\"" + painted(form.paint) + "/>\n";
  }
  std::string of(const Polygon& form) {
    PathData data(options_.isCompact);
    for (const Point& point : form.points) data.text().empty() ? data.move(point) : data.line(point);
    data.close();
    return "<path d=\"" + data.text() + "\"" + painted(form.paint) + "/>\n";
  }
  std::string of(const Path& form) {
    PathData data(options_.isCompact);
    for (const PathStep& step : form.steps) {
      switch (step.kind) {
        case PathStep::Kind::Move:
          data.move(step.to);
          break;
        case PathStep::Kind::Line:
          data.line(step.to);
          break;
        case PathStep::Kind::Quadratic:
          data.quadratic(step.control1, step.to);
          break;
        case PathStep::Kind::Cubic:
          data.cubic(step.control1, step.control2, step.to);
          break;
        case PathStep::Kind::Close:
          data.close();
          break;
      }
    }
    return "<path d=\"" + data.text() + "\"" + painted(form.paint) + "/>\n";
  }
  std::string of(const TextRun& form) {
    const char* const anchors[] = {"start", "middle", "end"};
    std::string text = "<text x=\"" + measure(form.at.x) + "\" y=\"" + measure(form.at.y) +
                       "\" font-size=\"" + measure(form.size) + "\" fill=\"" + value(form.colour) + "\"";
    if (form.isBold) text += " font-weight=\"700\"";
    if (form.align != Align::Start)
      text += std::string(" text-anchor=\"") + anchors[static_cast<int>(form.align)] + "\"";
    return text + ">" + escaped(form.text) + "</text>\n";
  }
  std::string of(const Group& form) {
    const bool saysRound = !isRoundBySelf_ && haveRoundEnds(form.shapes);
    std::string text = saysRound ? "<g" + std::string(kRound) + ">\n" : "<g>\n";
    if (saysRound) isRoundBySelf_ = true;
    for (const Shape& shape : form.shapes) text += element(shape);
    if (saysRound) isRoundBySelf_ = false;
    return text + "</g>\n";
  }

  static constexpr const char* kRound = " stroke-linecap=\"round\" stroke-linejoin=\"round\"";

  const SvgOptions& options_;
  bool usesHatching_ = false;
  bool isRoundBySelf_ = false;  // the group around says it
};

}  // namespace

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : base::wellFormedUtf8(text)) {
    const bool isControl = static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t';
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else if (c == '"')
      out += "&quot;";
    else if (isControl)
      out += "\xEF\xBF\xBD";
    else
      out += c;
  }
  return out;
}

std::string toSvg(const Drawing& drawing, const SvgOptions& options) {
  return SvgWriter(options).write(drawing);
}

}  // namespace stile::drawing
