#include "documents/pdf_text.h"

#include <algorithm>
#include <array>

#include "base/utf8.h"
#include "documents/unbroken.h"

namespace stile::documents {
namespace {

/// Lines narrower than so many times their letters' size break wherever they must.
constexpr double kNarrow = 14;

struct FontDescriptionEnd {
  void operator()(PangoFontDescription* description) const { pango_font_description_free(description); }
};
using FontDescription = std::unique_ptr<PangoFontDescription, FontDescriptionEnd>;

FontDescription fontOf(const TextStyle& style) {
  FontDescription font(pango_font_description_new());
  pango_font_description_set_family_static(font.get(), Typesetter::kFamily);
  pango_font_description_set_absolute_size(font.get(), style.size * PANGO_SCALE);
  pango_font_description_set_weight(font.get(), style.isBold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  return font;
}

template <class T>
std::shared_ptr<T> owned(T* object) {
  return {object, [](T* one) { g_object_unref(one); }};
}

}  // namespace

void SetText::paint(cairo_t* cairo, double x, double y, int from, int to) const {
  const auto value = drawing::valueOf(style_.colour, drawing::Theme::Paper);
  const auto part = [&](std::size_t at) {
    return std::stoi(std::string(value.substr(at, 2)), nullptr, 16) / 255.0;
  };
  cairo_set_source_rgb(cairo, part(1), part(3), part(5));
  const double base = (style_.line - natural_) / 2 + ascent_;
  int index = 0;
  for (GSList* at = pango_layout_get_lines_readonly(layout_.get()); at != nullptr && index < to; at = at->next, ++index) {
    if (index < from) continue;
    auto* line = static_cast<PangoLayoutLine*>(at->data);
    PangoRectangle extents;
    pango_layout_line_get_extents(line, nullptr, &extents);
    const double free = room_ - extents.width / static_cast<double>(PANGO_SCALE);
    const double shift = align_ == TextAlign::Start ? 0 : align_ == TextAlign::Middle ? free / 2 : free;
    cairo_move_to(cairo, x + shift, y + (index - from) * style_.line + base);
    pango_cairo_show_layout_line(cairo, line);
  }
}

void SetText::paintOnBaseLine(cairo_t* cairo, double x, double y) const {
  paint(cairo, x, y - (style_.line - natural_) / 2 - ascent_, 0, 1);
}

Typesetter::Typesetter()
    : context_(owned(pango_font_map_create_context(pango_cairo_font_map_get_default()))) {
  cairo_font_options_t* options = cairo_font_options_create();
  // Measured for paper, not for a screen: no rounding to pixels.
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context_.get(), options);
  cairo_font_options_destroy(options);
  pango_cairo_context_set_resolution(context_.get(), 72);
  pango_context_set_round_glyph_positions(context_.get(), FALSE);
  pango_context_set_base_dir(context_.get(), PANGO_DIRECTION_LTR);
}

base::Result<bool> Typesetter::checkFont() const {
  const FontDescription wanted = fontOf({});
  const auto font = owned(pango_context_load_font(context_.get(), wanted.get()));
  if (font) {
    const FontDescription found(pango_font_describe(font.get()));
    const char* family = pango_font_description_get_family(found.get());
    if (family != nullptr && std::string_view(family) == kFamily) return true;
  }
  return base::Failure{base::FailureKind::File,
                       std::string("the typeface ") + kFamily +
                           " is not installed, so no PDF can be made; install the Debian package " + kPackage};
}

SetText Typesetter::set(std::string_view text, const TextStyle& style, double room, std::size_t boldBytes,
                        TextAlign align) const {
  SetText result;
  result.style_ = style;
  result.align_ = align;
  const FontDescription font = fontOf(style);
  result.layout_ = layoutOf(text, style, font.get(), room, boldBytes);
  PangoLayout* layout = result.layout_.get();
  result.lines_ = text.empty() ? 0 : pango_layout_get_line_count(layout);
  const Ascent& ascent = ascentOf(style, font.get());
  result.ascent_ = ascent.ascent;
  result.natural_ = ascent.natural;
  PangoRectangle extents;
  pango_layout_get_extents(layout, nullptr, &extents);
  result.width_ = extents.width / static_cast<double>(PANGO_SCALE);
  result.room_ = room > 0 ? room : result.width_;
  return result;
}

std::shared_ptr<PangoLayout> Typesetter::layoutOf(std::string_view text, const TextStyle& style, const PangoFontDescription* font,
                                                  double room, std::size_t boldBytes) const {
  const auto [at, isNew] = layouts_.try_emplace({std::string(text), style.size, style.isBold, room, boldBytes});
  if (!isNew) return at->second;
  at->second = owned(pango_layout_new(context_.get()));
  PangoLayout* layout = at->second.get();
  pango_layout_set_font_description(layout, font);
  pango_layout_set_auto_dir(layout, FALSE);
  if (room > 0) pango_layout_set_width(layout, static_cast<int>(room * PANGO_SCALE));
  pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
  const std::string clean = base::wellFormedUtf8(text);
  pango_layout_set_text(layout, clean.c_str(), static_cast<int>(clean.size()));
  PangoAttrList* attributes = pango_attr_list_new();
  // Listening readers lose the rest of a line after two letters that are drawn as one.
  pango_attr_list_insert(attributes, pango_attr_font_features_new("liga=0"));
  if (boldBytes > 0) {
    PangoAttribute* bold = pango_attr_weight_new(PANGO_WEIGHT_BOLD);
    bold->start_index = 0;
    bold->end_index = static_cast<guint>(boldBytes);
    pango_attr_list_insert(attributes, bold);
  }
  if (room > kNarrow * style.size)
    for (const auto& [from, to] : unbrokenRanges(clean)) {
      PangoAttribute* whole = pango_attr_allow_breaks_new(FALSE);
      whole->start_index = static_cast<guint>(from);
      whole->end_index = static_cast<guint>(to);
      pango_attr_list_insert(attributes, whole);
    }
  pango_layout_set_attributes(layout, attributes);
  pango_attr_list_unref(attributes);
  return at->second;
}

const Typesetter::Ascent& Typesetter::ascentOf(const TextStyle& style, const PangoFontDescription* font) const {
  const auto [at, isNew] = ascents_.try_emplace({style.size, style.isBold});
  if (isNew) {
    // Pango sets a sample text each time it is asked.
    PangoFontMetrics* metrics = pango_context_get_metrics(context_.get(), font, nullptr);
    at->second.ascent = pango_font_metrics_get_ascent(metrics) / static_cast<double>(PANGO_SCALE);
    at->second.natural = at->second.ascent + pango_font_metrics_get_descent(metrics) / static_cast<double>(PANGO_SCALE);
    pango_font_metrics_unref(metrics);
  }
  return at->second;
}

double Typesetter::widthOf(std::string_view text, const TextStyle& style) const {
  return set(text, style, 0).width();
}

Measures Measures::of(const Document& document) {
  using drawing::Colour;
  Measures m;
  switch (document.reader) {
    case Reader::Clinician:
      m.body = {10, 13.2}, m.small = {9, 11.3, false, Colour::Ink2}, m.title = {16, 20, true};
      m.heading = {10.5, 13.4, true}, m.boxTitle = {10.5, 14, true}, m.statement = {15.5, 19.5, true};
      m.dose = {10, 13.4, true}, m.number = m.statement, m.foot = {9, 12, false, Colour::Ink2};
      m.gap = 4, m.headingGap = 5;
      m.choice = 9.5;
      break;
    case Reader::Physician:
      m.body = {10.3, 13.6}, m.small = {9.3, 12.2, false, Colour::Ink2}, m.title = {16, 20, true};
      m.heading = {11.5, 15.5, true}, m.boxTitle = {10.5, 14.5, true}, m.statement = {13, 17.5, true};
      m.dose = {10.3, 13.6, true}, m.number = m.statement, m.foot = {9, 12, false, Colour::Ink2};
      m.gap = 4.5, m.headingGap = 8;
      m.termShare = 0.2;
      m.tick = 11, m.choice = 10;
      break;
    case Reader::Client: {
      const double least = document.textSize == TextSize::Points14 ? 14 : document.textSize == TextSize::Points18 ? 18 : 24;
      const double body = least == 14 ? 15 : least, up = least == 14 ? 1 : least == 18 ? 1.14 : 1.35;
      m.body = {body, body * 1.4}, m.small = {least, least * 1.34, false, Colour::Ink2};
      m.title = {23 * up, 27 * up, true}, m.heading = {19 * up, 24 * up, true};
      m.boxTitle = {17.5 * up, 22 * up, true}, m.statement = {18 * up, 24 * up, true};
      m.dose = {body, body * 1.4, true}, m.number = {28 * up, 34 * up, true};
      m.foot = {least, least * 1.28, false, Colour::Ink2};
      m.gap = 7 * up, m.headingGap = 16;
      m.choice = 16 * up;
      m.termShare = 0.46;
      break;
    }
  }
  if (document.isBlackOnly) {
    for (TextStyle* style : {&m.body, &m.small, &m.title, &m.heading, &m.boxTitle, &m.statement, &m.dose, &m.number, &m.foot})
      style->colour = Colour::Ink;
  }
  return m;
}

Measures Measures::tightened(int level) const {
  Measures m = *this;
  struct Share {
    double gaps, lines;
  };
  constexpr std::array<Share, kTightest + 1> kShares{{{1, 1}, {0.8, 0.97}, {0.6, 0.935}, {0.45, 0.91}}};
  const auto [gaps, lines] = kShares[static_cast<std::size_t>(std::clamp(level, 0, kTightest))];
  for (TextStyle* style : {&m.body, &m.small, &m.title, &m.heading, &m.boxTitle, &m.statement, &m.dose, &m.number, &m.foot})
    style->line *= lines;
  m.gap *= gaps, m.headingGap *= gaps;
  return m;
}

}  // namespace stile::documents
