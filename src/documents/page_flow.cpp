#include "documents/page_flow.h"

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
    height += (isFirst ? 0 : step.slice.before) + step.slice.height;
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

std::vector<Placed> placed(const Flow& flow, double top, double bottom) {
  std::vector<const Slice*> slices;
  for (const Step& step : flow)
    if (step.kind == Step::Kind::Slice) slices.push_back(&step.slice);

  std::vector<Placed> places;
  int page = 0;
  double y = top;
  for (std::size_t i = 0; i < slices.size();) {
    // A chain: everything that must stand on one page with its next.
    std::size_t end = i + 1;
    while (end < slices.size() && slices[end - 1]->keepsNext) ++end;
    double chain = 0;
    for (std::size_t k = i; k < end; ++k) chain += (k == i ? 0 : slices[k]->before) + slices[k]->height;
    const bool isAtTop = y == top;
    const bool breaks = slices[i]->startsPage || (y + slices[i]->before + chain > bottom && chain <= bottom - top);
    if (!isAtTop && breaks) {
      ++page;
      y = top;
    }
    for (; i < end; ++i) {
      double before = y == top ? 0 : slices[i]->before;
      if (y != top && y + before + slices[i]->height > bottom) {
        ++page;
        y = top;
        before = 0;
      }
      const Slice* head = y == top && page > 0 ? slices[i]->head.get() : nullptr;
      const bool hasHead = head != nullptr && top + head->height + slices[i]->height <= bottom;
      if (hasHead) before = head->height;
      places.push_back({page, y + before, hasHead});
      y += before + slices[i]->height;
    }
  }

  std::vector<Placed> all;
  std::size_t next = 0;
  for (const Step& step : flow) {
    switch (step.kind) {
      case Step::Kind::Slice:
        all.push_back(places[next++]);
        break;
      case Step::Kind::Open:
        all.push_back(next < places.size() ? places[next] : Placed{page, y});
        break;
      case Step::Kind::Close:
        all.push_back(next > 0 ? places[next - 1] : Placed{0, top});
        break;
    }
  }
  return all;
}

}  // namespace stile::documents
