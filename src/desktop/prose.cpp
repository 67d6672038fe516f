#include "desktop/prose.h"

#include <wx/sizer.h>

#include <algorithm>

#include "desktop/text.h"

namespace stile::desktop {
namespace {

constexpr int kTermWidth = 128, kColumnGap = 14;
/// Drawn text comes out wider than words measured one by one, by at most this part.
constexpr int kWiderDrawn = 16;

}  // namespace

Prose::Prose(wxWindow* parent, const Theme& theme, Step step, const std::string& text, drawing::Colour ink)
    : theme_(theme), step_(step), text_(text) {
  // In steps, and measured only when its page is laid out: the toolkit would measure the words in its own font and
  // in ours, and without the width they are to have.
  Create(parent, wxID_ANY, "");
  SetFont(theme.font(step));
  SetForegroundColour(theme.colour(ink));
  SetLabel(label(text));
  isMade_ = true;
  InvalidateBestSize();
}

void Prose::say(const std::string& text) {
  if (text == text_) return;
  text_ = text;
  layOutAnew();
}

void Prose::prepare(const std::string& text) const {
  (void)layOut(const_cast<Prose&>(*this), GetFont(), text, widthOfLines());
}

void Prose::sayOrHide(const std::string& text) {
  Show(!text.empty());
  if (!text.empty()) say(text);
}

void Prose::step(Step step) {
  if (step == step_) return;
  step_ = step;
  SetFont(theme_.font(step));
}

void Prose::fit(int width) {
  if (width == width_) return;
  width_ = width;
  // The toolkit must not be given the size of what is hidden.
  isStale_ = !IsShown();
  if (!isStale_) layOutAnew();
}

bool Prose::Show(bool isShown) {
  if (isShown && isStale_) layOutAnew();
  return wxStaticText::Show(isShown);
}

bool Prose::SetFont(const wxFont& font) {
  laid_.reset();
  // Not as a static text does it: that first looks up the toolkit's own font, to see whether it is underlined.
  if (!wxControl::SetFont(font)) return false;
  if (width_ > 0) layOutAnew();
  return true;
}

int Prose::widestWord() {
  int widest = 0;
  for (std::size_t from = 0; from < text_.size();) {
    const std::size_t to = std::min(text_.find_first_of(" \n", from), text_.size());
    widest = std::max(widest, layOut(*this, GetFont(), text_.substr(from, to - from), 0).size.x);
    from = to + 1;
  }
  return widest + widest / (kWiderDrawn - 2) + 1;
}

int Prose::widthOfLines() const { return width_ > 0 ? width_ - width_ / kWiderDrawn : 0; }

void Prose::layOutAnew() {
  isStale_ = false;
  laid_ = layOut(*this, GetFont(), text_, widthOfLines());
  InvalidateBestSize();
  SetLabel(label(laid_->text));
}

wxSize Prose::DoGetBestSize() const {
  if (!isMade_) return {1, 1};
  // Not what the toolkit says: it resolves the style of a label only when it first draws it, and until
  // then measures in another font.
  if (!laid_) laid_ = layOut(const_cast<Prose&>(*this), GetFont(), text_, width_);
  return {laid_->size.x + laid_->size.x / kWiderDrawn, laid_->size.y};
}

TermRow::TermRow(wxWindow* parent, const Theme& theme, const std::string& term, const std::string& text, const std::string& note)
    : wxPanel(parent) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  term_ = new Prose(this, theme, Step::Reading, term);
  wxFont bold = theme.font(15, true);
  term_->SetFont(bold);
  auto* right = new wxBoxSizer(wxVERTICAL);
  text_ = new Prose(this, theme, Step::Reading, text);
  right->Add(text_);
  if (!note.empty()) {
    note_ = new Prose(this, theme, Step::Small, note, drawing::Colour::Ink2);
    right->Add(note_, 0, wxTOP, FromDIP(2));
  }
  across->Add(term_, 0, wxRIGHT, FromDIP(kColumnGap));
  across->Add(right, 1);
  auto* down = new wxBoxSizer(wxVERTICAL);
  down->Add(across, 0, wxEXPAND | wxTOP | wxBOTTOM, FromDIP(8));
  down->Add(new Rule(this, theme), 0, wxEXPAND);
  SetSizer(down);
}

void TermRow::fit(int width) {
  // A third of the width, and never narrower than its longest word, which would be broken within.
  const int term = std::min(std::max(std::min(FromDIP(kTermWidth), width / 3), term_->widestWord()), width / 2), rest = std::max(FromDIP(80), width - term - FromDIP(kColumnGap));
  term_->fit(term);
  term_->SetMinSize(wxSize(term, -1));
  text_->fit(rest);
  if (note_ != nullptr) note_->fit(rest);
}

Rule::Rule(wxWindow* parent, const Theme& theme, drawing::Colour colour, int thickness)
    : wxPanel(parent, wxID_ANY, wxDefaultPosition, wxSize(-1, parent->FromDIP(thickness))) {
  SetBackgroundColour(theme.colour(colour));
  SetMinSize(wxSize(-1, FromDIP(thickness)));
  SetCanFocus(false);
}

}  // namespace stile::desktop
