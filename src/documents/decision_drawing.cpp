#include "documents/decision_drawing.h"

#include <algorithm>

#include "documents/decision_words.h"
#include "documents/ladder_words.h"
#include "drawing/text_width.h"

namespace stile::documents {
namespace {

using drawing::Align;
using drawing::Circle;
using drawing::Colour;
using drawing::Drawing;
using drawing::Group;
using drawing::Line;
using drawing::Paint;
using drawing::Path;
using drawing::PathStep;
using drawing::Point;
using drawing::Polygon;
using drawing::Rectangle;
using drawing::Shape;
using drawing::TextRun;
using limits::Bay;
using limits::Rung;
using screening::RungState;
using screening::RungView;

constexpr double kPost = 12, kTop = 46, kGroundBelow = 54, kLabelSize = 14, kLabelLine = 17;

Paint filled(Colour colour) {
  return {.fill = colour};
}
Paint edged(Colour fill, Colour stroke, double width) {
  return {.fill = fill, .stroke = stroke, .strokeWidth = width};
}

Shape text(double x, double y, std::string words, double size, bool isBold, Colour colour = Colour::Ink,
           Align align = Align::Middle) {
  return {TextRun{{x, y}, std::move(words), size, isBold, align, colour}};
}

/// A wire from post to post, sagging in the middle.
Shape wire(double from, double to, double y, double sag, double width) {
  return {Path{{{PathStep::Kind::Move, {from, y}, {}, {}},
                {PathStep::Kind::Quadratic, {to, y}, {(from + to) / 2, y + sag}, {}}},
               edged(Colour::None, Colour::Shut, width)}};
}

/// The notice: a board with two cut corners. That shape means "shut" and nothing else.
Shape notice(double x, double y, double width, double height, double cut, double stroke) {
  return {Polygon{{{x + cut, y},
                   {x + width - cut, y},
                   {x + width, y + cut},
                   {x + width, y + height},
                   {x, y + height},
                   {x, y + cut}},
                  edged(Colour::ShutTint, Colour::Shut, stroke)}};
}

class LadderMaker {
 public:
  LadderMaker(const screening::Screening& screening, const std::string& emergencyNumber,
              const LadderMeasures& m)
      : screening_(screening), emergencyNumber_(emergencyNumber), m_(m) {
    bay_ = (m.width - m.nameColumn - 3 * kPost - 14) / 2;
    for (int i = 0; i < 3; ++i) post_[i] = m.nameColumn + i * (kPost + bay_);
    pitch_ = m.pitch;
  }

  Drawing make() {
    drawing_.title = "Decision ladder";
    drawing_.description = ladderDescription(screening_, emergencyNumber_);
    if (isEmergency(screening_))
      emergency();
    else if (heldBy(screening_))
      held();
    else
      rungs();
    drawing_.width = m_.width;
    drawing_.height = ground_ + 18;
    return std::move(drawing_);
  }

 private:
  void add(Shape shape) { drawing_.shapes.push_back(std::move(shape)); }
  double rungTop(int index) const { return kTop + (2 - index) * pitch_; }  // 0 light, 1 moderate, 2 vigorous
  double right() const { return post_[2] + kPost; }

  void groundLine() {
    const double left = m_.nameColumn - 14, end = right() + 14;
    add({Line{{left, ground_}, {end, ground_}, edged(Colour::None, Colour::Post, 3)}});
    for (double x = left + 8; x < end - 6; x += 14)
      add({Line{{x, ground_ + 4}, {x - 8, ground_ + 13}, edged(Colour::None, Colour::Hatch, 1.5)}});
  }

  /// The uprights with their slant cut, the names of the bays, and the low step on the ground.
  void frame() {
    ground_ = kTop + 2 * pitch_ + m_.rungHeight + kGroundBelow;
    groundLine();
    for (const double x : post_)
      add({Polygon{{{x, ground_ - 1}, {x, kTop - 28}, {x + kPost, kTop - 36}, {x + kPost, ground_ - 1}},
                   filled(Colour::Post)}});
    for (int b = 0; b < 2; ++b)
      add(text(post_[b] + kPost + bay_ / 2, kTop - 24,
               capitalized(wordsOf(limits::kBays[static_cast<std::size_t>(b)])), kLabelSize, false,
               Colour::Ink2));
  }

  void rest() {
    const double y = ground_ - 30, left = post_[0] - 8, width = right() - post_[0] + 16;
    add(text(0, y + 20, "Rest", 16, true, Colour::Ink, Align::Start));
    Group step{"rest", {}};
    step.shapes.push_back({Rectangle{left, y, width, 29, filled(Colour::Open)}});
    step.shapes.push_back(
        text(left + width / 2, y + 19, "open: usual daily activity", kLabelSize, false, Colour::OnOpen));
    add({std::move(step)});
  }

