#include "desktop/choice_field.h"

#include <wx/choice.h>
#include <wx/sizer.h>

#include "desktop/accessible.h"
#include "desktop/prose.h"
#include "desktop/text.h"

namespace stile::desktop {

ChoiceField::ChoiceField(wxWindow* parent, const Theme& theme, const std::string& words, std::vector<std::pair<std::string, std::string>> options,
                         const std::string& nothing)
    : wxPanel(parent), options_(std::move(options)), words_(words) {
  SetBackgroundColour(parent->GetBackgroundColour());
  auto* down = new wxBoxSizer(wxVERTICAL);
  title_ = new Prose(this, theme, Step::Reading, words);
  title_->SetFont(theme.font(15, true));
  down->Add(title_);
  control_ = new wxChoice(this, wxID_ANY);
  control_->SetFont(theme.font(Step::Body));
  control_->Append(shown(nothing));
  for (const auto& [code, option] : options_) control_->Append(shown(option));
  control_->SetSelection(0);
  nameFor(*control_, words);
  down->Add(control_, 0, wxTOP, FromDIP(4));
  trouble_ = new Prose(this, theme, Step::Small, "", drawing::Colour::Shut);
  trouble_->Hide();
  down->Add(trouble_, 0, wxTOP, FromDIP(2));
  SetSizer(down);
}

std::string ChoiceField::code() const {
  const int at = control_->GetSelection();
  return at <= 0 ? std::string() : options_[static_cast<std::size_t>(at - 1)].first;
}

void ChoiceField::choose(const std::string& code) {
  for (std::size_t i = 0; i < options_.size(); ++i)
    if (options_[i].first == code) control_->SetSelection(static_cast<int>(i + 1));
}

void ChoiceField::complain(const std::string& trouble) {
  trouble_->say(trouble);
  trouble_->Show(!trouble.empty());
  nameFor(*control_, words_, trouble);
  InvalidateBestSize();
}

void ChoiceField::fit(int width) {
  title_->fit(width);
  trouble_->fit(width);
}

}  // namespace stile::desktop
