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

std::string pair(Point point) {
  return number(point.x) + " " + number(point.y);
}

class SvgWriter {
 public:
  explicit SvgWriter(const SvgOptions& options) : options_(options) {}

  std::string write(const Drawing& drawing) {
    const std::string title = options_.idPrefix + "-title", description = options_.idPrefix + "-description";
    std::string body;
    for (const Shape& shape : drawing.shapes) body += element(shape);
    std::string text = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + number(drawing.width) +
                       "\" height=\"" + number(drawing.height) + "\" viewBox=\"0 0 " + number(drawing.width) +
                       " " + number(drawing.height) + "\" role=\"img\" aria-labelledby=\"" + escaped(title) +
                       "\" aria-describedby=\"" + escaped(description) +
                       "\" font-family=\"'Clear Sans', 'Noto Sans', Arial, sans-serif\">\n";
    text += "<title id=\"" + escaped(title) + "\">" + escaped(drawing.title) + "</title>\n";
    text += "<desc id=\"" + escaped(description) + "\">" + escaped(drawing.description) + "</desc>\n";
    if (usesHatching_) text += hatching();
    return text + body + "</svg>\n";
  }

 private:
  std::string hatchId() const { return escaped(options_.idPrefix) + "-hatch"; }

  std::string value(Colour colour) const { return std::string(valueOf(colour, options_.theme)); }

  std::string hatching() const {
    return "<defs><pattern id=\"" + hatchId() +
           "\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">"
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
    text += " stroke=\"" + value(paint.stroke) + "\" stroke-width=\"" + number(paint.strokeWidth) + "\"";
    if (paint.isDashed) text += " stroke-dasharray=\"6 4\"";
    if (paint.hasRoundEnds) text += " stroke-linecap=\"round\" stroke-linejoin=\"round\"";
    return text;
  }

  std::string element(const Shape& shape) {
    return std::visit([this](const auto& form) { return of(form); }, shape.form);
  }

  std::string of(const Rectangle& form) {
    return "<rect x=\"" + number(form.x) + "\" y=\"" + number(form.y) + "\" width=\"" + number(form.width) +
           "\" height=\"" + number(form.height) + "\"" + painted(form.paint) + "/>\n";
  }
  std::string of(const Circle& form) {
    return "<circle cx=\"" + number(form.centre.x) + "\" cy=\"" + number(form.centre.y) + "\" r=\"" +
           number(form.radius) + "\"" + painted(form.paint) + "/>\n";
  }
  std::string of(const Line& form) {
    return "<path d=\"M" + pair(form.from) + "L" + pair(form.to) + "\"" + painted(form.paint) + "/>\n";
  }
  std::string of(const Polygon& form) {
    std::string data;
    for (const Point& point : form.points) data += (data.empty() ? "M" : "L") + pair(point);
    return "<path d=\"" + data + "Z\"" + painted(form.paint) + "/>\n";
  }
  std::string of(const Path& form) {
    std::string data;
    for (const PathStep& step : form.steps) {
      switch (step.kind) {
        case PathStep::Kind::Move:
          data += "M" + pair(step.to);
          break;
        case PathStep::Kind::Line:
          data += "L" + pair(step.to);
          break;
        case PathStep::Kind::Quadratic:
          data += "Q" + pair(step.control1) + " " + pair(step.to);
          break;
        case PathStep::Kind::Cubic:
          data += "C" + pair(step.control1) + " " + pair(step.control2) + " " + pair(step.to);
          break;
        case PathStep::Kind::Close:
          data += "Z";
          break;
      }
    }
    return "<path d=\"" + data + "\"" + painted(form.paint) + "/>\n";
  }
  std::string of(const TextRun& form) {
    const char* const anchors[] = {"start", "middle", "end"};
    std::string text = "<text x=\"" + number(form.at.x) + "\" y=\"" + number(form.at.y) + "\" font-size=\"" +
                       number(form.size) + "\" fill=\"" + value(form.colour) + "\"";
    if (form.isBold) text += " font-weight=\"700\"";
    if (form.align != Align::Start)
      text += std::string(" text-anchor=\"") + anchors[static_cast<int>(form.align)] + "\"";
    return text + ">" + escaped(form.text) + "</text>\n";
  }
  std::string of(const Group& form) {
    std::string text = "<g>\n";
    for (const Shape& shape : form.shapes) text += element(shape);
    return text + "</g>\n";
  }

  const SvgOptions& options_;
  bool usesHatching_ = false;
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
