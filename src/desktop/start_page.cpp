#include "desktop/start_page.h"

#include <wx/event.h>
#include <wx/filedlg.h>
#include <wx/filename.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>
#include <wx/utils.h>
#include <wx/wupdlock.h>

#include <filesystem>

#include "application/demonstration.h"
#include "desktop/form_field.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"

namespace stile::desktop {
namespace {

bool exists(const std::string& file) {
  std::error_code ignored;
  return !file.empty() && std::filesystem::is_regular_file(file, ignored);
}

}  // namespace

StartPage::StartPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  column_ = new Column(this, theme(), drawing::Colour::Sheet, 44, 560);
  across->Add(column_, 1, wxEXPAND);
  SetSizer(across);
}

void StartPage::enter() {
  if (desk().clinic() != nullptr) return place().go("today");
  const Preferences& preferences = place().preferences();
  if (file_.empty()) file_ = preferences.givenFile.empty() ? preferences.clinicFile : preferences.givenFile;
  build();
}

void StartPage::build() {
  const wxWindowUpdateLocker calm(this);
  column_->clear();
  handle_ = passphrase_ = nullptr;
  const auto button = [this](const std::string& style, const std::string& words, std::function<void()> act) {
    auto* made = new KeyButton(column_, theme(), style, {"", words, "", false});
    made->Bind(wxEVT_BUTTON, [this, act = std::move(act)](wxCommandEvent&) { CallAfter(act); });
    return made;
  };
  if (exists(file_)) {
    buildSignIn();
  } else {
    column_->put(new Prose(column_, theme(), Step::Title, "Welcome to Stile"));
    column_->put(new Prose(column_, theme(), Step::Body,
                           "It asks a new client the questions that matter, says what may start now, what must wait and why, and writes the papers."), 8);
    column_->put(new Prose(column_, theme(), Step::Small, "It supports, and does not replace, licensed judgement and local protocols.", drawing::Colour::Ink2), 8);
    if (!file_.empty())
      column_->put(new Prose(column_, theme(), Step::Body, "There is no clinic file at " + file_ + ". Set up a new clinic there, or open the file where it is now.", drawing::Colour::Shut), 16);
    column_->space(22);
  }
  auto* row = new wxBoxSizer(wxVERTICAL);
  auto* setUp = button(exists(file_) ? "" : "primary", "Set up a new clinic", [this] { place().go("setUp"); });
  row->Add(setUp, 0, wxBOTTOM, FromDIP(10));
  row->Add(button("", "Open a clinic file…", [this] { chooseFile(); }), 0, wxBOTTOM, FromDIP(10));
  row->Add(button("", "Look round a demo clinic", [this] { openDemonstration(); }));
  column_->stack().Add(row);
  column_->space(10);
  column_->put(new Prose(column_, theme(), Step::Small, "The demo clinic is invented, and so is everybody in it. It is gone when the program ends.", drawing::Colour::Ink2));
  column_->refit();
  if (handle_ == nullptr)
    setUp->SetFocus();
  else if (handle_->text().empty())
    handle_->enter();
  else
    passphrase_->enter();
}

void StartPage::buildSignIn() {
  column_->put(new Prose(column_, theme(), Step::Title, "Sign in"));
  column_->put(new Prose(column_, theme(), Step::Small, file_, drawing::Colour::Ink2), 4);
  handle_ = new FormField(column_, theme(), "Sign-in name");
  handle_->set(place().preferences().handle);
  column_->put(handle_, 22);
  passphrase_ = new FormField(column_, theme(), "Passphrase", FormField::Kind::Secret);
  column_->put(passphrase_, 16);
  auto* open = new KeyButton(column_, theme(), "primary", {"Enter", "Open", "", false});
  open->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { signIn(); }); });
  column_->space(16);
  column_->stack().Add(open);
  column_->space(30);
}

bool StartPage::onKey(wxKeyEvent& event) {
  const bool isInField = handle_ != nullptr && (handle_->control().HasFocus() || passphrase_->control().HasFocus());
  if (isInField && (event.GetKeyCode() == WXK_RETURN || event.GetKeyCode() == WXK_NUMPAD_ENTER)) {
    if (handle_->control().HasFocus() && passphrase_->control().IsEmpty())
      passphrase_->enter();
    else
      signIn();
    return true;
  }
  return false;
}

void StartPage::signIn() {
  const wxBusyCursor waiting;
  const auto opened = desk().openClinic({file_, handle_->text(), plain(passphrase_->control().GetValue()), false});
  if (!opened) {
    passphrase_->complain(opened.failure().message);
    column_->refit();
    return passphrase_->enter();
  }
  place().preferences().givenFile.clear();
  place().preferences().clinicFile = file_;
  place().preferences().handle = handle_->text();
  place().preferences().save();
  passphrase_->control().Clear();
  place().say("Opened");
  place().go("today");
}

void StartPage::chooseFile() {
  // Where the file would be proposed, which many a dialog hides.
  const wxString folder = wxFileName(shown(file_.empty() ? proposedClinicFile() : file_)).GetPath();
  wxFileDialog dialog(this, "Open a clinic file", folder, "", "Clinic files (*.stile)|*.stile|All files|*", wxFD_OPEN | wxFD_FILE_MUST_EXIST);
  if (dialog.ShowModal() != wxID_OK) return;
  file_ = plain(dialog.GetPath());
  build();
}

void StartPage::openDemonstration() {
  const wxBusyCursor waiting;
  const auto done = desk().openDemonstration();
  if (!done) return place().tell(done.failure());
  place().say("This clinic is invented");
  place().go("today");
}

}  // namespace stile::desktop
