#include "documents/pdf_writer.h"

#include <algorithm>
#include <memory>

#include "documents/block_setter.h"
#include "documents/page_flow.h"
#include "documents/pdf_canvas.h"
#include "documents/pdf_structure.h"
#include "documents/pdf_text.h"

namespace stile::documents {
namespace {

using drawing::Colour;

struct Page {
  double width, height, left, right, top, bottom;
};

Page pageOf(const Document& document) {
  const bool isLetter = document.paperSize == records::PaperSize::Letter;
  Page page{isLetter ? 612 : 595.276, isLetter ? 792 : 841.89, 51, 46, 37, 0};
  page.bottom = document.reader == Reader::Client ? 54 : 44;
  if (document.reader == Reader::Clinician) page.left = 43, page.right = 39;
  return page;
}

std::string pageWords(const WriterWords& words, int page, int pages) {
  std::string text = words.page;
  const auto put = [&](const std::string& slot, int number) {
    if (const auto at = text.find(slot); at != std::string::npos)
      text.replace(at, slot.size(), std::to_string(number));
  };
  put("{page}", page);
  put("{pages}", pages);
  return text;
}

class PdfWriter {
 public:
  explicit PdfWriter(const Document& document)
      : document_(document), m_(Measures::of(document)), page_(pageOf(document)) {}

  base::Result<std::string> write() {
    if (const auto font = type_.checkFont(); !font) return font.failure();
    const double width = page_.width - page_.left - page_.right;
    const double top = page_.top, bottom = page_.height - page_.bottom;
    const BlockSetter setter(type_, document_, m_, page_.left, width, bottom - top);
    Flow flow;
    add(flow, head(width));
    bool hasHeading = false;
    for (const Section& section : document_.sections) {
      hasHeading = hasHeading || !section.heading.empty();
      append(flow, sectionFlow(section, hasHeading ? setter : setter.withTopBoxes()));
    }
    const Flow foot = footFlow(setter);
    const double footHeight = foot.empty() ? 0 : heightOf(foot);
    std::vector<Placed> places = placed(flow, top, bottom);
    // The caution closes the last page; if there is no room for it, the last slice moves with it.
    double end = top;
    for (std::size_t i = 0; i < flow.size(); ++i)
      if (flow[i].kind == Step::Kind::Slice) end = places[i].y + flow[i].slice.height;
    if (!foot.empty() && end + m_.gap + footHeight > bottom) {
      for (auto at = flow.rbegin(); at != flow.rend(); ++at)
        if (at->kind == Step::Kind::Slice && at->slice.height + footHeight < bottom - top) {
          at->slice.startsPage = true;
          break;
        }
      places = placed(flow, top, bottom);
    }
    int pages = places.empty() ? 1 : places.back().page + 1;
    end = top;
    for (std::size_t i = 0; i < flow.size(); ++i)
      if (flow[i].kind == Step::Kind::Slice) end = places[i].y + flow[i].slice.height;
    const bool hasOwnPage = !foot.empty() && end + footHeight > bottom;  // no other way
    if (hasOwnPage) ++pages;
    PdfCanvas canvas(document_, page_.width, page_.height);
    canvas.open("Document");
    for (std::size_t i = 0; i < flow.size(); ++i) {
      const Step& step = flow[i];
      if (step.kind == Step::Kind::Close) {
        canvas.close();
        continue;
      }
      while (canvas.page() < places[i].page + 1) {
        runningFoot(canvas, pages, width);
        canvas.newPage();
      }
      if (step.kind == Step::Kind::Open) {
        canvas.open(step.tag);
        continue;
      }
      if (!step.slice.bookmark.empty()) canvas.bookmark(step.slice.bookmark, places[i].y);
      if (places[i].hasHead)
        canvas.ornament([&] { step.slice.head->paint(canvas, places[i].y - step.slice.head->height); });
      step.slice.paint(canvas, places[i].y);
    }
    if (hasOwnPage) {
      runningFoot(canvas, pages, width);
      canvas.newPage();
    }
    if (!foot.empty()) paintAll(foot, canvas, hasOwnPage ? top : bottom - footHeight);
    runningFoot(canvas, pages, width);
    const auto bytes = canvas.finish();
    if (!bytes) return bytes.failure();
    return withStructure(bytes.value(), document_.language, canvas.notes());
  }

 private:
  /// The mark: two slant-cut uprights; from below a whole rung, a broken rung, an empty wire.
  void mark(PdfCanvas& canvas, double x, double y, double edge) const {
    using drawing::Drawing;
    using Kind = drawing::PathStep::Kind;
    Drawing mark{34, 34, "", "", {}};
    const bool isBlack = document_.isBlackOnly;
    const Colour open = isBlack ? Colour::Ink : Colour::Open, shut = isBlack ? Colour::Ink : Colour::Shut;
    for (const double left : {4.0, 25.0})
      mark.shapes.push_back({drawing::Polygon{{{left, 33}, {left, 4}, {left + 5, 1}, {left + 5, 33}}, {.fill = Colour::Post}}});
    mark.shapes.push_back({drawing::Rectangle{9, 24, 16, 5, {.fill = open}}});
    for (const double left : {9.0, 16.0, 22.0})
      mark.shapes.push_back({drawing::Rectangle{left, 14.5, left == 9 ? 4.0 : 3.0, 4, {.fill = open}}});
    mark.shapes.push_back({drawing::Path{{{Kind::Move, {9, 7}, {}, {}}, {Kind::Quadratic, {25, 7}, {17, 11}, {}}},
                                         {.stroke = shut, .strokeWidth = 2}}});
    canvas.draw(mark, type_, x, y, edge / 34);
  }

