#include "desktop/form_field.h"

#include <wx/sizer.h>
#include <wx/textctrl.h>

#include <algorithm>

#include "desktop/accessible.h"
#include "desktop/prose.h"
#include "desktop/text.h"

namespace stile::desktop {

FormField::FormField(wxWindow* parent, const Theme& theme, const std::string& words, Kind kind, const std::string& help)
    : wxPanel(parent), words_(words) {
  auto* down = new wxBoxSizer(wxVERTICAL);
  title_ = new Prose(this, theme, Step::Reading, words);
  title_->SetFont(theme.font(15, true));
  down->Add(title_);
  if (!help.empty()) {
    help_ = new Prose(this, theme, Step::Small, help, drawing::Colour::Ink2);
    down->Add(help_);
  }
  control_ = new wxTextCtrl(this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, kind == Kind::Secret ? wxTE_PASSWORD : 0);
  control_->SetFont(theme.font(Step::Body));
  nameFor(*control_, words, help);
  down->Add(control_, 0, wxEXPAND | wxTOP, FromDIP(4));
  trouble_ = new Prose(this, theme, Step::Small, "", drawing::Colour::Shut);
  trouble_->Hide();
  down->Add(trouble_, 0, wxTOP, FromDIP(2));
  SetSizer(down);
}

std::string FormField::text() const {
  std::string words = plain(control_->GetValue());
  const auto first = words.find_first_not_of(" \t");
  if (first == std::string::npos) return {};
  return words.substr(first, words.find_last_not_of(" \t") - first + 1);
}

void FormField::set(const std::string& text) { control_->ChangeValue(shown(text)); }

void FormField::complain(const std::string& trouble) {
  trouble_->say(trouble);
  trouble_->Show(!trouble.empty());
  nameFor(*control_, words_, trouble);
  InvalidateBestSize();
}

void FormField::enter() {
  control_->SetFocus();
  control_->SelectAll();
}

void FormField::fit(int width) {
  title_->fit(width);
  if (help_ != nullptr) help_->fit(width);
  trouble_->fit(width);
  const int widest = std::min(width, FromDIP(460));
  control_->SetMinSize(wxSize(widest, -1));
  control_->SetMaxSize(wxSize(widest, -1));
}

void FieldCheck::operator()(FormField& field, const std::string& trouble) {
  field.complain(trouble);
  if (!trouble.empty() && first_ == nullptr) first_ = &field;
}

void FieldCheck::needs(FormField& field) { (*this)(field, field.text().empty() ? "This is needed." : ""); }

bool FieldCheck::enterFirst() {
  if (first_ == nullptr) return false;
  first_->enter();
  return true;
}

}  // namespace stile::desktop