  void name(int index) {
    const Rung rung = static_cast<Rung>(index + 1);
    add(text(0, rungTop(index) + m_.rungHeight / 2 + 5, capitalized(wordsOf(rung)), 16, true, Colour::Ink,
             Align::Start));
  }

  void sockets(Group& group, double bayLeft, double middle) const {
    group.shapes.push_back(
        {Rectangle{bayLeft - kPost + 3, middle - 10, kPost - 5, 20, filled(Colour::Sheet)}});
    group.shapes.push_back(
        {Rectangle{bayLeft + bay_ + 2, middle - 10, kPost - 5, 20, filled(Colour::Sheet)}});
  }

  /// What the tag of a shut rung says below "shut", in lines. One line stays on the tag.
  std::vector<std::string> label(const RungView& view) const {
    std::vector<std::string> lines;
    for (const std::string& words : noticeLines(screening_, view))
      for (std::string& line : drawing::wrapped(words, bay_ - 16, kLabelSize))
        lines.push_back(std::move(line));
    return lines;
  }
  bool fitsOnTag(const std::string& line) const { return drawing::textWidth(line, kLabelSize) <= bay_ - 18; }

  std::size_t linesBelow(const RungView& view) const {
    if (view.state != RungState::Shut) return 0;
    const auto lines = label(view);
    return lines.empty() ? 0 : fitsOnTag(lines.front()) ? lines.size() - 1 : lines.size();
  }

  void rungs() {
    std::size_t most = 0;
    for (const RungView& view : screening_.rungs) most = std::max(most, linesBelow(view));
    // Room for the tag, its wire, and the lines that hang below it.
    if (most > 0)
      pitch_ = std::max(pitch_, m_.rungHeight + 6 + 12 + 6 + static_cast<double>(most) * kLabelLine);
    frame();
    for (int index = 2; index >= 0; --index) {
      name(index);
      for (int b = 0; b < 2; ++b) {
        const Bay bay = limits::kBays[static_cast<std::size_t>(b)];
        const RungView* view = rungAt(screening_, bay, static_cast<Rung>(index + 1));
        if (view != nullptr) rung(*view, post_[b] + kPost, rungTop(index));
      }
    }
    rest();
  }

  void rung(const RungView& view, double x, double y) {
    Group group{std::string(idOf(view.bay)) + "-" + idOf(view.rung), {}};
    switch (view.state) {
      case RungState::Open:
        open(group, x, y);
        break;
      case RungState::Shut:
        shut(group, view, x, y);
        break;
      case RungState::NotYetKnown:
        unknown(group, x, y);
        break;
    }
    add({std::move(group)});
  }

  void open(Group& group, double x, double y) const {
    const double middle = y + m_.rungHeight / 2;
    group.shapes.push_back({Rectangle{x - 4, y, bay_ + 8, m_.rungHeight, filled(Colour::Open)}});
    for (const double peg : {x - kPost / 2, x + bay_ + kPost / 2})
      group.shapes.push_back({Circle{{peg, middle}, 2.6, filled(Colour::Sheet)}});
    group.shapes.push_back(text(x + bay_ / 2, middle + 5, "open", 15, true, Colour::OnOpen));
  }

  void shut(Group& group, const RungView& view, double x, double y) const {
    const double middle = y + m_.rungHeight / 2, centre = x + bay_ / 2, height = m_.rungHeight + 6;
    const auto lines = label(view);
    const bool isOnTag = !lines.empty() && fitsOnTag(lines.front());
    sockets(group, x, middle);
    group.shapes.push_back(wire(x, x + bay_, y - 9, 14, 1.6));
    group.shapes.push_back(notice(x + 5, y - 2, bay_ - 10, height, 12, 2));
    group.shapes.push_back(
        text(centre, isOnTag ? y + 18 : y + height / 2 + 3, "shut", 15, true, Colour::Shut));
    std::size_t next = 0;
    if (isOnTag) group.shapes.push_back(text(centre, y + 35, lines[next++], kLabelSize, false));
    for (double below = y + height + 14; next < lines.size(); below += kLabelLine)
      group.shapes.push_back(text(centre, below, lines[next++], kLabelSize, false));
  }

