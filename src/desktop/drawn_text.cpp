#include "desktop/drawn_text.h"

#include <pango/pangocairo.h>

#include <cmath>
#include <map>
#include <memory>
#include <string>
#include <tuple>

namespace stile::desktop {
namespace {

constexpr std::size_t kMostTexts = 600;

struct Release {
  void operator()(PangoLayout* layout) const { g_object_unref(layout); }
};
using Layout = std::unique_ptr<PangoLayout, Release>;

/// By scale, size, weight and words: the toolkit lays a text out for the scale it is drawn at.
using DrawnTexts = std::map<std::tuple<long, long, bool, std::string>, Layout>;

DrawnTexts& drawnTexts() {
  static DrawnTexts all;
  return all;
}

Layout laidOut(cairo_t* target, const drawing::TextRun& run) {
  Layout layout(pango_cairo_create_layout(target));
  PangoFontDescription* const font = pango_font_description_new();
  pango_font_description_set_family_static(font, "Clear Sans");
  pango_font_description_set_absolute_size(font, run.size * PANGO_SCALE);
  if (run.isBold) pango_font_description_set_weight(font, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description(layout.get(), font);
  pango_font_description_free(font);
  pango_layout_set_text(layout.get(), run.text.c_str(), static_cast<int>(run.text.size()));
  return layout;
}

PangoLayout* layoutOf(cairo_t* target, const drawing::TextRun& run) {
  cairo_matrix_t matrix;
  cairo_get_matrix(target, &matrix);
  const auto fixed = [](double value) { return std::lround(value * 1000); };
  if (drawnTexts().size() >= kMostTexts) drawnTexts().clear();
  auto& kept = drawnTexts()[{fixed(matrix.xx), fixed(run.size), run.isBold, run.text}];
  if (kept == nullptr) kept = laidOut(target, run);
  return kept.get();
}

}  // namespace

void drawText(cairo_t* target, const drawing::TextRun& run) {
  PangoLayout* const layout = layoutOf(target, run);
  int width = 0;
  pango_layout_get_size(layout, &width, nullptr);
  const double wide = static_cast<double>(width) / PANGO_SCALE, above = static_cast<double>(pango_layout_get_baseline(layout)) / PANGO_SCALE;
  const double left = run.align == drawing::Align::Start ? run.at.x : run.align == drawing::Align::Middle ? run.at.x - wide / 2 : run.at.x - wide;
  cairo_move_to(target, left, run.at.y - above);
  pango_cairo_show_layout(target, layout);
}

void forgetDrawnTexts() {
  drawnTexts().clear();
}

}  // namespace stile::desktop
