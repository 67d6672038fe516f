// Rows and tables set into slices.
#include <algorithm>
#include <memory>

#include "base/utf8.h"
#include "documents/block_setter.h"

namespace stile::documents {
namespace {

using drawing::Colour;

constexpr double kTail = 0.13;  ///< of a page: the least that a table leaves to its last one

std::string joined(const std::vector<std::string>& parts, const char* between) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() || part.empty() ? "" : between) + part;
  return text;
}

/// No single row alone at the foot of a page, nor a few at the head of one: `least` is what a page is
/// turned for.
void keepEnds(Flow& flow, double least) {
  std::vector<Slice*> slices;
  for (Step& step : flow)
    if (step.kind == Step::Kind::Slice) slices.push_back(&step.slice);
  if (slices.size() < 2) return;
  slices.front()->keepsNext = true;
  double tail = slices.back()->height;
  for (std::size_t i = slices.size() - 1; i-- > 0;) {
    slices[i]->keepsNext = true;
    tail += slices[i]->height;
    if (tail >= least) break;
  }
}

}  // namespace

Slice BlockSetter::row(const Row& row, double term, double note) const {
  const double pad = m_.body.size * 0.22, gap = m_.body.size * 0.9;
  const double textX = x_ + term, noteX = x_ + width_ - note;
  const double textRoom = width_ - term - (note > 0 ? note + gap : 0);
  TextStyle bold = m_.body;
  bold.isBold = true;
  const SetText termText = type_.set(row.term, bold, std::max(1.0, term - gap));
  const SetText body = type_.set(joined(row.text, "\n"), m_.body, textRoom);
  const SetText notes = type_.set(joined(row.note, "\n"), m_.small, std::max(1.0, note));
  const SetText fine = type_.set(joined(row.fine, "\n"), m_.small, textRoom);
  const auto plot = row.plot ? std::make_shared<drawing::Drawing>(*row.plot) : nullptr;
  const double plotScale = plot ? kPointsPerUnit * std::min(1.0, note / (plot->width * kPointsPerUnit)) : 0;
  const double plotHeight = plot ? plot->height * plotScale : 0;
  Slice slice;
  slice.height = std::max({termText.height(), body.height() + fine.height(), notes.height() + plotHeight}) + 2 * pad + 0.6;
  const double rule = slice.height;
  slice.paint = [this_ = *this, termText, body, fine, notes, plot, plotScale, plotHeight, textX, noteX, pad, rule](
                    PdfCanvas& canvas, double y) {
    canvas.ornament([&] { canvas.rule(this_.x_, y + rule - 0.3, this_.width_, 0.6, Colour::Hair); });
    canvas.open("TR");
    canvas.open("TH", {}, "Row");
    termText.paint(canvas.cairo(), this_.x_, y + pad);
    canvas.close();
    canvas.open("TD");
    body.paint(canvas.cairo(), textX, y + pad);
    fine.paint(canvas.cairo(), textX, y + pad + body.height());
    canvas.close();
    if (notes.lineCount() > 0 || plot) {
      canvas.open("TD");
      if (plot) {
        canvas.open("Figure", plot->title + ". " + plot->description);
        canvas.draw(*plot, this_.type_, noteX, y + pad, plotScale);
        canvas.close();
      }
      // Small letters stand on the base line of the text beside them.
      const double down = plot ? plotHeight : (this_.m_.body.line - this_.m_.small.line) / 2;
      notes.paint(canvas.cairo(), noteX, y + pad + down);
      canvas.close();
    }
    canvas.close();
  };
  return slice;
}

