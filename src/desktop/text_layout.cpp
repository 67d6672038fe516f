#include "desktop/text_layout.h"

#include <gtk/gtk.h>
#include <wx/fontutil.h>
#include <wx/window.h>

#include <map>
#include <memory>
#include <tuple>

namespace stile::desktop {
namespace {

constexpr std::size_t kMostKept = 4000, kMostDrawn = 2000;

/// By font, width and text.
using KeptLayouts = std::map<std::tuple<unsigned, int, std::string>, TextLayout, std::less<>>;

KeptLayouts& keptLayouts() {
  static KeptLayouts layouts;
  return layouts;
}

struct ReleaseLayout {
  void operator()(PangoLayout* layout) const { g_object_unref(layout); }
};
/// By font, underline and text.
using DrawnLayouts = std::map<std::tuple<unsigned, bool, std::string>, std::unique_ptr<PangoLayout, ReleaseLayout>, std::less<>>;

DrawnLayouts& drawnLayouts() {
  static DrawnLayouts layouts;
  return layouts;
}

/// One for all windows: they stand on the same screen.
PangoContext* contextOf(wxWindow& window) {
  static PangoContext* const context = gtk_widget_create_pango_context(GTK_WIDGET(window.GetHandle()));
  return context;
}

PangoLayout* layoutFor(wxWindow& window) {
  static PangoLayout* const layout = pango_layout_new(contextOf(window));
  return layout;
}

PangoLayout* newLayout(wxWindow& window, const PangoFontDescription* font, const std::string& text, bool isUnderlined) {
  PangoLayout* const layout = pango_layout_new(contextOf(window));
  pango_layout_set_font_description(layout, font);
  pango_layout_set_text(layout, text.c_str(), static_cast<int>(text.size()));
  if (isUnderlined) {
    PangoAttrList* const attributes = pango_attr_list_new();
    pango_attr_list_insert(attributes, pango_attr_underline_new(PANGO_UNDERLINE_SINGLE));
    pango_layout_set_attributes(layout, attributes);
    pango_attr_list_unref(attributes);
  }
  return layout;
}

PangoLayout* drawnLayout(wxWindow& window, const wxFont& font, const std::string& text, bool isUnderlined) {
  const PangoFontDescription* const description = font.GetNativeFontInfo()->description;
  auto& layouts = drawnLayouts();
  if (layouts.size() >= kMostDrawn) layouts.clear();
  auto& layout = layouts[{pango_font_description_hash(description), isUnderlined, text}];
  if (layout == nullptr) layout.reset(newLayout(window, description, text, isUnderlined));
  return layout.get();
}

TextLayout brokenAnew(wxWindow& window, const PangoFontDescription* font, const std::string& text, int width) {
  PangoLayout* const layout = layoutFor(window);
  pango_layout_set_font_description(layout, font);
  pango_layout_set_text(layout, text.c_str(), static_cast<int>(text.size()));
  pango_layout_set_width(layout, width > 0 ? width * PANGO_SCALE : -1);
  pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
  TextLayout laid;
  GSList* const lines = pango_layout_get_lines_readonly(layout);
  for (GSList* at = lines; at != nullptr; at = at->next) {
    const auto* line = static_cast<const PangoLayoutLine*>(at->data);
    std::string words = text.substr(static_cast<std::size_t>(line->start_index), static_cast<std::size_t>(line->length));
    while (at->next != nullptr && words.ends_with(' ')) words.pop_back();
    laid.text += (at == lines ? "" : "\n") + words;
  }
  pango_layout_get_pixel_size(layout, &laid.size.x, &laid.size.y);
  return laid;
}

}  // namespace

TextLayout layOut(wxWindow& window, const wxFont& font, const std::string& text, int width) {
  const PangoFontDescription* const description = font.GetNativeFontInfo()->description;
  std::tuple key(pango_font_description_hash(description), width, text);
  auto& layouts = keptLayouts();
  if (const auto at = layouts.find(key); at != layouts.end()) return at->second;
  if (layouts.size() >= kMostKept) layouts.clear();
  return layouts.emplace(std::move(key), brokenAnew(window, description, text, width)).first->second;
}

void prepareLaidOut(wxWindow& window, const wxFont& font, const std::string& text, bool isUnderlined) {
  (void)pango_layout_get_lines_readonly(drawnLayout(window, font, text, isUnderlined));
}

void drawLaidOut(cairo_t* target, wxWindow& window, const wxFont& font, const std::string& text, double x, double y, bool isUnderlined) {
  cairo_move_to(target, x, y);
  pango_cairo_show_layout(target, drawnLayout(window, font, text, isUnderlined));
}

void forgetLayouts() {
  keptLayouts().clear();
  drawnLayouts().clear();
}

}  // namespace stile::desktop
