#include "desktop/theme.h"

#include <gtk/gtk.h>

#include "desktop/text.h"

namespace stile::desktop {
namespace {

struct StepSize {
  double pixels;
  bool isBold;
};

StepSize sizeOf(Step step) {
  switch (step) {
    case Step::Numeral: return {56, true};
    case Step::Title: return {28, true};
    case Step::Question: return {24, true};
    case Step::Heading: return {20, true};
    case Step::Strong: return {16, true};
    case Step::Body: return {16, false};
    case Step::Reading: return {15, false};
    case Step::Small: return {14, false};
    case Step::Client: return {40, true};
  }
  return {16, false};
}

/// {name} is a colour, {px NN} a size of type.
constexpr const char* kStyle = R"(
window, .background { background: {ground}; color: {ink}; }
dialog, messagedialog { background: {sheet}; color: {ink}; }
* { font-family: "Clear Sans"; -gtk-outline-radius: 0; transition: none; }
label { color: inherit; }
button { border-radius: 0; border: 1.5px solid {edge}; background: {sheet}; background-image: none; box-shadow: none;
  text-shadow: none; -gtk-icon-shadow: none; color: {ink}; padding: 5px 15px; font-size: {px 16}; min-height: 24px; }
button:hover { background: {ground}; background-image: none; }
button:active { background: {hair}; background-image: none; }
button:disabled { color: {ink2}; border-color: {hair}; background: {sheet}; background-image: none; }
button:focus { outline: none; border: 3px solid {focus}; padding: 3.5px 13.5px; box-shadow: inset 0 0 0 2px {sheet}; }
button.primary { background: {ink}; color: {sheet}; border-color: {ink}; font-weight: bold; }
button.primary:hover { background: {post}; }
button.primary:focus { border-color: {focus}; }
button.primary:disabled { background: {sheet}; color: {ink2}; border-color: {hair}; }
button.flat { border-color: transparent; background: transparent; padding: 2px 6px; font-size: {px 15}; }
button.flat label { text-decoration: underline; }
button.flat:focus { border: 3px solid {focus}; padding: 0.5px 4.5px; box-shadow: none; }
button.slab { background: {slab}; color: {onSlab}; border-color: {onSlab}; }
button.slab:hover { background: {slab}; }
button.slab:focus { border-color: {focus}; box-shadow: inset 0 0 0 2px {onSlab}; }
button.answer { padding: 8px 12px; font-size: {px 16}; border-color: {edge}; }
button.answer.tight { padding: 2px 10px; }
button.answer.tight:focus, button.answer.tight.chosen:focus { padding: 0.5px 8.5px; }
button.answer:focus, button.answer.chosen:focus { padding: 6.5px 10.5px; border-color: {focus}; }
button.answer.chosen { background: {ink}; color: {sheet}; border-color: {ink}; }
button.answer .beside { font-size: {px 14}; color: {ink2}; }
button.answer.chosen .beside { color: {sheet}; }
button .cap { border: 1px solid {edge}; padding: 0 6px; font-size: {px 13}; font-weight: normal; }
button.client { padding: 8px 20px; border: 3px solid {edge}; font-size: {px 26}; font-weight: bold; }
button.client:focus, button.client.chosen:focus { border: 5px solid {focus}; padding: 6px 18px; box-shadow: none; }
button.client.chosen { background: {ink}; color: {sheet}; border-color: {ink}; }
button.client .cap, button.clientSmall .cap { padding: 0 12px; font-size: {px 20}; }
button.clientSmall { padding: 8px 20px; font-size: {px 22}; }
button.clientSmall:focus { border: 5px solid {focus}; padding: 4.5px 16.5px; box-shadow: none; }
button.row { border: none; border-bottom: 1px solid {hair}; padding: 7px 12px; background: transparent; }
button.row:hover { background: {ground}; }
button.row:focus, button.row.chosen:focus { border: 3px solid {focus}; padding: 4px 9px 5px 9px; box-shadow: none; }
button.row.chosen { background: {ground}; border-left: 7px solid {ink}; padding-left: 5px; }
button.row .strong { font-weight: bold; }
button.row .beside { font-size: {px 14}; color: {ink2}; }
button.said { border: none; background: transparent; padding: 3px 6px; font-size: {px 15}; }
button.said:hover { background: {ground}; }
button.said:focus { border: 3px solid {focus}; padding: 0 3px; box-shadow: none; }
button.said .beside { font-weight: bold; }
button.fence { border: none; border-left: 3px solid {post}; background: transparent; padding: 8px 15px; font-size: {px 15}; color: {ink}; }
button.fence:hover { background: {sheet}; }
button.fence.chosen { background: {ink}; color: {sheet}; font-weight: bold; }
button.fence.away { color: {ink2}; }
button.fence:focus { border: 3px solid {focus}; padding: 5px 12px; box-shadow: none; }
entry, textview, spinbutton, textview text { border-radius: 0; background: {sheet}; background-image: none; color: {ink}; font-size: {px 16}; box-shadow: none; }
entry { border: 1.5px solid {edge}; padding: 2px 10px; min-height: 24px; }
entry:focus { border: 3px solid {focus}; padding: 0.5px 8.5px; box-shadow: none; }
entry selection, textview text selection, entry > selection { background: {ink}; color: {sheet}; }
scrolledwindow.passage { border: 1.5px solid {edge}; padding: 5px 9px; background: {sheet}; }
scrolledwindow.passage.focused { border: 3px solid {focus}; padding: 3.5px 7.5px; }
combobox button { padding: 5px 10px; }
checkbutton, radiobutton { color: {ink}; font-size: {px 16}; }
checkbutton:focus, radiobutton:focus { outline: 3px solid {focus}; outline-offset: -3px; }
check, radio { border: 1.5px solid {edge}; background: {sheet}; background-image: none; color: {ink}; box-shadow: none; min-width: 18px; min-height: 18px; }
check { border-radius: 0; }
check:checked, radio:checked { background: {ink}; background-image: none; color: {sheet}; border-color: {ink}; }
menubar, menubar > menuitem { background: {sheet}; color: {ink}; font-size: {px 15}; }
menubar { border-bottom: 1px solid {hair}; box-shadow: none; }
menubar > menuitem:hover { background: {ground}; }
menu, .menu { background: {sheet}; color: {ink}; font-size: {px 15}; border: 1px solid {edge}; border-radius: 0; }
menu menuitem:hover { background: {ink}; color: {sheet}; }
menu menuitem:disabled { color: {ink2}; }
scrollbar { background: {ground}; border: none; }
scrollbar slider { background: {edge}; border-radius: 0; min-width: 8px; min-height: 24px; }
tooltip, tooltip.background { background: {sheet}; color: {ink}; border: 1px solid {edge}; border-radius: 0; }
tooltip label { color: {ink}; }
)";

GtkCssProvider* current = nullptr;

}  // namespace

