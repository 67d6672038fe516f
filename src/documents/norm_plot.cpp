#include "documents/norm_plot.h"

#include <algorithm>
#include <cstdlib>

namespace stile::documents {
namespace {

using drawing::Align;
using drawing::Colour;

constexpr double kPlotWidth = 150, kLeft = 6, kRight = kPlotWidth - 6, kLine = 13, kLabel = 33, kLetters = 16;

/// For places on the line only; nothing is decided by it.
double approximate(const base::Rational& value) {
  return std::strtod(value.toText(4).c_str(), nullptr);
}

drawing::Shape stroke(double from, double to, double width, Colour colour) {
  return {drawing::Line{{from, kLine}, {to, kLine}, {.stroke = colour, .strokeWidth = width}}};
}

drawing::Shape words(double x, const std::string& text, Align align) {
  return {drawing::TextRun{{x, kLabel}, text, kLetters, false, align, Colour::Ink2}};
}

}  // namespace

const facts::NormRow* normRowFor(const facts::NormTable& table, const std::string& sex, int age) {
  for (const facts::NormRow& row : table.rows)
    if (row.sex == sex && age >= row.ageFrom && age <= row.ageTo) return &row;
  return nullptr;
}

drawing::Drawing normPlot(const facts::NormTable& table, const facts::NormRow& row, const base::Rational& result,
                          const std::string& unit) {
  const double below = approximate(row.below), value = approximate(result);
  const double above = row.above ? approximate(*row.above) : below * 1.5;
  const double span = std::max(std::abs(above - below), 0.01);
  // Worse and better beyond the norms as far as the norms are wide; the mark never leaves the line.
  const double low = std::min(below, above) - span, high = std::max(below, above) + span;
  const auto place = [&](double at) {
    const double share = std::clamp((at - low) / (high - low), 0.02, 0.98);
    return kLeft + (kRight - kLeft) * (table.higherIsBetter ? share : 1 - share);
  };
  const std::string number = result.toText(1);
  const bool isWorse = table.higherIsBetter ? value < below : value > below;
  const bool isBetter = row.above && (table.higherIsBetter ? value > above : value < above);
  drawing::Drawing plot{kPlotWidth, 36, table.title, "", {}};
  plot.description = number + (unit.empty() ? "" : " " + unit) + ": " +
                     (isWorse    ? table.higherIsBetter ? "below" : "slower than"
                      : isBetter ? table.higherIsBetter ? "above" : "faster than"
                      : row.above ? "within"
                                  : table.higherIsBetter ? "at or above" : "at or faster than") +
                     " the published values, " + row.below.toText(1) +
                     (row.above ? " to " + row.above->toText(1) : " the mean for age");
  plot.shapes.push_back(stroke(kLeft, kRight, 1.2, Colour::Edge));
  const double from = place(below), to = row.above ? place(above) : kRight;
  plot.shapes.push_back(stroke(from, to, 6, Colour::Hatch));
  for (const double at : {from, to})
    if (at == from || row.above)
      plot.shapes.push_back({drawing::Line{{at, kLine - 6}, {at, kLine + 6}, {.stroke = Colour::Ink, .strokeWidth = 1.4}}});
  const double mark = place(value);
  plot.shapes.push_back({drawing::Polygon{{{mark, kLine + 1}, {mark - 6, kLine - 11}, {mark + 6, kLine - 11}},
                                          {.fill = Colour::Ink, .stroke = Colour::OnSlab, .strokeWidth = 1}}});
  // Two numbers that would touch stand outwards.
  const bool isNarrow = row.above && to - from < 48;
  plot.shapes.push_back(words(from, row.below.toText(1), isNarrow ? Align::End : Align::Middle));
  if (row.above) plot.shapes.push_back(words(to, row.above->toText(1), isNarrow ? Align::Start : Align::Middle));
  return plot;
}

}  // namespace stile::documents
