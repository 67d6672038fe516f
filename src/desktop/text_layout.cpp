#include "desktop/text_layout.h"

#include <gtk/gtk.h>
#include <wx/fontutil.h>
#include <wx/window.h>

namespace stile::desktop {

TextLayout layOut(wxWindow& window, const wxFont& font, const std::string& text, int width) {
  PangoContext* const context = gtk_widget_create_pango_context(GTK_WIDGET(window.GetHandle()));
  PangoLayout* const layout = pango_layout_new(context);
  pango_layout_set_font_description(layout, font.GetNativeFontInfo()->description);
  pango_layout_set_text(layout, text.c_str(), static_cast<int>(text.size()));
  if (width > 0) {
    pango_layout_set_width(layout, width * PANGO_SCALE);
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
  }
  TextLayout laid;
  for (GSList* at = pango_layout_get_lines_readonly(layout); at != nullptr; at = at->next) {
    const auto* line = static_cast<const PangoLayoutLine*>(at->data);
    std::string words = text.substr(static_cast<std::size_t>(line->start_index), static_cast<std::size_t>(line->length));
    while (at->next != nullptr && words.ends_with(' ')) words.pop_back();
    laid.text += (at == pango_layout_get_lines_readonly(layout) ? "" : "\n") + words;
  }
  pango_layout_get_pixel_size(layout, &laid.size.x, &laid.size.y);
  g_object_unref(layout);
  g_object_unref(context);
  return laid;
}

}  // namespace stile::desktop