wxColour Theme::colour(drawing::Colour colour) const {
  const auto value = valueIn(look_, colour);
  return value == "none" ? wxTransparentColour : wxColour(shown(value));
}

wxFont Theme::font(Step step) const {
  const StepSize size = sizeOf(step);
  return font(size.pixels, size.isBold);
}

wxFont Theme::font(double pixels, bool isBold) const {
  // Not SetPixelSize(): it counts the whole line.
  wxFont font(wxFontInfo(pixels * 0.75 * factor_).FaceName("Clear Sans"));
  font.SetFractionalPointSize(pixels * 0.75 * factor_);
  if (isBold) font.SetWeight(wxFONTWEIGHT_BOLD);
  return font;
}

std::string Theme::styleSheet() const {
  std::string sheet;
  const std::string_view style = kStyle;
  for (std::size_t at = 0; at < style.size();) {
    const auto end = style[at] == '{' ? style.find_first_of(" }", at + 1) : std::string_view::npos;
    const bool isName = end != std::string_view::npos && end > at + 1 && (style[end] == '}' || style.substr(at + 1, 2) == "px");
    if (!isName) {
      sheet += style[at++];
      continue;
    }
    const auto close = style.find('}', at);
    const auto name = style.substr(at + 1, close - at - 1);
    if (name.starts_with("px ")) {
      sheet += std::to_string(static_cast<int>(std::stod(std::string(name.substr(3))) * factor_ + 0.5)) + "px";
    } else {
      for (const drawing::Token& token : drawing::kTokens)
        if (token.name == name) sheet += valueIn(look_, token.colour);
    }
    at = close + 1;
  }
  return sheet;
}

void Theme::apply() const {
  GdkScreen* const screen = gdk_screen_get_default();
  if (screen == nullptr) return;
  if (current != nullptr) {
    gtk_style_context_remove_provider_for_screen(screen, GTK_STYLE_PROVIDER(current));
    g_object_unref(current);
  }
  current = gtk_css_provider_new();
  const std::string sheet = styleSheet();
  GError* trouble = nullptr;
  gtk_css_provider_load_from_data(current, sheet.c_str(), -1, &trouble);
  if (trouble != nullptr) {
    g_warning("style sheet: %s", trouble->message);
    g_error_free(trouble);
  }
  gtk_style_context_add_provider_for_screen(screen, GTK_STYLE_PROVIDER(current), GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}

}  // namespace stile::desktop
