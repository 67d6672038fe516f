#include "desktop/key_button.h"

#include <gtk/gtk.h>

#include <algorithm>
#include <cmath>

#include "desktop/accessible.h"
#include "desktop/text.h"
#include "desktop/text_layout.h"

namespace stile::desktop {
namespace {

/// What padding and border add to what is inside.
wxSize edgesOf(GtkWidget* button) {
  GtkStyleContext* const style = gtk_widget_get_style_context(button);
  GtkBorder padding{}, border{};
  gtk_style_context_get_padding(style, GTK_STATE_FLAG_NORMAL, &padding);
  gtk_style_context_get_border(style, GTK_STATE_FLAG_NORMAL, &border);
  return {padding.left + padding.right + border.left + border.right, padding.top + padding.bottom + border.top + border.bottom};
}

constexpr int kLeastInside = 24;  // as in the style sheet
constexpr int kGap = 12;  // between key cap, words and what stands beside them
constexpr int kClientHeight = 84, kClientSmallHeight = 68;
/// A window lower than this has lower targets, down to a share of them.
constexpr int kFullHeight = 800;
constexpr double kLeastShare = 0.65;

GdkRGBA inkOf(const wxColour& colour) { return {colour.Red() / 255.0, colour.Green() / 255.0, colour.Blue() / 255.0, 1}; }

void setInk(cairo_t* target, const GdkRGBA& ink) { gdk_cairo_set_source_rgba(target, &ink); }

}  // namespace

KeyButton::KeyButton(wxWindow* parent, const Theme& theme, const std::string& style, KeyButtonWords words)
    : theme_(theme), style_(style), words_(std::move(words)) {
  // In two steps, so that the toolkit asks this class for size and fonts, and not its own label.
  Create(parent, wxID_ANY, " ");
  if (!style_.empty()) styleClass(*this, style_.c_str());
  GtkWidget* const button = GTK_WIDGET(GetHandle());
  const auto onDraw = +[](GtkWidget*, cairo_t* target, gpointer self) -> gboolean { return static_cast<KeyButton*>(self)->paint(target), FALSE; };
  g_signal_connect_after(button, "draw", G_CALLBACK(onDraw), this);
  takeFonts();
  edges_ = edgesOf(button);
  tell();
  fill();
}

wxFont KeyButton::mainFont() const {
  if (isLarge()) return theme_.font(style_ == "client" ? 26 : 22, style_ == "client");
  return theme_.font(style_ == "said" || style_ == "flat" || style_ == "fence" ? 15 : 16, style_ == "primary" || (style_ == "fence" && isChosen_));
}

void KeyButton::takeFonts() {
  cap_.font = theme_.font(capPixels(), false);
  main_.font = words_.isBesideBelow ? theme_.font(16, true) : mainFont();
  beside_.font = style_ == "said" ? theme_.font(15, true) : theme_.font(14, false);
}

void KeyButton::say(KeyButtonWords words) {
  if (words == words_) return;
  const bool isArrangedAnew = words.isBesideBelow != words_.isBesideBelow;
  words_ = std::move(words);
  if (isArrangedAnew) takeFonts();
  tell();
  fill();
}

void KeyButton::prepare(KeyButtonWords words) {
  words_ = std::move(words);
  fill();
  for (const Piece* piece : {&cap_, &main_, &beside_})
    if (!piece->text.empty()) prepareLaidOut(*this, piece->font, piece->text, style_ == "flat");
}

void KeyButton::tell() {
  nameFor(*this, words_.words + (words_.beside.empty() ? "" : ", " + words_.beside));
  describe(*this, words_.cap.empty() ? "" : "Key " + words_.cap);
}

void KeyButton::choose(bool isChosen) {
  if (isChosen == isChosen_) return;
  isChosen_ = isChosen;
  styleClass(*this, "chosen", isChosen);
  if (style_ != "fence") return;
  takeFonts();
  fill();
}

void KeyButton::emphasize(bool isPrimary) {
  const char* const style = isPrimary ? "primary" : "";
  if (style_ == style) return;
  style_ = style;
  styleClass(*this, "primary", isPrimary);
  edges_ = edgesOf(GTK_WIDGET(GetHandle()));
  takeFonts();
  fill();
}

void KeyButton::tighten(bool isTight) {
  if (isTight == isTight_) return;
  isTight_ = isTight;
  styleClass(*this, "tight", isTight);
  edges_ = edgesOf(GTK_WIDGET(GetHandle()));
  measure();
}

void KeyButton::fit(int width) {
  if (width == width_) return;
  width_ = width;
  if (wraps()) fill();
}

void KeyButton::lay(Piece& piece, const std::string& text, int width) {
  const TextLayout laid = layOut(*this, piece.font, text, width);
  piece.text = text.empty() ? "" : laid.text;
  piece.size = text.empty() ? wxSize() : laid.size;
}

void KeyButton::fill() {
  lay(cap_, words_.cap, 0);
  if (wraps() && width_ > 0) {
    breakWords();
  } else {
    lay(main_, words_.words, 0);
    lay(beside_, words_.beside, 0);
  }
  measure();
  gtk_widget_queue_draw(GTK_WIDGET(GetHandle()));
}

void KeyButton::breakWords() {
  const int cap = words_.cap.empty() ? 0 : cap_.size.x + FromDIP(2 * capPadding() + 2 + kGap);
  const int inside = std::max(1, width_ - edges_.x - cap);
  if (words_.isBesideBelow || words_.beside.empty()) {
    lay(main_, words_.words, inside);
    lay(beside_, words_.beside, inside);
    return;
  }
  lay(beside_, words_.beside, 0);
  if (beside_.size.x > inside * 11 / 20) lay(beside_, words_.beside, inside * 11 / 20);
  lay(main_, words_.words, std::max(1, inside - beside_.size.x - FromDIP(kGap)));
}

void KeyButton::measure() {
  int width = main_.size.x, height = main_.size.y;
  if (isBesideBelow()) {
    width = std::max(width, beside_.size.x);
    height += beside_.size.y;
  } else if (!beside_.text.empty()) {
    width += FromDIP(kGap) + beside_.size.x;
    height = std::max(height, beside_.size.y);
  }
  if (!cap_.text.empty()) {
    width += FromDIP(kGap + 2 * capPadding() + 2) + cap_.size.x;
    height = std::max(height, cap_.size.y + FromDIP(2));
  }
  wxSize wanted(width + edges_.x, std::max(height, kLeastInside) + edges_.y);
  // Targets for a finger, whatever the words need.
  if (isLarge()) {
    const double room = std::clamp(wxGetTopLevelParent(this)->GetClientSize().y / static_cast<double>(FromDIP(kFullHeight)), kLeastShare, 1.0);
    const double least = (style_ == "client" ? kClientHeight : kClientSmallHeight) * room * theme_.factor();
    wanted.y = std::max(wanted.y, FromDIP(static_cast<int>(least)));
  }
  if (isRow() && width_ > 0) wanted.x = std::min(width_, wanted.x);
  wanted_ = wanted;
  SetMinSize(wanted);
  InvalidateBestSize();
}

void KeyButton::paint(cairo_t* target) {
  GtkWidget* const button = GTK_WIDGET(GetHandle());
  GtkStyleContext* const style = gtk_widget_get_style_context(button);
  const GtkStateFlags state = gtk_widget_get_state_flags(button);
  GtkBorder padding{}, border{};
  gtk_style_context_get_padding(style, state, &padding);
  gtk_style_context_get_border(style, state, &border);
  GdkRGBA ink{}, quiet = inkOf(theme_.colour(drawing::Colour::Ink2));
  gtk_style_context_get_color(style, state, &ink);
  if ((isChosen_ && style_ == "answer") || style_ == "said") quiet = ink;
  double left = padding.left + border.left, right = gtk_widget_get_allocated_width(button) - padding.right - border.right;
  const double above = padding.top + border.top, below = gtk_widget_get_allocated_height(button) - padding.bottom - border.bottom;
  const double middle = (above + below) / 2, gap = FromDIP(kGap), cap = cap_.text.empty() ? 0 : cap_.size.x + FromDIP(2 * capPadding() + 2);
  setInk(target, ink);
  if (!wraps()) {
    // In the middle, the key cap last.
    const double beside = beside_.text.empty() ? 0 : gap + beside_.size.x;
    left = std::max(left, (left + right - main_.size.x - beside - (cap > 0 ? gap + cap : 0)) / 2);
    paintPiece(target, main_, left, middle - main_.size.y / 2.0);
    left += main_.size.x + gap;
    if (beside > 0) paintPiece(target, beside_, left, middle - beside_.size.y / 2.0);
    if (cap > 0) paintCap(target, left + beside, middle);
    return;
  }
  if (cap > 0) paintCap(target, left, middle);
  left += cap > 0 ? cap + gap : 0;
  if (isBesideBelow()) {
    const double top = middle - (main_.size.y + beside_.size.y) / 2.0;
    paintPiece(target, main_, left, top);
    setInk(target, quiet);
    return paintPiece(target, beside_, left, top + main_.size.y);
  }
  paintPiece(target, main_, left, middle - main_.size.y / 2.0);
  setInk(target, quiet);
  if (!beside_.text.empty()) paintPiece(target, beside_, right - beside_.size.x, middle - beside_.size.y / 2.0);
}

void KeyButton::paintCap(cairo_t* target, double left, double middle) {
  const double width = cap_.size.x + FromDIP(2 * capPadding() + 2), height = cap_.size.y + FromDIP(2);
  paintPiece(target, cap_, left + FromDIP(capPadding() + 1), middle - cap_.size.y / 2.0);
  cairo_save(target);
  setInk(target, inkOf(theme_.colour(drawing::Colour::Edge)));
  cairo_set_line_width(target, FromDIP(1));
  cairo_rectangle(target, std::floor(left) + 0.5, std::floor(middle - height / 2) + 0.5, std::floor(width) - 1, std::floor(height) - 1);
  cairo_stroke(target);
  cairo_restore(target);
}

void KeyButton::paintPiece(cairo_t* target, const Piece& piece, double left, double top) {
  if (piece.text.empty()) return;
  // On whole pixels, or letters get blurred.
  drawLaidOut(target, *this, piece.font, piece.text, std::round(left), std::round(top), style_ == "flat");
}

}  // namespace stile::desktop
