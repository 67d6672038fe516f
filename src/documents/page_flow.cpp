#include "documents/page_flow.h"

#include <algorithm>
#include <memory>

namespace stile::documents {

void add(Flow& flow, Slice slice) {
  Step step;
  step.slice = std::move(slice);
  flow.push_back(std::move(step));
}

void openTag(Flow& flow, std::string tag) {
  Step step;
  step.kind = Step::Kind::Open;
  step.tag = std::move(tag);
  flow.push_back(std::move(step));
}

void closeTag(Flow& flow) {
  Step step;
  step.kind = Step::Kind::Close;
  flow.push_back(std::move(step));
}

void append(Flow& flow, Flow more) {
  flow.insert(flow.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

double heightOf(const Flow& flow) {
  double height = 0;
  bool isFirst = true;
  for (const Step& step : flow) {
    if (step.kind != Step::Kind::Slice) continue;
    height += ((isFirst ? 0 : step.slice.before) + step.slice.height) / (step.slice.paintRight ? 2 : 1);
    isFirst = false;
  }
  return height;
}

void paintAll(const Flow& flow, PdfCanvas& canvas, double y) {
  bool isFirst = true;
  for (const Step& step : flow) {
    switch (step.kind) {
      case Step::Kind::Open:
        canvas.open(step.tag);
        break;
      case Step::Kind::Close:
        canvas.close();
        break;
      case Step::Kind::Slice:
        if (!isFirst) y += step.slice.before;
        isFirst = false;
        step.slice.paint(canvas, y);
        y += step.slice.height;
        break;
    }
  }
}

Slice together(Flow flow, double before) {
  Slice slice;
  slice.before = before;
  slice.height = heightOf(flow);
  const auto kept = std::make_shared<Flow>(std::move(flow));
  slice.paint = [kept](PdfCanvas& canvas, double y) { paintAll(*kept, canvas, y); };
  return slice;
}

namespace {

/// Places slices one after the other.
class Placing {
 public:
  Placing(const std::vector<const Slice*>& slices, double top, double bottom)
      : slices_(slices), top_(top), bottom_(bottom), y_(top) {}

  std::vector<Placed> run() {
    for (std::size_t at = 0; at < slices_.size();)
      at = slices_[at]->paintRight ? columnsFrom(at) : chainFrom(at);
    return std::move(places_);
  }
  int page() const { return page_; }
  double y() const { return y_; }

 private:
  double room() const { return bottom_ - top_; }
  double before(std::size_t i, double y) const { return y == top_ ? 0 : slices_[i]->before; }
  void turn() {
    ++page_;
    y_ = top_;
  }

  /// A chain: everything that must stand on one page with its next. Returns what comes after it.
  std::size_t chainFrom(std::size_t i) {
    std::size_t end = i + 1;
    while (end < slices_.size() && slices_[end - 1]->keepsNext) ++end;
    double chain = 0;
    for (std::size_t k = i; k < end; ++k) chain += (k == i ? 0 : slices_[k]->before) + slices_[k]->height;
    const bool starts = slices_[i]->startsPage && y_ - top_ > slices_[i]->sharedUpTo * room();
    if (y_ != top_ && (starts || (y_ + slices_[i]->before + chain > bottom_ && chain <= room()))) turn();
    for (; i < end && !slices_[i]->paintRight; ++i) place(i);
    return i;
  }

  void place(std::size_t i) {
    if (y_ != top_ && y_ + slices_[i]->before + slices_[i]->height > bottom_) turn();
    double above = before(i, y_);
    const Slice* head = y_ == top_ && page_ > 0 ? slices_[i]->head.get() : nullptr;
    const bool hasHead = head != nullptr && top_ + head->height + slices_[i]->height <= bottom_;
    if (hasHead) above = head->height;
    places_.push_back({page_, y_ + above, hasHead});
    y_ += above + slices_[i]->height;
  }

  /// The slices from `from` up to, not including, `to` in one column.
  double columnHeight(std::size_t from, std::size_t to) const {
    double height = 0;
    for (std::size_t i = from; i < to; ++i)
      height += (i == from ? 0 : slices_[i]->before) + slices_[i]->height;
    return height;
  }
  /// The end of those from `from` on that one column of the height can hold, at least one.
  std::size_t columnEnd(std::size_t from, std::size_t end, double most) const {
    std::size_t to = from + 1;
    for (double height = slices_[from]->height; to < end; ++to) {
      height += slices_[to]->before + slices_[to]->height;
      if (height > most) break;
    }
    return to;
  }
  void column(std::size_t from, std::size_t to, double y, bool isRight) {
    for (std::size_t i = from; i < to; ++i) {
      if (i > from) y += slices_[i]->before;
      places_.push_back({page_, y, false, isRight});
      y += slices_[i]->height;
    }
  }

  std::size_t columnsFrom(std::size_t from) {
    std::size_t end = from + 1;
    while (end < slices_.size() && slices_[end]->paintRight) ++end;
    while (from < end) {
      double start = y_ + before(from, y_);
      if (y_ != top_ && start + slices_[from]->height > bottom_) {
        turn();
        start = y_;
      }
      const double most = bottom_ - start;
      std::size_t middle = columnEnd(from, end, most);
      std::size_t last = middle < end ? columnEnd(middle, end, most) : end;
      if (last == end) middle = balanced(from, end);
      column(from, middle, start, false);
      column(middle, last, start, true);
      y_ = start + std::max(columnHeight(from, middle), columnHeight(middle, last));
      from = last;
      if (from < end) turn();
    }
    return end;
  }
  /// Where two columns are least tall.
  std::size_t balanced(std::size_t from, std::size_t end) const {
    std::size_t best = end;
    double least = columnHeight(from, end);
    for (std::size_t middle = from + 1; middle < end; ++middle) {
      const double taller = std::max(columnHeight(from, middle), columnHeight(middle, end));
      if (taller < least) least = taller, best = middle;
    }
    return best;
  }

  const std::vector<const Slice*>& slices_;
  double top_, bottom_, y_;
  int page_ = 0;
  std::vector<Placed> places_;
};

}  // namespace

std::vector<Placed> placed(const Flow& flow, double top, double bottom) {
  std::vector<const Slice*> slices;
  for (const Step& step : flow)
    if (step.kind == Step::Kind::Slice) slices.push_back(&step.slice);
  Placing placing(slices, top, bottom);
  const std::vector<Placed> places = placing.run();

  std::vector<Placed> all;
  std::size_t next = 0;
  for (const Step& step : flow) {
    switch (step.kind) {
      case Step::Kind::Slice:
        all.push_back(places[next++]);
        break;
      case Step::Kind::Open:
        all.push_back(next < places.size() ? places[next] : Placed{placing.page(), placing.y()});
        break;
      case Step::Kind::Close:
        all.push_back(next > 0 ? places[next - 1] : Placed{0, top});
        break;
    }
  }
  return all;
}

}  // namespace stile::documents
