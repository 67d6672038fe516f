#include "documents/block_setter.h"

#include <algorithm>
#include <cmath>
#include <memory>

namespace stile::documents {
namespace {

using drawing::Colour;

Slice* firstSlice(Flow& flow) {
  for (Step& step : flow)
    if (step.kind == Step::Kind::Slice) return &step.slice;
  return nullptr;
}

}  // namespace

Flow BlockSetter::set(const std::vector<Block>& blocks) const {
  Flow flow;
  for (const Block& block : blocks)
    append(flow, std::visit([this](const auto& form) { return of(form); }, block.form));
  return flow;
}

Flow BlockSetter::text(const std::string& words, const TextStyle& style, const std::string& tag, double before,
                       std::size_t boldBytes) const {
  Flow flow;
  if (words.empty()) return flow;
  const SetText set = type_.set(words, style, width_, boldBytes);
  const int lines = set.lineCount();
  const double x = x_;
  if (lines <= 5) {
    Slice slice;
    slice.before = before;
    slice.height = set.height();
    slice.paint = [set, tag, x](PdfCanvas& canvas, double y) {
      canvas.open(tag);
      set.paint(canvas.cairo(), x, y);
      canvas.close();
    };
    add(flow, std::move(slice));
    return flow;
  }
  // May break, but never after the first or before the last line.
  openTag(flow, tag);
  for (int from = 0; from < lines;) {
    int to = from + 1;
    if (from == 0) to = 2;
    if (to >= lines - 1) to = lines;
    Slice slice;
    slice.before = from == 0 ? before : 0;
    slice.height = (to - from) * style.line;
    slice.paint = [set, x, from, to](PdfCanvas& canvas, double y) { set.paint(canvas.cairo(), x, y, from, to); };
    add(flow, std::move(slice));
    from = to;
  }
  closeTag(flow);
  return flow;
}

Flow BlockSetter::of(const Paragraph& form) const {
  const TextStyle& style = form.tone == Tone::Small       ? m_.small
                           : form.tone == Tone::Statement ? m_.statement
                           : form.tone == Tone::Dose      ? m_.dose
                           : form.tone == Tone::Number    ? m_.number
                                                          : m_.body;
  const std::string words = form.lead + (form.lead.empty() || form.text.empty() ? "" : " ") + form.text;
  if (form.tone != Tone::Dose || document_.reader != Reader::Client)
    return text(words, style, "P", m_.gap * (form.tone == Tone::Small ? 0.5 : 1), form.lead.size());
  // A dose stands on a band of its own.
  const double pad = style.size * 0.35, inset = style.size * 0.6;
  const SetText set = type_.set(words, style, width_ - 2 * inset, form.lead.size());
  Slice slice;
  slice.before = m_.gap;
  slice.height = set.height() + 2 * pad;
  slice.paint = [this_ = *this, set, pad, inset, height = slice.height](PdfCanvas& canvas, double y) {
    canvas.ornament([&] {
      if (this_.document_.isBlackOnly)
        canvas.frame(this_.x_, y, this_.width_, height, 1.5, Colour::Ink);
      else
        canvas.fill(this_.x_, y, this_.width_, height, Colour::OpenTint);
    });
    canvas.open("P");
    set.paint(canvas.cairo(), this_.x_ + inset, y + pad);
    canvas.close();
  };
  Flow flow;
  add(flow, std::move(slice));
  return flow;
}

Slice BlockSetter::listItem(const std::string& mark, const std::string& words, double indent, double before) const {
  const SetText label = type_.set(mark, m_.body, 0);
  const SetText body = type_.set(words, m_.body, width_ - indent);
  Slice slice;
  slice.before = before;
  slice.height = body.height();
  const double x = x_, markX = mark == "•" ? x_ + m_.body.size * 0.25 : x_ + indent - label.width() - m_.body.size * 0.4;
  slice.paint = [label, body, x, indent, markX](PdfCanvas& canvas, double y) {
    canvas.open("LI");
    canvas.open("Lbl");
    label.paint(canvas.cairo(), markX, y);
    canvas.close();
    canvas.open("LBody");
    body.paint(canvas.cairo(), x + indent, y);
    canvas.close();
    canvas.close();
  };
  return slice;
}

Flow BlockSetter::of(const List& form) const {
  Flow flow;
  if (form.items.empty()) return flow;
  if (form.isInColumns && form.items.size() > 1 && width_ > m_.body.size * 24) return columnsList(form);
  const double indent = m_.body.size * (form.isNumbered ? 1.7 : 1.1);
  openTag(flow, "L");
  std::vector<Slice> items;
  for (std::size_t i = 0; i < form.items.size(); ++i) {
    const std::string mark = form.isNumbered ? std::to_string(i + 1) + "." : "•";
    items.push_back(listItem(mark, form.items[i], indent, i == 0 ? m_.gap * 0.6 : m_.body.size * 0.13));
  }
  // No single short item of a list alone at the foot or the head of a page.
  const auto isShort = [this](const Slice& item) { return item.height < m_.body.line * 3.5; };
  if (items.size() > 1) {
    items.front().keepsNext = isShort(items.front());
    items[items.size() - 2].keepsNext = items[items.size() - 2].keepsNext || isShort(items.back());
  }
  for (Slice& item : items) add(flow, std::move(item));
  closeTag(flow);
  return flow;
}

/// Two columns side by side as one slice, the left one first in reading.
Flow BlockSetter::columnsList(const List& form) const {
  const double gap = m_.body.size * 1.6, half = (width_ - gap) / 2;
  const double indent = m_.body.size * 1.1;
  std::vector<double> heights;
  double total = 0;
  for (const std::string& item : form.items) {
    heights.push_back(type_.set(item, m_.body, half - indent).height());
    total += heights.back();
  }
  // Broken where the taller column is least tall.
  std::size_t left = 1;
  for (double height = heights.front(); left + 1 < form.items.size(); ++left) {
    if (std::max(height + heights[left], total - height - heights[left]) > std::max(height, total - height)) break;
    height += heights[left];
  }
  List first, second;
  first.items.assign(form.items.begin(), form.items.begin() + static_cast<std::ptrdiff_t>(left));
  second.items.assign(form.items.begin() + static_cast<std::ptrdiff_t>(left), form.items.end());
  const auto column = [&](const List& list, double x) {
    Flow items;
    const BlockSetter setter = at(x, half);
    for (std::size_t i = 0; i < list.items.size(); ++i)
      add(items, setter.listItem("•", list.items[i], indent, i == 0 ? 0 : m_.body.size * 0.13));
    return together(std::move(items), 0);
  };
  const Slice a = column(first, x_), b = column(second, x_ + half + gap);
  Slice slice;
  slice.before = m_.gap * 0.6;
  slice.height = std::max(a.height, b.height);
  slice.paint = [a, b](PdfCanvas& canvas, double y) {
    canvas.open("L");
    a.paint(canvas, y);
    b.paint(canvas, y);
    canvas.close();
  };
  Flow flow;
  add(flow, std::move(slice));
  return flow;
}

Flow BlockSetter::of(const Figure& form) const {
  const double natural = form.drawing.width * kPointsPerUnit;
  const double scale = kPointsPerUnit * std::min(1.0, natural > 0 ? width_ / natural : 1.0);
  Slice slice;
  slice.before = m_.gap;
  slice.height = form.drawing.height * scale;
  const auto kept = std::make_shared<drawing::Drawing>(form.drawing);
  slice.paint = [kept, scale, x = x_, &type = type_](PdfCanvas& canvas, double y) {
    const std::string words = kept->title + (kept->description.empty() ? "" : ". " + kept->description);
    canvas.open("Figure", words);
    canvas.draw(*kept, type, x, y, scale);
    canvas.close();
  };
  Flow flow;
  add(flow, std::move(slice));
  return flow;
}

Flow BlockSetter::of(const Columns& form) const {
  if (form.columns.empty()) return {};
  double total = 0;
  for (std::size_t i = 0; i < form.columns.size(); ++i) total += i < form.shares.size() ? form.shares[i] : 1;
  const double gap = m_.body.size * 1.9, room = width_ - gap * static_cast<double>(form.columns.size() - 1);
  std::vector<Slice> columns;
  double x = x_, height = 0;
  for (std::size_t i = 0; i < form.columns.size(); ++i) {
    const double share = room * (i < form.shares.size() ? form.shares[i] : 1) / total;
    columns.push_back(together(at(x, share).set(form.columns[i]), 0));
    height = std::max(height, columns.back().height);
    x += share + gap;
  }
  Slice slice;
  slice.before = m_.gap * 1.2;
  slice.height = height;
  slice.paint = [columns](PdfCanvas& canvas, double y) {
    for (const Slice& column : columns) column.paint(canvas, y);
  };
  Flow flow;
  add(flow, std::move(slice));
  return flow;
}

Flow BlockSetter::of(const Fold& form) const {
  if (form.isScreenOnly) return text(form.title, m_.small, "P", m_.gap);
  Flow flow = text(form.title, m_.boxTitle, boxTag_, m_.gap * 1.2);
  if (Slice* title = firstSlice(flow)) title->keepsNext = true;
  append(flow, set(form.blocks));
  return flow;
}

Flow BlockSetter::of(const WriteLine& form) const {
  Flow flow;
  const bool isClient = document_.reader == Reader::Client;
  const double label = form.label.empty() ? 0 : type_.widthOf(form.label, m_.body) + 6;
  for (int i = 0; i < std::max(1, form.lines); ++i) {
    const SetText words = type_.set(i == 0 ? form.label : "", m_.body, 0);
    Slice slice;
    slice.before = m_.body.line * (isClient ? 0.55 : 0.36);
    slice.height = m_.body.line * 1.05;
    slice.keepsNext = i + 1 < form.lines;
    const double from = x_ + (i == 0 ? std::min(label, width_ - 20) : 0), to = x_ + width_;
    slice.paint = [words, x = x_, from, to, line = m_.body.line](PdfCanvas& canvas, double y) {
      if (words.lineCount() > 0) {
        canvas.open("P");
        words.paint(canvas.cairo(), x, y);
        canvas.close();
      }
      canvas.ornament([&] { canvas.rule(from, y + line, to - from, 0.8, Colour::Ink); });
    };
    add(flow, std::move(slice));
  }
  return flow;
}

Flow BlockSetter::of(const Choices& form) const {
  struct Place {
    SetText words;
    double x, y;
  };
  std::vector<Place> places;
  const double box = m_.choice, gap = box * 0.5, line = std::max(m_.body.line, box + 3);
  double x = x_, y = 0;
  SetText label = type_.set(form.label, m_.body, width_);
  if (!form.label.empty()) {
    x += std::min(label.width(), width_) + box * 0.9;
    if (form.isOnePerLine || label.lineCount() > 1) {
      x = x_;
      y = label.height() + 2;
    }
  }
  for (const std::string& option : form.options) {
    double wide = type_.widthOf(option, m_.body) + box + gap;
    if (x > x_ && (form.isOnePerLine || x + wide > x_ + width_)) {
      x = x_;
      y += line;
    }
    SetText words = type_.set(option, m_.body, x_ + width_ - x - box - gap);
    places.push_back({words, x, y});
    if (words.lineCount() > 1) y += words.height() - m_.body.line;
    x += wide + box * 1.3;
  }
  Slice slice;
  slice.before = m_.gap;
  slice.height = y + line;
  slice.paint = [this_ = *this, places, label, box, gap](PdfCanvas& canvas, double top) {
    if (label.lineCount() > 0) {
      canvas.open("P");
      label.paint(canvas.cairo(), this_.x_, top);
      canvas.close();
    }
    canvas.open("L");
    for (const Place& place : places) {
      canvas.open("LI");
      canvas.ornament([&] {
        canvas.frame(place.x, top + place.y + (this_.m_.body.line - box) / 2, box, box, 1.1, Colour::Ink);
      });
      canvas.open("LBody");
      place.words.paint(canvas.cairo(), place.x + box + gap, top + place.y);
      canvas.close();
      canvas.close();
    }
    canvas.close();
  };
  Flow flow;
  add(flow, std::move(slice));
  return flow;
}

Flow BlockSetter::of(const CutLine& form) const {
  const SetText title = type_.set(form.title, m_.heading, 0);
  const SetText words = type_.set(form.words, m_.small, width_ - title.width() - 16, 0, TextAlign::End);
  Slice slice;
  slice.before = m_.headingGap * 1.1;
  slice.height = 7 + std::max(title.height(), words.height());
  slice.keepsNext = true;
  slice.bookmark = form.title;
  slice.paint = [this_ = *this, title, words](PdfCanvas& canvas, double y) {
    canvas.ornament([&] { canvas.rule(this_.x_, y, this_.width_, 1.5, Colour::Ink, true); });
    canvas.open("H2");
    title.paint(canvas.cairo(), this_.x_, y + 7);
    canvas.close();
    canvas.open("P");
    words.paint(canvas.cairo(), this_.x_ + title.width() + 16, y + 7 + (title.style().line - words.style().line) / 2);
    canvas.close();
  };
  Flow flow;
  add(flow, std::move(slice));
  return flow;
}

}  // namespace stile::documents
