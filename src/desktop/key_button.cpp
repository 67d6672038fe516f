#include "desktop/key_button.h"

#include <gtk/gtk.h>
#include <wx/dcclient.h>

#include <algorithm>

#include "desktop/accessible.h"
#include "desktop/text.h"
#include "desktop/text_layout.h"

namespace stile::desktop {
namespace {

GtkWidget* labelOf(const std::string& text, const char* style, bool isWide) {
  GtkWidget* const label = gtk_label_new(text.c_str());
  gtk_label_set_xalign(GTK_LABEL(label), 0);
  if (style != nullptr) gtk_style_context_add_class(gtk_widget_get_style_context(label), style);
  gtk_widget_set_hexpand(label, isWide);
  gtk_widget_set_valign(label, GTK_ALIGN_CENTER);
  return label;
}

constexpr int kClientHeight = 84, kClientSmallHeight = 68;
/// A window lower than this has lower targets, down to a share of them.
constexpr int kFullHeight = 800;
constexpr double kLeastShare = 0.65;

std::string broken(wxWindow& window, const wxFont& font, const std::string& text, int width) { return layOut(window, font, text, std::max(width, 1)).text; }

}  // namespace

KeyButton::KeyButton(wxWindow* parent, const Theme& theme, const std::string& style, KeyButtonWords words)
    : wxButton(parent, wxID_ANY, " "), theme_(theme), style_(style), words_(std::move(words)) {
  if (!style_.empty()) styleClass(*this, style_.c_str());
  SetFont(mainFont());
  fill();
}

wxFont KeyButton::mainFont() const {
  if (isLarge()) return theme_.font(style_ == "client" ? 26 : 22, style_ == "client");
  return theme_.font(style_ == "said" || style_ == "flat" || style_ == "fence" ? 15 : 16, style_ == "primary");
}

void KeyButton::say(KeyButtonWords words) {
  words_ = std::move(words);
  fill();
}

void KeyButton::choose(bool isChosen) {
  isChosen_ = isChosen;
  styleClass(*this, "chosen", isChosen);
}

void KeyButton::fit(int width) {
  if (width == width_) return;
  width_ = width;
  fill();
}

void KeyButton::fill() {
  const bool isRow = isLarge() || style_ == "answer" || style_ == "row" || style_ == "said";
  const wxFont main = mainFont();
  const wxFont small = theme_.font(14, false);
  std::string words = words_.words, beside = words_.beside;
  if (isRow && width_ > 0) {
    const int cap = words_.cap.empty() ? 0 : FromDIP(isLarge() ? 80 : 44), inside = width_ - cap - FromDIP(34);
    if (words_.isBesideBelow || beside.empty()) {
      words = broken(*this, main, words, inside);
      beside = broken(*this, small, beside, inside);
    } else {
      const int right = std::min(inside * 11 / 20, layOut(*this, small, beside, 0).size.x + FromDIP(8));
      words = broken(*this, main, words, inside - right - FromDIP(10));
      beside = broken(*this, small, beside, right);
    }
  }
  GtkWidget* const button = GTK_WIDGET(GetHandle());
  if (GtkWidget* const old = gtk_bin_get_child(GTK_BIN(button)); old != nullptr) gtk_container_remove(GTK_CONTAINER(button), old);
  GtkWidget* const across = gtk_box_new(GTK_ORIENTATION_HORIZONTAL, FromDIP(12));
  if (!isRow) gtk_widget_set_halign(across, GTK_ALIGN_CENTER);
  const bool isCapFirst = isRow;
  GtkWidget* const cap = words_.cap.empty() ? nullptr : labelOf(words_.cap, "cap", false);
  if (cap != nullptr && isCapFirst) gtk_container_add(GTK_CONTAINER(across), cap);
  if (words_.isBesideBelow && !beside.empty()) {
    GtkWidget* const down = gtk_box_new(GTK_ORIENTATION_VERTICAL, 0);
    gtk_widget_set_hexpand(down, TRUE);
    gtk_container_add(GTK_CONTAINER(down), labelOf(words, "strong", isRow));
    gtk_container_add(GTK_CONTAINER(down), labelOf(beside, "beside", isRow));
    gtk_container_add(GTK_CONTAINER(across), down);
  } else {
    gtk_container_add(GTK_CONTAINER(across), labelOf(words, nullptr, isRow));
    if (!beside.empty()) gtk_container_add(GTK_CONTAINER(across), labelOf(beside, "beside", false));
  }
  if (cap != nullptr && !isCapFirst) gtk_container_add(GTK_CONTAINER(across), cap);
  gtk_container_add(GTK_CONTAINER(button), across);
  gtk_widget_show_all(across);
  nameFor(*this, words_.words + (words_.beside.empty() ? "" : ", " + words_.beside), words_.cap.empty() ? "" : "Key " + words_.cap);
  // What it was given before must not count: a row that needs fewer lines now gets lower.
  int givenWidth = -1, givenHeight = -1;
  gtk_widget_get_size_request(button, &givenWidth, &givenHeight);
  gtk_widget_set_size_request(button, -1, -1);
  GtkRequisition least{}, wanted{};
  gtk_widget_get_preferred_size(button, &least, &wanted);
  gtk_widget_set_size_request(button, givenWidth, givenHeight);
  // Targets for a finger, whatever the words need.
  if (isLarge()) {
    const double room = std::clamp(wxGetTopLevelParent(this)->GetClientSize().y / static_cast<double>(FromDIP(kFullHeight)), kLeastShare, 1.0);
    const double height = (style_ == "client" ? kClientHeight : kClientSmallHeight) * room * theme_.factor();
    wanted.height = std::max(wanted.height, FromDIP(static_cast<int>(height)));
    // The toolkit has not resolved the larger type yet.
    wxClientDC measure(this);
    measure.SetFont(main);
    wanted.width = std::max(wanted.width, measure.GetTextExtent(shown(words)).x + FromDIP(56));
  }
  SetMinSize(wxSize(isRow ? std::min(width_ > 0 ? width_ : wanted.width, wanted.width) : wanted.width, wanted.height));
  InvalidateBestSize();
}

}  // namespace stile::desktop
