#include <array>

#include "documents/decision_drawing.h"
#include "documents/decision_words.h"

namespace stile::documents {
namespace {

using drawing::Colour;
using drawing::Paint;
using limits::Action;

/// Shares of the width: the words decide.
constexpr std::array<double, 5> kShares{54, 70, 94, 84, 96};

Paint paintOf(bool isNow, bool isPossible, int index) {
  if (isNow) {
    const Colour fill = index >= static_cast<int>(Action::SameDay)      ? Colour::Slab
                        : index == static_cast<int>(Action::WithinDays) ? Colour::ShutTint
                                                                        : Colour::Sheet;
    return {.fill = fill, .stroke = Colour::Slab, .strokeWidth = 3};
  }
  if (isPossible) return {.isHatched = true, .stroke = Colour::Hatch, .strokeWidth = 1.5, .isDashed = true};
  return {.stroke = Colour::Hair, .strokeWidth = 1.5};
}

}  // namespace

drawing::Drawing actionStripOf(const screening::Screening& screening, double width) {
  const int now = static_cast<int>(screening.reach.limits.action),
            possible = static_cast<int>(screening.couldBecome);
  drawing::Drawing strip{width, 50, "Action today", actionSentence(screening), {}};
  double total = 0, left = 0;
  for (const double share : kShares) total += share;
  for (int i = 0; i < 5; ++i) {
    const double share = kShares[static_cast<std::size_t>(i)] * width / total;
    const bool isNow = i == now, isPossible = i > now && i <= possible,
               isSolid = isNow && i >= static_cast<int>(Action::SameDay);
    const double x = left + 1, w = share - 5, middle = x + w / 2, inset = isNow ? 1 : 0;
    drawing::Group box{wordsOf(static_cast<Action>(i)), {}};
    box.shapes.push_back({drawing::Rectangle{x + inset, isNow ? 2.0 : 6.0, w - 2 * inset, isNow ? 46.0 : 38.0,
                                             paintOf(isNow, isPossible, i)}});
    if (isPossible)
      box.shapes.push_back({drawing::Rectangle{x + 5, 10.5, w - 10, 29, {.fill = Colour::Sheet}}});
    const Colour ink = isSolid ? Colour::OnSlab : isNow || isPossible ? Colour::Ink : Colour::Ink2;
    // Tally strokes: the step is counted, not only named.
    if (i == 0)
      box.shapes.push_back(
          {drawing::Line{{middle - 5, 17}, {middle + 5, 17}, {.stroke = ink, .strokeWidth = 2.4}}});
    for (int n = 0; n < i; ++n) {
      const double at = middle + (n - (i - 1) / 2.0) * 6;
      box.shapes.push_back({drawing::Line{{at, 13}, {at, 22}, {.stroke = ink, .strokeWidth = 2.6}}});
    }
    box.shapes.push_back({drawing::TextRun{
        {middle, 36}, wordsOf(static_cast<Action>(i)), 14, isNow, drawing::Align::Middle, ink}});
    strip.shapes.push_back({std::move(box)});
    left += share;
  }
  return strip;
}

}  // namespace stile::documents
