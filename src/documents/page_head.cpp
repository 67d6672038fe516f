#include "documents/page_head.h"

#include <algorithm>
#include <vector>

#include "documents/pdf_canvas.h"

namespace stile::documents {

using drawing::Colour;

Slice PageHead::slice(double width) const {
  const double edge = m_.title.size * 1.75, gap = m_.title.size * 0.5;
  const double shape = document_.logoPng.empty() ? 1 : shapeOfPng(document_.logoPng);
  const double markWidth = shape > 0 ? std::min(edge * std::max(shape, 0.3), width * 0.28) : edge;
  TextStyle who = m_.body, about = m_.body;
  who.isBold = true;
  std::vector<SetText> lines;
  const double rightRoom = width * (document_.reader == Reader::Client ? 0.46 : 0.42);
  lines.push_back(type_.set(
      document_.client.empty() ? document_.words.name + " ______________________" : document_.client,
      document_.client.empty() ? about : who, rightRoom, 0, TextAlign::End));
  for (const std::string& line : document_.about)
    lines.push_back(type_.set(line, about, rightRoom, 0, TextAlign::End));
  const bool isBroken =
      std::any_of(lines.begin(), lines.end(), [](const SetText& line) { return line.lineCount() > 1; });
  double rightHeight = 0, rightWidth = 0;
  for (const SetText& line : lines)
    rightHeight += line.height(), rightWidth = std::max(rightWidth, line.width());
  const double leftRoom = width - markWidth - gap - rightWidth - gap * 1.5;
  const SetText title = type_.set(document_.title, m_.title, leftRoom);
  const SetText clinic = type_.set(document_.clinic, about, leftRoom);
  if (isBroken || title.lineCount() > 1 || clinic.lineCount() > 2)
    return stacked(width, edge, markWidth, gap);
  const double leftHeight = title.height() + clinic.height();
  Slice slice;
  const double inner = std::max({leftHeight, rightHeight, edge});
  slice.height = inner + m_.title.size * 0.62;
  slice.paint = [head = *this, lines, title, clinic, inner, edge, markWidth, gap, leftHeight, rightHeight,
                 width, rightRoom](PdfCanvas& canvas, double y) {
    const double left = head.left_;
    canvas.ornament([&] {
      const double top = y + (inner - edge) / 2 + (inner > leftHeight ? (inner - leftHeight) / 2 * 0.6 : 0);
      if (head.document_.logoPng.empty() || !canvas.png(head.document_.logoPng, left, top, markWidth, edge))
        head.mark(canvas, left, top, edge);
      canvas.rule(left, y + inner + head.m_.title.size * 0.3, width, 2.2, Colour::Post);
    });
    const double top = y + inner - leftHeight;
    canvas.open("H1");
    title.paint(canvas.cairo(), left + markWidth + gap, top);
    canvas.close();
    if (clinic.lineCount() > 0) {
      canvas.open("P");
      clinic.paint(canvas.cairo(), left + markWidth + gap, top + title.height());
      canvas.close();
    }
    double at = y + inner - rightHeight;
    for (const SetText& line : lines) {
      canvas.open("P");
      line.paint(canvas.cairo(), left + width - rightRoom, at);
      canvas.close();
      at += line.height();
    }
  };
  return slice;
}

Slice PageHead::stacked(double width, double edge, double markWidth, double gap) const {
  const std::string name =
      document_.client.empty() ? document_.words.name + " ______________________" : document_.client;
  std::string who = name;
  for (const std::string& line : document_.about) who += " · " + line;
  const SetText title = type_.set(document_.title, m_.title, width - markWidth - gap);
  const SetText clinic = type_.set(document_.clinic, m_.body, width);
  const SetText client = type_.set(who, m_.body, width, document_.client.empty() ? 0 : name.size());
  const double first = std::max(title.height(), edge), space = m_.gap * 0.5;
  Slice slice;
  slice.height = first + space + clinic.height() + client.height() + m_.title.size * 0.5;
  slice.paint = [head = *this, title, clinic, client, first, space, width, edge, markWidth, gap,
                 rule = slice.height - m_.title.size * 0.25](PdfCanvas& canvas, double y) {
    canvas.ornament([&] {
      if (head.document_.logoPng.empty() ||
          !canvas.png(head.document_.logoPng, head.left_, y + (first - edge) / 2, markWidth, edge))
        head.mark(canvas, head.left_, y + (first - edge) / 2, edge);
      canvas.rule(head.left_, y + rule, width, 2.2, Colour::Post);
    });
    canvas.open("H1");
    title.paint(canvas.cairo(), head.left_ + markWidth + gap, y + (first - title.height()) / 2);
    canvas.close();
    double at = y + first + space;
    for (const SetText* text : {&clinic, &client}) {
      if (text->lineCount() == 0) continue;
      canvas.open("P");
      text->paint(canvas.cairo(), head.left_, at);
      canvas.close();
      at += text->height();
    }
  };
  return slice;
}

void PageHead::mark(PdfCanvas& canvas, double x, double y, double edge) const {
  using drawing::Drawing;
  using Kind = drawing::PathStep::Kind;
  Drawing mark{34, 34, "", "", {}};
  const bool isBlack = document_.isBlackOnly;
  const Colour open = isBlack ? Colour::Ink : Colour::Open, shut = isBlack ? Colour::Ink : Colour::Shut;
  for (const double left : {4.0, 25.0})
    mark.shapes.push_back(
        {drawing::Polygon{{{left, 33}, {left, 4}, {left + 5, 1}, {left + 5, 33}}, {.fill = Colour::Post}}});
  mark.shapes.push_back({drawing::Rectangle{9, 24, 16, 5, {.fill = open}}});
  for (const double left : {9.0, 16.0, 22.0})
    mark.shapes.push_back({drawing::Rectangle{left, 14.5, left == 9 ? 4.0 : 3.0, 4, {.fill = open}}});
  mark.shapes.push_back(
      {drawing::Path{{{Kind::Move, {9, 7}, {}, {}}, {Kind::Quadratic, {25, 7}, {17, 11}, {}}},
                     {.stroke = shut, .strokeWidth = 2}}});
  canvas.draw(mark, type_, x, y, edge / 34);
}

}  // namespace stile::documents
