#include "desktop/set_up_page.h"

#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>
#include <wx/utils.h>
#include <wx/wupdlock.h>

#include <filesystem>

#include "desktop/accessible.h"
#include "desktop/form_field.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"

namespace stile::desktop {

SetUpPage::SetUpPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  column_ = new Column(this, theme(), drawing::Colour::Sheet, 44, 560);
  across->Add(column_, 1, wxEXPAND);
  SetSizer(across);
}

void SetUpPage::enter() {
  if (!isMade_) buildForm();
}

void SetUpPage::buildForm() {
  const wxWindowUpdateLocker calm(this);
  column_->clear();
  const auto field = [this](const std::string& words, const std::string& help = {}, FormField::Kind kind = FormField::Kind::Text) {
    auto* made = new FormField(column_, theme(), words, kind, help);
    column_->put(made, 16);
    return made;
  };
  const auto heading = [this](const std::string& words) {
    column_->put(new Prose(column_, theme(), Step::Heading, words), 30);
    column_->put(new Rule(column_, theme(), drawing::Colour::Post, 3), 4);
  };
  column_->put(new Prose(column_, theme(), Step::Title, "Set up a new clinic"));
  heading("The clinic, as it stands on papers");
  clinic_ = field("Name of the clinic");
  emergency_ = field("Emergency number", "As people here dial it: 112, 999, 911.");
  telephone_ = field("Telephone of the clinic", "Clients call it. May be left out for now.");
  auto* paperWords = new Prose(column_, theme(), Step::Reading, "Paper size");
  paperWords->SetFont(theme().font(15, true));
  column_->put(paperWords, 16);
  paper_ = new wxChoice(column_, wxID_ANY);
  paper_->Append("A4");
  paper_->Append("Letter");
  paper_->SetSelection(0);
  nameFor(*paper_, "Paper size");
  column_->space(4);
  column_->stack().Add(paper_);
  heading("You");
  name_ = field("Your name");
  profession_ = field("Profession", "As it stands under your name: physiotherapist.");
  handle_ = field("Sign-in name", "Small letters and digits. It can be read in the file without a passphrase.");
  passphrase_ = field("Passphrase", "At least 12 characters. Four or five words that do not belong together are good.", FormField::Kind::Secret);
  again_ = field("The passphrase once more", {}, FormField::Kind::Secret);
  heading("The file");
  file_ = field("Where everything is kept", "One file. What it says of people is sealed.");
  const std::string& given = place().preferences().givenFile;
  file_->set(given.empty() ? proposedClinicFile() : given);
  column_->space(22);
  auto* make = new KeyButton(column_, theme(), "primary", {"", "Make the clinic file", "", false});
  make->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { this->make(); }); });
  auto* back = new KeyButton(column_, theme(), "", {"", "Back", "", false});
  back->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { place().go("start"); }); });
  auto* row = new wxBoxSizer(wxHORIZONTAL);
  row->Add(make, 0, wxRIGHT, FromDIP(10));
  row->Add(back);
  column_->stack().Add(row);
  column_->refit();
  clinic_->enter();
}

bool SetUpPage::isComplete() {
  FieldCheck check;
  const std::string passphrase = plain(passphrase_->control().GetValue());
  std::error_code ignored;
  for (FormField* field : {clinic_, emergency_, name_, profession_}) check.needs(*field);
  check(*handle_, records::troubleWithHandle(handle_->text()));
  check(*passphrase_, records::troubleWithPassphrase(passphrase));
  check(*again_, plain(again_->control().GetValue()) == passphrase ? "" : "This is not the same passphrase.");
  check(*file_, file_->text().empty()                                       ? "Say where the file is to be."
               : std::filesystem::exists(file_->text(), ignored) ? "There is a file of this name already. Choose another."
                                                                           : "");
  if (!check.enterFirst()) return true;
  column_->refit();
  return false;
}

void SetUpPage::make() {
  if (!isComplete()) return;
  const wxBusyCursor waiting;
  records::ClinicSettings settings;
  settings.name = clinic_->text();
  settings.emergencyNumber = emergency_->text();
  settings.telephone = telephone_->text();
  settings.clinician = name_->text() + ", " + profession_->text();
  settings.paperSize = paper_->GetSelection() == 1 ? records::PaperSize::Letter : records::PaperSize::A4;
  const records::Clinician first{handle_->text(), name_->text(), profession_->text(), records::Role::Lead, false, false, {}};
  const auto phrase = desk().createClinic({file_->text(), handle_->text(), plain(passphrase_->control().GetValue()), false}, first, settings);
  if (!phrase) return place().tell(phrase.failure());
  place().preferences().givenFile.clear();
  place().preferences().clinicFile = file_->text();
  place().preferences().handle = handle_->text();
  place().preferences().save();
  isMade_ = true;
  buildPhrase(phrase.value());
}

void SetUpPage::buildPhrase(const std::string& phrase) {
  const wxWindowUpdateLocker calm(this);
  column_->clear();
  column_->put(new Prose(column_, theme(), Step::Title, "Write this down now"));
  column_->put(new Prose(column_, theme(), Step::Body,
                         "This recovery phrase is shown once. If every passphrase is lost, it sets up a new clinician; without it nobody can read the file any more. "
                         "Whoever has it can read everything: write it on paper and lock it away."), 12);
  auto* words = new wxTextCtrl(column_, wxID_ANY, shown(phrase), wxDefaultPosition, wxDefaultSize, wxTE_READONLY | wxTE_MULTILINE | wxTE_NO_VSCROLL);
  words->SetFont(theme().font(Step::Heading));
  words->SetMargins(FromDIP(10), FromDIP(10));
  words->SetMinSize(wxSize(FromDIP(400), 3 * theme().font(Step::Heading).GetPixelSize().y));
  nameFor(*words, "Recovery phrase");
  column_->put(words, 22);
  auto* done = new wxCheckBox(column_, wxID_ANY, "It is written on paper");
  column_->put(done, 16);
  auto* on = new KeyButton(column_, theme(), "primary", {"", "Go to work", "", false});
  on->Enable(false);
  done->Bind(wxEVT_CHECKBOX, [on](wxCommandEvent& event) { on->Enable(event.IsChecked()); });
  on->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
    CallAfter([this] {
      isMade_ = false;
      place().go("today");
      column_->clear();  // the phrase stays nowhere
    });
  });
  column_->space(16);
  column_->stack().Add(on);
  column_->refit();
  done->SetFocus();
  place().refreshHead();
}

}  // namespace stile::desktop
