#include "desktop/status_line.h"

#include <wx/sizer.h>
#include <wx/stattext.h>

#include "desktop/accessible.h"
#include "desktop/text.h"
#include "desktop/theme.h"

namespace stile::desktop {
namespace {

constexpr int kFootMargin = 10, kAroundWords = 4;

}  // namespace

StatusLine::StatusLine(wxWindow* parent, const Theme& theme) : wxPanel(parent) {
  SetBackgroundColour(theme.colour(drawing::Colour::Ground));
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  const auto text = [&](int share) {
    auto* made = new wxStaticText(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize,
                                  wxST_NO_AUTORESIZE | wxST_ELLIPSIZE_END);
    made->SetFont(theme.font(Step::Small));
    made->SetForegroundColour(theme.colour(drawing::Colour::Ink));
    made->SetMinSize(wxSize(FromDIP(kFootMargin), made->GetCharHeight()));
    across->Add(made, share, wxALL, FromDIP(kAroundWords));
    return made;
  };
  across->AddSpacer(FromDIP(kFootMargin));
  said_ = text(2);
  keys_ = text(3);
  SetSizer(across);
  SetCanFocus(false);
  statusFor(*this, "Status");
}

void StatusLine::say(const std::string& words) {
  said_->SetLabel(label(words));
  said_->SetToolTip(shown(words));
  announce(*said_, words);
}

void StatusLine::showKeys(const std::string& keys) {
  if (keys_->GetLabel() == label(keys)) return;
  keys_->SetLabel(label(keys));
  keys_->SetToolTip(shown(keys));
}

}  // namespace stile::desktop
