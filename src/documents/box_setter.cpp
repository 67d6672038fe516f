// Boxes set into slices: framed, hung on an upright, cut like a notice.
#include <algorithm>
#include <functional>
#include <memory>

#include "documents/block_setter.h"

namespace stile::documents {
namespace {

using drawing::Colour;

/// A notice that takes more than this share of a page may be broken.
constexpr double kWholeNotice = 0.5;
constexpr double kSmallPicture = 0.26;  ///< of a page's height

/// Sides of a frame with its top, its foot, or neither.
void framePart(PdfCanvas& canvas, double x, double y, double width, double height, double line, Colour colour, bool isFirst, bool isLast) {
  canvas.fill(x, y, line, height, colour);
  canvas.fill(x + width - line, y, line, height, colour);
  if (isFirst) canvas.fill(x, y, width, line, colour);
  if (isLast) canvas.fill(x, y + height - line, width, line, colour);
}

}  // namespace

Flow BlockSetter::framed(const Box& form, double padX, double padY) const {
  // The client's boxes are set in the smaller size, so that they meet on the first page.
  Measures own = m_;
  if (document_.reader == Reader::Client) {
    own.body = m_.small;
    own.body.colour = Colour::Ink;
    own.body.line = own.body.size * 1.25;
    own.boxTitle.size *= 0.95, own.boxTitle.line *= 0.95;
    own.gap *= 0.6;
  }
  const BlockSetter inner = at(x_ + padX, width_ - 2 * padX).with(own);
  Flow flow;
  if (!form.title.empty()) {
    TextStyle style = own.boxTitle;
    if (form.kind == BoxKind::NotForNow && !document_.isBlackOnly) style.colour = Colour::Shut;
    const bool hasMark = form.kind == BoxKind::Emergency;
    const double mark = hasMark ? style.size * 1.05 : 0, shift = hasMark ? mark + style.size * 0.45 : 0;
    const SetText title = type_.set(form.title, style, inner.width_ - shift);
    Slice slice;
    slice.height = title.height();
    slice.keepsNext = true;
    slice.paint = [title, x = inner.x_, mark, shift, tag = boxTag_](PdfCanvas& canvas, double y) {
      if (mark > 0)
        canvas.ornament([&] {  // the stop bar
          const double top = y + (title.style().line - mark) / 2;
          canvas.fill(x, top, mark, mark, Colour::Ink);
          canvas.fill(x + mark * 0.19, top + mark * 0.38, mark * 0.62, mark * 0.24, Colour::OnSlab);
        });
      canvas.open(tag);
      title.paint(canvas.cairo(), x + shift, y);
      canvas.close();
    };
    add(flow, std::move(slice));
  }
  append(flow, inner.set(form.blocks));
  const double height = heightOf(flow) + 2 * padY;
  if (form.kind == BoxKind::NotForNow && height > tallest_ * kWholeNotice) return brokenBox(std::move(flow), padY, form.kind);
  if (height > tallest_) return brokenBox(std::move(flow), padY, form.kind);
  const auto inside = std::make_shared<Flow>(std::move(flow));
  Slice slice;
  slice.before = m_.gap * 1.4;
  slice.height = height;
  slice.paint = [this_ = *this, inside, padY, height, kind = form.kind](PdfCanvas& canvas, double y) {
    canvas.ornament([&] {
      const double x = this_.x_, width = this_.width_;
      switch (kind) {
        case BoxKind::Emergency:
          canvas.frame(x, y, width, height, 3.75, Colour::Ink);
          break;
        case BoxKind::Stop:
          canvas.fill(x, y, 3.75, height, this_.document_.isBlackOnly ? Colour::Ink : Colour::Post);
          break;
        case BoxKind::NotForNow:
          canvas.notice(x, y, width, height, 15, this_.document_.isBlackOnly);
          break;
        case BoxKind::Held:
          canvas.frame(x, y, width, height, 1.5, Colour::Hatch, true);
          break;
        case BoxKind::Question:
          break;
        case BoxKind::Exercise:
        case BoxKind::Plain:
          canvas.frame(x, y, width, height, 1.1, Colour::Edge);
          break;
      }
    });
    canvas.open("Div");
    paintAll(*inside, canvas, y + padY);
    canvas.close();
  };
  Flow result;
  add(result, std::move(slice));
  return result;
}

Flow BlockSetter::brokenBox(Flow inside, double padY, BoxKind kind) const {
  std::vector<Slice*> slices;
  for (Step& step : inside)
    if (step.kind == Step::Kind::Slice) slices.push_back(&step.slice);
  if (slices.empty()) return inside;
  for (Slice* slice : slices) {
    const bool isFirst = slice == slices.front(), isLast = slice == slices.back();
    const double above = isFirst ? padY : slice->before, below = isLast ? padY : 0;
    slice->before = isFirst ? m_.gap * 1.4 : 0;
    slice->height += above + below;
    slice->paint = [this_ = *this, paint = std::move(slice->paint), above, height = slice->height, isFirst, isLast, kind](PdfCanvas& canvas, double y) {
      const double x = this_.x_, width = this_.width_;
      canvas.ornament([&] {
        if (kind == BoxKind::NotForNow)
          canvas.noticePart(x, y, width, height, isFirst ? 15 : 0, isFirst, isLast, this_.document_.isBlackOnly);
        else if (kind == BoxKind::Stop)
          canvas.fill(x, y, 3.75, height, this_.document_.isBlackOnly ? Colour::Ink : Colour::Post);
        else if (kind == BoxKind::Emergency)
          framePart(canvas, x, y, width, height, 3.75, Colour::Ink, isFirst, isLast);
        else
          framePart(canvas, x, y, width, height, 1.1, Colour::Edge, isFirst, isLast);
      });
      paint(canvas, y + above);
    };
  }
  // What to call for is said again where the box goes on.
  if (kind == BoxKind::Emergency && slices.front()->keepsNext) {
    const auto head = std::make_shared<const Slice>(*slices.front());
    for (std::size_t i = 1; i < slices.size(); ++i) slices[i]->head = head;
  }
  // No single line at either end.
  if (slices.size() > 1) slices.front()->keepsNext = slices[slices.size() - 2]->keepsNext = true;
  Flow flow;
  openTag(flow, "Div");
  append(flow, std::move(inside));
  closeTag(flow);
  return flow;
}

Flow BlockSetter::of(const Box& form) const {
  const double em = m_.body.size;
  switch (form.kind) {
    case BoxKind::Exercise:
      return exercise(form);
    case BoxKind::Stop:
      return framed(form, em * 0.85, em * 0.1);
    case BoxKind::NotForNow:
      return framed(form, em * 1.05, em * 0.6);
    case BoxKind::Emergency:
      return framed(form, em * 0.95, em * 0.6);
    case BoxKind::Question:
      return question(form);
    case BoxKind::Plain:
    case BoxKind::Held:
      return framed(form, em * 0.85, em * 0.5);
  }
  return {};
}

/// The number hangs in the margin of its question.
Flow BlockSetter::question(const Box& form) const {
  const double indent = m_.body.size * 2;
  TextStyle bold = m_.body;
  bold.isBold = true;
  // A few short boxes stand at the right of the question.
  std::vector<Block> blocks = form.blocks;
  const double right = width_ * 0.36;
  std::shared_ptr<Flow> beside;
  if (!blocks.empty())
    if (const auto* choices = std::get_if<Choices>(&blocks.back().form); choices != nullptr && choices->label.empty()) {
      double wide = 0;
      for (const std::string& option : choices->options) wide += type_.widthOf(option, m_.body) + m_.choice * 2.8;
      if (wide - m_.choice * 1.3 <= right) {
        beside = std::make_shared<Flow>(at(x_ + width_ - right, right).set({blocks.back()}));
        blocks.pop_back();
      }
    }
  const BlockSetter inner = at(x_ + indent, width_ - indent - (beside ? right + 10 : 0));
  Flow words = inner.text(form.title, bold, boxTag_, 0);
  append(words, inner.set(blocks));
  const SetText number = type_.set(form.number, bold, 0);
  const auto inside = std::make_shared<Flow>(std::move(words));
  Slice slice;
  slice.before = m_.gap * 1.5;
  slice.height = std::max(heightOf(*inside), beside ? heightOf(*beside) : 0);
  slice.paint = [inside, beside, number, x = x_](PdfCanvas& canvas, double y) {
    canvas.open("Div");
    canvas.open("P");
    number.paint(canvas.cairo(), x, y);
    canvas.close();
    paintAll(*inside, canvas, y);
    if (beside) paintAll(*beside, canvas, y);
    canvas.close();
  };
  Flow flow;
  add(flow, std::move(slice));
  return flow;
}

/// Number and picture at the left, words at the right; never broken while a page can hold it.
std::function<void(PdfCanvas&, double)> BlockSetter::numberedPicture(const Box& form, double width, double height) const {
  const auto picture = form.picture ? std::make_shared<Figure>(*form.picture) : nullptr;
  TextStyle style = m_.boxTitle;
  if (!picture) style.colour = Colour::OnSlab;
  const SetText number = type_.set(form.number, style, picture ? 0 : width, 0, picture ? TextAlign::Start : TextAlign::Middle);
  return [picture, number, width, height, x = x_, &type = type_](PdfCanvas& canvas, double y) {
    canvas.ornament([&] {
      if (picture)
        canvas.frame(x, y, width, height, 2, Colour::Ink);
      else
        canvas.fill(x, y, width, height, Colour::Ink);
    });
    canvas.open("P");
    number.paint(canvas.cairo(), picture ? x + 8 : x, picture ? y + 5 : y + (height - number.style().line) / 2);
    canvas.close();
    if (!picture) return;
    const drawing::Drawing& drawing = picture->drawing;
    const double scale = drawing.width > 0 && drawing.height > 0
                             ? std::min((width - 12) / drawing.width, (height - 12) / drawing.height)
                             : kPointsPerUnit;
    canvas.open("Figure", drawing.title + (drawing.description.empty() ? "" : ". " + drawing.description));
    canvas.draw(drawing, type, x + (width - drawing.width * scale) / 2, y + (height - drawing.height * scale) / 2, scale);
    canvas.close();
  };
}

Flow BlockSetter::exercise(const Box& form) const {
  const bool hasPicture = form.picture.has_value();
  const double number = m_.boxTitle.line * 1.25;
  const double frame = hasPicture ? std::min(width_ * 0.34, 190.0) : number;
  const double gap = m_.body.size * (hasPicture ? 1.2 : 0.8);
  const auto wordsAt = [&form](const BlockSetter& setter) {
    Flow words = setter.text(form.title, setter.m_.boxTitle, setter.boxTag_, 0);
    for (Step& step : words)
      if (step.kind == Step::Kind::Slice) step.slice.keepsNext = true;
    append(words, setter.set(form.blocks));
    return words;
  };
  Flow words;
  double shift = 0, pictureHeight = frame, pictureWidth = frame;
  if (!document_.isOneExerciseAPage) words = wordsAt(at(x_ + frame + gap, width_ - frame - gap));
  if (document_.isOneExerciseAPage || std::max(heightOf(words), frame) > tallest_) {
    // A page of its own, or too long beside the picture: the words go under it, over the whole width,
    // and the picture takes what they leave.
    words = wordsAt(*this);
    const auto free = [&] { return tallest_ - heightOf(words) - m_.gap; };
    // A picture that would be small takes from the white between the lines.
    if (hasPicture && free() < tallest_ * kSmallPicture) words = wordsAt(with(m_.tightened(Measures::kTightest)));
    pictureHeight = hasPicture ? std::clamp(free(), tallest_ * 0.12, tallest_ * 0.4) : number;
    pictureWidth = hasPicture ? width_ : number;
    shift = pictureHeight + m_.gap;
  }
  const auto paintPicture = numberedPicture(form, pictureWidth, pictureHeight);
  Slice slice;
  slice.before = m_.gap * 2;
  Flow flow;
  const double height = std::max(shift + heightOf(words), pictureHeight);
  if (height > tallest_) {  // no page holds it: the picture, and the words after it as far as they go
    slice.height = pictureHeight;
    slice.keepsNext = true;
    slice.paint = paintPicture;
    add(flow, std::move(slice));
    append(flow, std::move(words));
    return flow;
  }
  const auto inside = std::make_shared<Flow>(std::move(words));
  slice.height = height;
  slice.paint = [inside, paintPicture, shift](PdfCanvas& canvas, double y) {
    canvas.open("Div");
    paintPicture(canvas, y);
    paintAll(*inside, canvas, y + shift);
    canvas.close();
  };
  add(flow, std::move(slice));
  return flow;
}

}  // namespace stile::documents