Flow BlockSetter::of(const Rows& form) const {
  if (form.rows.empty()) return {};
  if (form.isCompact) return compactRows(form);
  const bool hasNotes =
      std::any_of(form.rows.begin(), form.rows.end(), [](const Row& one) { return !one.note.empty() || one.plot; });
  const bool hasText =
      std::any_of(form.rows.begin(), form.rows.end(), [](const Row& one) { return !one.text.empty() || !one.fine.empty(); });
  // Long terms get a wider column, so that they do not stand in towers.
  double longest = 0;
  TextStyle bold = m_.body;
  bold.isBold = true;
  for (const Row& one : form.rows) longest = std::max(longest, type_.widthOf(one.term, bold));
  const double share = longest > width_ * m_.termShare * 2.2 ? m_.termShare * 1.4 : m_.termShare;
  const double term = longest == 0 ? 0 : hasText || hasNotes ? width_ * share : width_;
  const double note = hasNotes ? width_ * m_.noteShare : 0;
  Flow flow;
  openTag(flow, "Table");
  for (const Row& one : form.rows) {
    Slice slice = row(one, term, note);
    if (slice.height <= tallest_ || one.text.size() < 2) {
      add(flow, std::move(slice));
      continue;
    }
    // Too tall for any page: one row for each of its sentences.
    for (std::size_t i = 0; i < one.text.size(); ++i)
      add(flow, row({i == 0 ? one.term : "", {one.text[i]}, i == 0 ? one.note : std::vector<std::string>{}}, term, note));
  }
  closeTag(flow);
  keepEnds(flow, tallest_ * kTail);
  if (!flow.empty() && flow.size() > 1) flow[1].slice.before = m_.gap * 0.5;
  return flow;
}

/// A row run into one paragraph, small, its term in bold; long ones may be broken.
Flow BlockSetter::compactRow(const Row& row, double before) const {
  std::string words = row.term;
  std::string text = joined(row.text, " "), note = joined(row.note, "; ");
  if (!row.fine.empty()) text += (text.empty() ? "" : " ") + joined(row.fine, " ");
  if (!words.empty() && !text.empty() && words.back() != '.' && words.back() != '?') words += ".";
  const std::size_t bold = words.size();
  if (!text.empty()) words += (words.empty() ? "" : " ") + text;
  if (!note.empty()) words += (words.empty() ? "(" : " (") + note + ")";
  TextStyle style = m_.small;
  style.colour = Colour::Ink;
  return this->text(words, style, "P", before, bold);
}

/// Two columns where the page is wide enough; which of them a row falls into shows when pages are made.
Flow BlockSetter::compactRows(const Rows& form) const {
  Flow flow;
  const double gap = m_.body.size * 1.6, before = m_.small.line * 0.22;
  const bool isWide = !isInside_ && width_ > m_.small.size * 44 && form.rows.size() > 1;
  if (!isWide) {
    for (const Row& one : form.rows) append(flow, compactRow(one, before));
    return flow;
  }
  const double half = (width_ - gap) / 2;
  Flow right;
  for (const Row& one : form.rows) {
    append(flow, at(x_, half).compactRow(one, before));
    append(right, at(x_ + half + gap, half).compactRow(one, before));
  }
  for (std::size_t i = 0; i < flow.size(); ++i)
    if (flow[i].kind == Step::Kind::Slice) flow[i].slice.paintRight = std::move(right[i].slice.paint);
  return flow;
}

/// A word that is wider than its cell is not broken: a day keeps its first letters, "rest" becomes a dash.
std::string BlockSetter::fitted(const std::string& words, const TextStyle& style, double room, bool isRest) const {
  if (words.find(' ') != std::string::npos || type_.widthOf(words, style) <= room) return words;
  if (isRest) return "–";
  const auto letters = base::codePoints(words);
  std::size_t kept = letters.size() > 2 && letters.size() <= 3 ? 2 : letters.size();
  std::string shorter;
  for (std::size_t i = 0; i < kept; ++i) shorter += letters[i];
  return shorter;
}