  void unknown(Group& group, double x, double y) const {
    const std::string words = "not yet known";
    const double middle = y + m_.rungHeight / 2, centre = x + bay_ / 2;
    const double plate = std::min(bay_ - 12, drawing::textWidth(words, kLabelSize) + 14);
    group.shapes.push_back(
        {Rectangle{x + 2, y + 1, bay_ - 4, m_.rungHeight - 2,
                   Paint{.isHatched = true, .stroke = Colour::Hatch, .strokeWidth = 1.6, .isDashed = true}}});
    group.shapes.push_back({Rectangle{centre - plate / 2, middle - 12, plate, 24, filled(Colour::Sheet)}});
    group.shapes.push_back(text(centre, middle + 5, words, kLabelSize, false));
  }

  /// Every rung out for one same reason: one large notice over both bays.
  void held() {
    const double left = post_[0] + kPost, end = post_[2], x = left + 20, width = end - left - 40;
    std::vector<std::string> lines;
    for (const std::string& words : heldLines(screening_))
      for (std::string& line : drawing::wrapped(words, width - 24, 16)) lines.push_back(std::move(line));
    const double needed = 26 + 22.0 * static_cast<double>(lines.size()) + 34;
    pitch_ = std::max(pitch_, (needed + 22 - m_.rungHeight) / 2);
    frame();
    const double y = rungTop(2) + 12, height = rungTop(0) + m_.rungHeight - 10 - y, centre = x + width / 2;
    Group group{"held", {}};
    for (int index = 0; index < 3; ++index) {
      name(index);
      for (const double post : post_)
        group.shapes.push_back({Rectangle{post + 3, rungTop(index) + m_.rungHeight / 2 - 10, kPost - 6, 20,
                                          filled(Colour::Sheet)}});
    }
    group.shapes.push_back(wire(left, end, y - 22, 40, 1.2));
    group.shapes.push_back(notice(x, y, width, height, 18, 2.5));
    double at = y + (height - 22.0 * static_cast<double>(lines.size()) - 26) / 2 + 20;
    group.shapes.push_back(text(centre, at, "Shut", 20, true, Colour::Shut));
    for (const std::string& line : lines) group.shapes.push_back(text(centre, at += 22, line, 16, false));
    add({std::move(group)});
    rest();
  }

  /// The ladder is taken down and laid on the ground; a slab of words stands where it was.
  void emergency() {
    const double inner = m_.width - 44, slabTop = 8;
    struct Words {
      std::string text;
      double size, line;
      bool isBold;
    };
    std::vector<Words> words;
    const auto put = [&](const std::string& sentence, double size, double line, bool isBold) {
      for (std::string& piece : drawing::wrapped(sentence, inner, size, isBold))
        words.push_back({std::move(piece), size, line, isBold});
    };
    const EmergencyWords said = emergencyWords(screening_, emergencyNumber_);
    for (const std::string& what : said.what) put(what, 17, 24, false);
    put(said.call, emergencyNumber_.empty() ? 26 : 34, emergencyNumber_.empty() ? 36 : 44, true);
    for (const std::string& doing : said.meanwhile) put(doing, 16, 22, false);
    double needed = 0;
    for (const Words& line : words) needed += line.line;
    const double height = std::max(150.0, needed + 60);
    Group slab{"emergency", {}};
    slab.shapes.push_back({Rectangle{0, slabTop, m_.width, height, filled(Colour::Slab)}});
    slab.shapes.push_back(
        {Rectangle{7, slabTop + 7, m_.width - 14, height - 14, edged(Colour::None, Colour::OnSlab, 2.5)}});
    double at = slabTop + (height - needed) / 2;
    for (const Words& line : words) {
      at += line.line;
      slab.shapes.push_back(
          text(m_.width / 2, at - line.line * 0.28, line.text, line.size, line.isBold, Colour::OnSlab));
    }
    const double y = slabTop + height + 16, left = post_[0] - 8, width = right() - post_[0] + 16;
    ground_ = y + 62;
    groundLine();
    for (int i = 0; i < 3; ++i) add({Rectangle{left, y + 22 * i, width, 9, filled(Colour::Post)}});
    for (int k = 1; k <= 3; ++k)
      for (int b = 0; b < 2; ++b)
        add({Rectangle{left + width * k / 4 - 8, y + 9 + 22 * b, 16, 13,
                       edged(Colour::Sheet, Colour::Post, 1.5)}});
    add(text(0, y + 32, "No rung", 16, true, Colour::Ink, Align::Start));
    add({std::move(slab)});
  }

  const screening::Screening& screening_;
  const std::string& emergencyNumber_;
  const LadderMeasures& m_;
  double bay_ = 0, pitch_ = 0, ground_ = 0;
  double post_[3] = {0, 0, 0};
  Drawing drawing_;
};

}  // namespace

Drawing ladderOf(const screening::Screening& screening, const std::string& emergencyNumber,
                 const LadderMeasures& measures) {
  return LadderMaker(screening, emergencyNumber, measures).make();
}

}  // namespace stile::documents
