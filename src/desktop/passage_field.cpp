#include "desktop/passage_field.h"

#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>

#include <algorithm>

#include "desktop/accessible.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"
#include "desktop/text_layout.h"

namespace stile::desktop {
namespace {

constexpr int kLeastHeight = 34, kMostHeight = 220, kAround = 16, kInside = 11;

}  // namespace

PassageField::PassageField(wxWindow* parent, const Theme& theme, const std::string& name,
                           std::string computed, const std::string& words, Told told)
    : wxPanel(parent), theme_(theme), name_(name), computed_(std::move(computed)), told_(std::move(told)) {
  SetBackgroundColour(parent->GetBackgroundColour());
  auto* down = new wxBoxSizer(wxVERTICAL);
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  title_ = new Prose(this, theme, Step::Reading, name);
  title_->SetFont(theme.font(15, true));
  across->Add(title_, 1, wxALIGN_BOTTOM);
  back_ = new KeyButton(this, theme, "flat", {"", "As computed", "", false});
  nameFor(*back_, "As computed: " + name);
  back_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { reset(), enter(); }); });
  across->Add(back_, 0, wxLEFT | wxRESERVE_SPACE_EVEN_IF_HIDDEN, FromDIP(8));
  down->Add(across, 0, wxEXPAND);
  control_ = new wxTextCtrl(this, wxID_ANY, shown(words), wxDefaultPosition, wxDefaultSize,
                            wxTE_MULTILINE | wxTE_NO_VSCROLL);
  control_->SetFont(theme.font(Step::Body));
  control_->Bind(wxEVT_KEY_DOWN, [this](wxKeyEvent& event) { onTab(event, true); });
  back_->Bind(wxEVT_KEY_DOWN, [this](wxKeyEvent& event) { onTab(event, false); });
  const auto mark = [this](wxFocusEvent& event) {
    event.Skip();
    styleClass(*control_, "focused", event.GetEventType() == wxEVT_SET_FOCUS);
  };
  control_->Bind(wxEVT_SET_FOCUS, mark);
  control_->Bind(wxEVT_KILL_FOCUS, mark);
  styleClass(*control_, "passage");
  control_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { wordsChanged(); });
  nameFor(*control_, name);
  down->Add(control_, 0, wxEXPAND | wxTOP, FromDIP(2));
  trouble_ = new Prose(this, theme, Step::Small, "", drawing::Colour::Shut);
  trouble_->Hide();
  down->Add(trouble_, 0, wxTOP, FromDIP(2));
  SetSizer(down);
  back_->Show(isChanged());
}

std::string PassageField::words() const {
  return plain(control_->GetValue());
}

void PassageField::reset() {
  control_->SetValue(shown(computed_));
}

void PassageField::complain(const std::string& trouble) {
  trouble_->say(trouble);
  trouble_->Show(!trouble.empty());
  nameFor(*control_, name_, trouble);
  InvalidateBestSize();
}

void PassageField::enter() {
  control_->SetFocus();
}

void PassageField::enterBy(bool isForward) {
  if (isForward && back_->IsShown())
    back_->SetFocus();
  else
    control_->SetFocus();
}

void PassageField::onTab(wxKeyEvent& event, bool isInWords) {
  if (event.GetKeyCode() != WXK_TAB || event.ControlDown()) return event.Skip();
  // Left alone, the toolkit goes from a text of several lines to the head of the window.
  const bool isForward = !event.ShiftDown();
  if (isInWords && !isForward && back_->IsShown()) return back_->SetFocus();
  if (!isInWords && isForward) return control_->SetFocus();
  told_.leaving(isForward);
}

void PassageField::wordsChanged() {
  back_->Show(isChanged());
  grow();
  told_.changed();
}

void PassageField::grow() {
  if (width_ == 0) return;
  const int height =
      layOut(*control_, control_->GetFont(), words() + " ", width_ - 2 * FromDIP(kInside)).size.y +
      FromDIP(kAround);
  const wxSize wanted(width_, std::clamp(height, FromDIP(kLeastHeight), FromDIP(kMostHeight)));
  if (control_->GetMinSize() == wanted) return;
  control_->SetMinSize(wanted);
  control_->SetMaxSize(wanted);
  InvalidateBestSize();
}

void PassageField::fit(int width) {
  width_ = width;
  title_->fit(std::max(FromDIP(80), width - back_->GetBestSize().x - FromDIP(8)));
  trouble_->fit(width);
  grow();
}

}  // namespace stile::desktop