Slice BlockSetter::tableRow(const std::vector<Cell>& cells, const std::vector<double>& widths, bool isHead,
                            bool isGrid) const {
  TextStyle style = isGrid || document_.reader != Reader::Physician ? m_.small : m_.body;
  style.colour = Colour::Ink;
  if (isGrid) style.line = style.size * 1.16;
  style.isBold = isHead;
  const double padX = isGrid ? 4 : 0, padY = isGrid ? 2 : m_.body.size * 0.22, gap = isGrid ? 0 : m_.body.size * 0.8;
  std::vector<SetText> texts;
  double height = 0;
  // Where one day must be shortened, all of them are.
  bool isShort = false;
  for (std::size_t i = 1; isHead && isGrid && i < cells.size() && i < widths.size(); ++i)
    isShort = isShort || fitted(cells[i].text, style, widths[i] - 2 * padX, false) != cells[i].text;
  for (std::size_t i = 0; i < cells.size() && i < widths.size(); ++i) {
    const Cell& cell = cells[i];
    TextStyle own = style;
    const bool isRest = cell.kind == CellKind::Rest;
    if (isRest) own.colour = document_.isBlackOnly ? Colour::Ink : Colour::Ink2;
    const bool isMiddle = isGrid && i > 0;
    const double room = widths[i] - 2 * padX - gap;
    std::string words = isRest ? document_.words.rest : cell.text;
    if (isGrid && i > 0) words = fitted(words, own, isShort ? 0 : room, isRest);
    texts.push_back(type_.set(words, own, room, 0,
                              isMiddle ? TextAlign::Middle : TextAlign::Start));
    height = std::max({height, texts.back().height(), cell.kind == CellKind::TickBox || cell.kind == CellKind::Blank ? m_.tick : 0});
  }
  Slice slice;
  slice.height = height + 2 * padY + (isGrid ? 0 : 0.6);
  slice.paint = [this_ = *this, cells, texts, widths, isHead, isGrid, padX, height = slice.height](PdfCanvas& canvas,
                                                                                                 double y) {
    canvas.ornament([&] {
      if (isGrid) {
        double x = this_.x_;
        for (const double width : widths) {
          canvas.frame(x - 0.5, y - 0.5, width + 1, height + 1, 1, Colour::Ink);
          x += width;
        }
      } else {
        canvas.rule(this_.x_, y + height - 0.3, this_.width_, isHead ? 1.1 : 0.6, isHead ? Colour::Post : Colour::Hair);
      }
    });
    canvas.open("TR");
    double x = this_.x_;
    for (std::size_t i = 0; i < texts.size(); ++i) {
      const bool isTick = cells[i].kind == CellKind::TickBox;
      if (isHead || i == 0)
        canvas.open("TH", {}, isHead ? "Column" : "Row");
      else
        canvas.open("TD", isTick ? this_.document_.words.tickBox : "");
      if (isTick) {
        const double edge = this_.m_.tick;
        canvas.frame(x + (widths[i] - edge) / 2, y + (height - edge) / 2, edge, edge, 1.2, Colour::Ink);
      } else {
        texts[i].paint(canvas.cairo(), x + padX, y + (isGrid ? (height - texts[i].height()) / 2 : this_.m_.body.size * 0.22));
      }
      canvas.close();
      x += widths[i];
    }
    canvas.close();
  };
  return slice;
}

Flow BlockSetter::of(const Table& form) const {
  const std::size_t count = form.columns.size();
  if (count == 0) return {};
  std::vector<double> widths;
  if (form.isGrid) {
    double longest = 0;
    for (const auto& cells : form.rows)
      if (!cells.empty()) longest = std::max(longest, type_.widthOf(cells.front().text, m_.small) + 10);
    longest = std::max(longest, type_.widthOf(form.columns.front(), m_.small) + 14);
    const double share = m_.small.size > 20 ? 0.4 : 0.32;  // large letters need the room for names
    const double first = count > 1 && longest < width_ * share ? longest : width_ * share;
    const double other = (width_ - first) / static_cast<double>(std::max<std::size_t>(1, count - 1));
    for (std::size_t i = 0; i < count; ++i) widths.push_back(i == 0 ? first : other);
  } else if (form.shares.size() == count) {
    double total = 0;
    for (const int share : form.shares) total += share;
    for (const int share : form.shares) widths.push_back(width_ * share / total);
  } else {
    // Shares by what the columns hold, within reason.
    double total = 0;
    for (std::size_t i = 0; i < count; ++i) {
      double most = type_.widthOf(form.columns[i], m_.body);
      for (const auto& cells : form.rows)
        if (i < cells.size()) most = std::max(most, type_.widthOf(cells[i].text, m_.body));
      widths.push_back(std::clamp(most + m_.body.size * 1.2, width_ * 0.06, width_ * 0.55));
      total += widths.back();
    }
    for (double& width : widths) width *= width_ / total;
  }
  Flow flow;
  openTag(flow, "Table");
  std::vector<Cell> head;
  for (const std::string& column : form.columns) head.push_back({column, CellKind::Text});
  Slice first = tableRow(head, widths, true, form.isGrid);
  first.before = m_.gap;
  first.keepsNext = true;
  const auto repeated = std::make_shared<const Slice>(first);
  add(flow, std::move(first));
  for (const auto& cells : form.rows) {
    Slice slice = tableRow(cells, widths, false, form.isGrid);
    slice.head = repeated;
    add(flow, std::move(slice));
  }
  closeTag(flow);
  keepEnds(flow, tallest_ * kTail);
  return flow;
}

}  // namespace stile::documents