  Slice head(double width) const {
    const double edge = m_.title.size * 1.75, gap = m_.title.size * 0.5;
    const double shape = document_.logoPng.empty() ? 1 : shapeOfPng(document_.logoPng);
    const double markWidth = shape > 0 ? std::min(edge * std::max(shape, 0.3), width * 0.28) : edge;
    TextStyle who = m_.body, about = m_.body;
    who.isBold = true;
    std::vector<SetText> lines;
    const double rightRoom = width * (document_.reader == Reader::Client ? 0.46 : 0.42);
    lines.push_back(type_.set(document_.client.empty() ? document_.words.name + " ______________________" : document_.client,
                              document_.client.empty() ? about : who, rightRoom, 0, TextAlign::End));
    for (const std::string& line : document_.about) lines.push_back(type_.set(line, about, rightRoom, 0, TextAlign::End));
    double rightHeight = 0, rightWidth = 0;
    for (const SetText& line : lines) rightHeight += line.height(), rightWidth = std::max(rightWidth, line.width());
    const double leftRoom = width - markWidth - gap - rightWidth - gap * 1.5;
    const SetText title = type_.set(document_.title, m_.title, leftRoom);
    const SetText clinic = type_.set(document_.clinic, about, leftRoom);
    const double leftHeight = title.height() + clinic.height();
    Slice slice;
    const double inner = std::max({leftHeight, rightHeight, edge});
    slice.height = inner + m_.title.size * 0.62;
    slice.paint = [this, lines, title, clinic, inner, edge, markWidth, gap, leftHeight, rightHeight, width, rightRoom](
                      PdfCanvas& canvas, double y) {
      const double left = page_.left;
      canvas.ornament([&] {
        const double top = y + (inner - edge) / 2 + (inner > leftHeight ? (inner - leftHeight) / 2 * 0.6 : 0);
        if (document_.logoPng.empty() || !canvas.png(document_.logoPng, left, top, markWidth, edge))
          mark(canvas, left, top, edge);
        canvas.rule(left, y + inner + m_.title.size * 0.3, width, 2.2, Colour::Post);
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

  Flow sectionFlow(const Section& section, const BlockSetter& setter) const {
    Flow flow;
    openTag(flow, "Sect");
    if (!section.heading.empty()) {
      // Clinicians' headings hang on a short upright.
      const bool hasUpright = document_.reader != Reader::Client;
      const double shift = hasUpright ? 10 : 0;
      const SetText words = type_.set(section.heading, m_.heading, page_.width - page_.left - page_.right - shift);
      Slice slice;
      slice.before = m_.headingGap;
      slice.height = words.height() + 1.5;
      slice.keepsNext = true;
      slice.bookmark = section.heading;
      slice.paint = [this, words, hasUpright, shift](PdfCanvas& canvas, double y) {
        if (hasUpright)
          canvas.ornament([&] { canvas.fill(page_.left, y + 1, 3, words.height() - 1.5, Colour::Post); });
        canvas.open("H2");
        words.paint(canvas.cairo(), page_.left + shift, y);
        canvas.close();
      };
      add(flow, std::move(slice));
    }
    Flow blocks = setter.set(section.blocks);
    // A sentence that leads to what follows does not stand alone under its heading.
    const bool isLeadIn = section.blocks.size() > 1 && std::holds_alternative<Paragraph>(section.blocks.front().form);
    if (isLeadIn && !section.heading.empty())
      for (Step& step : blocks)
        if (step.kind == Step::Kind::Slice) {
          step.slice.keepsNext = true;
          break;
        }
    append(flow, std::move(blocks));
    closeTag(flow);
    if (section.startsPage)
      for (Step& step : flow)
        if (step.kind == Step::Kind::Slice) {
          step.slice.startsPage = true;
          break;
        }
    return flow;
  }

  Flow footFlow(const BlockSetter& setter) const {
    Flow flow;
    if (document_.footer.empty()) return flow;
    Slice rule;
    rule.height = m_.foot.size * 0.4;
    rule.paint = [this](PdfCanvas& canvas, double y) {
      canvas.ornament(
          [&] { canvas.rule(page_.left, y, page_.width - page_.left - page_.right, 1, Colour::Edge); });
    };
    add(flow, std::move(rule));
    for (const std::string& line : document_.footer) append(flow, setter.text(line, m_.foot, "P", 0));
    return flow;
  }

  void runningFoot(PdfCanvas& canvas, int pages, double width) const {
    const TextStyle& style = m_.foot;
    const SetText number = type_.set(pageWords(document_.words, canvas.page(), pages), style, 0);
    std::string words = document_.runningFoot;
    if (words.empty()) words = document_.title + (document_.client.empty() ? "" : " · " + document_.client);
    // One line: what does not fit beside the page number is left out.
    const SetText foot = type_.set(words, style, width - number.width() - 14);
    const double y = page_.height - page_.bottom + (page_.bottom - style.line) * 0.38;
    canvas.ornament([&] {
      foot.paint(canvas.cairo(), page_.left, y, 0, 1);
      number.paint(canvas.cairo(), page_.left + width - number.width(), y);
    });
  }

  const Document& document_;
  Typesetter type_;
  Measures m_;
  Page page_;
};

}  // namespace

base::Result<std::string> toPdf(const Document& document) {
  return PdfWriter(document).write();
}

}  // namespace stile::documents
