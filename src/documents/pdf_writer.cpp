#include "documents/pdf_writer.h"

#include <algorithm>
#include <memory>

#include "documents/block_setter.h"
#include "documents/page_flow.h"
#include "documents/page_head.h"
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
    Set best = set(0);
    // Less white where that saves a page; what can save none is not tried.
    for (int level = 1; level <= Measures::kTightest && best.pages > 1 && best.filled < kCanSave * (best.pages - 1); ++level)
      if (Set tighter = set(level); tighter.pages < best.pages) best = std::move(tighter);
    return painted(best);
  }

 private:
  /// A paper laid out.
  struct Set {
    Measures measures;
    Flow flow, foot;
    std::vector<Placed> places;
    int pages = 1;
    double footHeight = 0;
    bool hasOwnPage = false;  ///< the foot stands alone
    double filled = 0;        ///< pages that the slices would fill without a gap
  };
  /// The tightest setting takes less than a sixth of the height away.
  static constexpr double kCanSave = 1.18;

  double top() const { return page_.top; }
  double bottom() const { return page_.height - page_.bottom; }
  double width() const { return page_.width - page_.left - page_.right; }

  Set set(int level) {
    m_ = Measures::of(document_).tightened(level);
    running_ = runningLines();
    page_ = pageOf(document_);
    page_.bottom += static_cast<double>(running_.size() - 1) * m_.foot.line;
    Set set;
    set.measures = m_;
    const BlockSetter setter(type_, document_, m_, page_.left, width(), bottom() - top());
    add(set.flow, PageHead(document_, type_, m_, page_.left).slice(width()));
    bool hasHeading = false;
    for (const Section& section : document_.sections) {
      hasHeading = hasHeading || !section.heading.empty();
      append(set.flow, sectionFlow(section, hasHeading ? setter : setter.withTopBoxes()));
    }
    set.foot = footFlow(setter);
    set.footHeight = set.foot.empty() ? 0 : heightOf(set.foot);
    set.places = placed(set.flow, top(), bottom());
    // The caution closes the last page; if there is no room for it, what ends there moves with it.
    if (!set.foot.empty() && endOf(set) + m_.gap + set.footHeight > bottom()) {
      startLastPage(set);
      set.places = placed(set.flow, top(), bottom());
    }
    set.pages = set.places.empty() ? 1 : set.places.back().page + 1;
    set.hasOwnPage = !set.foot.empty() && endOf(set) + set.footHeight > bottom();  // no other way
    if (set.hasOwnPage) ++set.pages;
    set.filled = (heightOf(set.flow) + set.footHeight) / (bottom() - top());
    return set;
  }

  /// The last slice, and those that must stand on its page, begin one of their own if the foot fits below them.
  void startLastPage(Set& set) const {
    Slice* first = nullptr;
    double height = set.footHeight;
    for (auto at = set.flow.rbegin(); at != set.flow.rend(); ++at) {
      if (at->kind != Step::Kind::Slice) continue;
      if (first != nullptr && !at->slice.keepsNext) break;
      first = &at->slice;
      height += at->slice.height + at->slice.before;
    }
    if (first != nullptr && height < bottom() - top()) first->startsPage = true;
  }

  /// Where the last slice ends.
  double endOf(const Set& set) const {
    double end = top();
    for (std::size_t i = 0; i < set.flow.size(); ++i)
      if (set.flow[i].kind == Step::Kind::Slice && set.places[i].page == set.places.back().page)
        end = std::max(end, set.places[i].y + set.flow[i].slice.height);
    return end;
  }

  base::Result<std::string> painted(const Set& set) {
    m_ = set.measures;
    PdfCanvas canvas(document_, page_.width, page_.height);
    canvas.open("Document");
    for (std::size_t i = 0; i < set.flow.size(); ++i) {
      const Step& step = set.flow[i];
      const Placed& place = set.places[i];
      if (step.kind == Step::Kind::Close) {
        canvas.close();
        continue;
      }
      while (canvas.page() < place.page + 1) {
        runningFoot(canvas, set.pages);
        canvas.newPage();
      }
      if (step.kind == Step::Kind::Open) {
        canvas.open(step.tag);
        continue;
      }
      if (!step.slice.bookmark.empty()) canvas.bookmark(step.slice.bookmark, place.y);
      if (place.hasHead) canvas.ornament([&] { step.slice.head->paint(canvas, place.y - step.slice.head->height); });
      (place.isRight ? step.slice.paintRight : step.slice.paint)(canvas, place.y);
    }
    if (set.hasOwnPage) {
      runningFoot(canvas, set.pages);
      canvas.newPage();
    }
    if (!set.foot.empty()) paintAll(set.foot, canvas, set.hasOwnPage ? top() : bottom() - set.footHeight);
    runningFoot(canvas, set.pages);
    const auto bytes = canvas.finish();
    if (!bytes) return bytes.failure();
    return withStructure(bytes.value(), document_.language, canvas.notes());
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
    Flow blocks = blocksOf(section, setter, heightOf(flow));
    // A sentence that leads to what follows does not stand alone under its heading.
    const bool isLeadIn = section.blocks.size() > 1 && std::holds_alternative<Paragraph>(section.blocks.front().form);
    if (isLeadIn && !section.heading.empty())
      for (Step& step : blocks)
        if (step.kind == Step::Kind::Slice) {
          step.slice.keepsNext = true;
          break;
        }
    append(flow, std::move(blocks));
    if (section.staysWhole || isSlip(section)) keepTogether(flow);
    closeTag(flow);
    if (section.startsPage || (document_.isOneExerciseAPage && beginsWithExercise(section))) startPage(flow, section.sharedUpTo);
    return flow;
  }

  /// The blocks of a section; an exercise below its heading has the room that the heading leaves, and
  /// where each exercise has a page of its own, all but the first of a section start one.
  Flow blocksOf(const Section& section, const BlockSetter& setter, double heading) const {
    Flow flow;
    for (std::size_t i = 0; i < section.blocks.size(); ++i) {
      const auto* box = std::get_if<Box>(&section.blocks[i].form);
      const bool isExercise = box != nullptr && box->kind == BoxKind::Exercise;
      const bool isFirst = isExercise && i == 0;
      const std::vector<Block> one{section.blocks[i]};
      Flow block = (isFirst && heading > 0 ? setter.lower(heading + m_.gap * 2) : setter).set(one);
      if (isExercise && document_.isOneExerciseAPage && !isFirst) startPage(block);
      append(flow, std::move(block));
    }
    return flow;
  }

  static void startPage(Flow& flow, double sharedUpTo = 0) {
    for (Step& step : flow)
      if (step.kind == Step::Kind::Slice) {
        step.slice.startsPage = true;
        step.slice.sharedUpTo = sharedUpTo;
        return;
      }
  }

  /// A slip to cut off is no use in two pieces.
  static bool isSlip(const Section& section) {
    return std::any_of(section.blocks.begin(), section.blocks.end(),
                       [](const Block& block) { return std::holds_alternative<CutLine>(block.form); });
  }
  static void keepTogether(Flow& flow) {
    Slice* last = nullptr;
    for (Step& step : flow)
      if (step.kind == Step::Kind::Slice) {
        step.slice.keepsNext = true;
        last = &step.slice;
      }
    if (last != nullptr) last->keepsNext = false;
  }

  static bool beginsWithExercise(const Section& section) {
    if (section.blocks.empty()) return false;
    const auto* box = std::get_if<Box>(&section.blocks.front().form);
    return box != nullptr && box->kind == BoxKind::Exercise;
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

  /// The running foot cut into lines at its dots, with room for the page number beside the last one.
  std::vector<std::string> runningLines() const {
    const std::string dot = " · ";
    std::string words = document_.runningFoot;
    if (words.empty()) words = document_.title + (document_.client.empty() ? "" : dot + document_.client);
    const double number = type_.widthOf(pageWords(document_.words, 88, 88), m_.foot) + 14;
    std::vector<std::string> lines{""};
    for (std::size_t at = 0; at <= words.size();) {
      const std::size_t end = std::min(words.find(dot, at), words.size());
      const std::string part = words.substr(at, end - at);
      const std::string longer = lines.back().empty() ? part : lines.back() + dot + part;
      const bool isLast = end == words.size();
      if (lines.back().empty() || type_.widthOf(longer, m_.foot) + (isLast ? number : 0) <= width())
        lines.back() = longer;
      else
        lines.push_back(part);
      at = end + dot.size();
    }
    if (type_.widthOf(lines.back(), m_.foot) + number > width()) lines.emplace_back();
    return lines;
  }

  void runningFoot(PdfCanvas& canvas, int pages) const {
    const TextStyle& style = m_.foot;
    const SetText number = type_.set(pageWords(document_.words, canvas.page(), pages), style, 0);
    const double height = static_cast<double>(running_.size()) * style.line;
    double y = page_.height - page_.bottom + (page_.bottom - height) * 0.38;
    canvas.ornament([&] {
      for (const std::string& line : running_) {
        type_.set(line, style, width()).paint(canvas.cairo(), page_.left, y, 0, 1);
        if (&line == &running_.back()) number.paint(canvas.cairo(), page_.left + width() - number.width(), y);
        y += style.line;
      }
    });
  }

  const Document& document_;
  Typesetter type_;
  Measures m_;
  Page page_;
  std::vector<std::string> running_;  ///< the running foot, line by line
};

}  // namespace

base::Result<std::string> toPdf(const Document& document) {
  return PdfWriter(document).write();
}

}  // namespace stile::documents
