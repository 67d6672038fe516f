#include "desktop/clinic_page.h"

#include <wx/msgdlg.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>
#include <wx/utils.h>

#include <filesystem>

#include "desktop/choice_field.h"
#include "desktop/form_field.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"

namespace stile::desktop {
namespace {

constexpr std::size_t kBackupsKept = 14;
constexpr int kMargin = 36, kWidest = 560;
constexpr const char *kPaperSize = "paperSize", *kBackupFolder = "backups";

struct SettingField {
  const char *member, *words, *help;
  std::string records::ClinicSettings::*place;
};

const SettingField kSettings[] = {
    {"name", "Name of the clinic", "", &records::ClinicSettings::name},
    {"emergencyNumber", "Emergency number", "As people here dial it: 112, 999, 911.", &records::ClinicSettings::emergencyNumber},
    {"telephone", "Telephone of the clinic", "Clients call it.", &records::ClinicSettings::telephone},
    {"email", "E-mail", "", &records::ClinicSettings::email},
    {"address", "Address", "", &records::ClinicSettings::address},
    {"openingHours", "Opening hours", "", &records::ClinicSettings::openingHours},
    {"outOfHours", "Whom to call when the clinic is shut", "", &records::ClinicSettings::outOfHours},
    {"crisisLine", "Help for somebody in despair", "A local service and its number.", &records::ClinicSettings::crisisLine},
    {"replyRoute", "How a physician's reply comes back", "A secure way: sealed envelope, or a fax number.", &records::ClinicSettings::replyRoute},
    {"clinician", "Who signs the papers", "Name and profession.", &records::ClinicSettings::clinician},
};

std::string roleWords(records::Role role) {
  switch (role) {
    case records::Role::Assistant: return "assistant: enters, signs nothing";
    case records::Role::Clinician: return "clinician: signs";
    case records::Role::Lead: return "clinical lead: signs, gives the second signature, approves rules";
  }
  return {};
}

/// As typed: a passphrase may begin or end with a space.
std::string secretIn(FormField& field) { return plain(field.control().GetValue()); }

}  // namespace

ClinicPage::ClinicPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  left_ = new Column(this, theme(), drawing::Colour::Sheet, kMargin, kWidest);
  right_ = new Column(this, theme(), drawing::Colour::Ground, kMargin, kWidest);
  across->Add(left_, 1, wxEXPAND);
  across->Add(right_, 1, wxEXPAND);
  SetSizer(across);
}

void ClinicPage::enter() {
  build();
  said_.front().field->enter();
}

void ClinicPage::build() {
  left_->clear();
  right_->clear();
  left_->put(new Prose(left_, theme(), Step::Title, "The clinic"));
  left_->put(new Prose(left_, theme(), Step::Small, desk().clinicFile(), drawing::Colour::Ink2), 4);
  buildPapers();
  buildPeople();
  buildPassphrase();
  buildBackup();
  refit();
}

void ClinicPage::refit() {
  left_->refit();
  right_->refit();
}

void ClinicPage::heading(Column& column, const std::string& words) {
  column.put(new Prose(&column, theme(), Step::Heading, words), 34);
  column.put(new Rule(&column, theme(), drawing::Colour::Post, 3), 4);
}

FormField* ClinicPage::field(Column& column, const std::string& words, const std::string& help, bool isSecret) {
  auto* made = new FormField(&column, theme(), words, isSecret ? FormField::Kind::Secret : FormField::Kind::Text, help);
  column.put(made, 16);
  return made;
}

void ClinicPage::button(Column& column, const std::string& style, const std::string& cap, const std::string& words, void (ClinicPage::*act)()) {
  auto* made = new KeyButton(&column, theme(), style, {cap, words, "", false});
  made->Bind(wxEVT_BUTTON, [this, act](wxCommandEvent&) { CallAfter([this, act] { (this->*act)(); }); });
  column.space(16);
  column.stack().Add(made);
}

void ClinicPage::buildPapers() {
  heading(*left_, "As it stands on papers");
  said_.clear();
  for (const SettingField& setting : kSettings) {
    FormField* made = field(*left_, setting.words, setting.help);
    made->set(desk().settings().*setting.place);
    said_.push_back({setting.member, made, made->text()});
  }
  paper_ = new ChoiceField(left_, theme(), "Paper size", {{"A4", "A4"}, {"Letter", "Letter"}});
  paper_->choose(records::idOf(desk().settings().paperSize));
  left_->put(paper_, 16);
  button(*left_, "primary", "Ctrl Enter", "Save", &ClinicPage::savePapers);
}

void ClinicPage::buildPeople() {
  heading(*right_, "Who may sign in");
  const auto& self = desk().clinic()->file().who();
  for (const auto& one : desk().clinic()->file().clinicians()) {
    if (one.isRecovery) continue;
    const std::string about = one.isRevoked ? "may no longer sign in" : roleWords(one.role);
    right_->put(new TermRow(right_, theme(), one.handle, one.name + (one.profession.empty() ? "" : ", " + one.profession), about));
    if (one.isRevoked || one.handle == self.handle) continue;
    auto* end = new KeyButton(right_, theme(), "", {"", "End the rights of " + one.name, "", false});
    end->Bind(wxEVT_BUTTON, [this, handle = one.handle, name = one.name](wxCommandEvent&) { CallAfter([this, handle, name] { endRights(handle, name); }); });
    right_->space(6);
    right_->stack().Add(end);
  }
  right_->put(new Prose(right_, theme(), Step::Body, "Somebody new"), 22);
  name_ = field(*right_, "Name");
  profession_ = field(*right_, "Profession", "As it stands under the name: physiotherapist.");
  handle_ = field(*right_, "Sign-in name", "Small letters and digits. It can be read in the file without a passphrase.");
  role_ = new ChoiceField(right_, theme(), "May do what",
                          {{"assistant", roleWords(records::Role::Assistant)}, {"clinician", roleWords(records::Role::Clinician)}, {"lead", roleWords(records::Role::Lead)}});
  right_->put(role_, 16);
  passphrase_ = field(*right_, "Their passphrase", "At least 12 characters. They type it themselves, and can change it later.", true);
  again_ = field(*right_, "Their passphrase once more", {}, true);
  button(*right_, "", "", "Let them sign in", &ClinicPage::addPerson);
}

void ClinicPage::buildPassphrase() {
  heading(*right_, "Your own passphrase");
  own_ = field(*right_, "New passphrase", "At least 12 characters.", true);
  ownAgain_ = field(*right_, "New passphrase once more", {}, true);
  button(*right_, "", "", "Change it", &ClinicPage::changePassphrase);
}

void ClinicPage::buildBackup() {
  heading(*right_, "Backup");
  right_->put(new Prose(right_, theme(), Step::Body,
                         "A checked copy of the file, sealed like the file itself. Keep one on another disk: a disk that breaks takes both. The newest " + std::to_string(kBackupsKept) +
                             " in the folder are kept."), 8);
  folder_ = field(*right_, "Folder");
  folder_->set((std::filesystem::absolute(desk().clinicFile()).parent_path() / kBackupFolder).string());
  button(*right_, "", "", "Make a backup now", &ClinicPage::backUp);
}

bool ClinicPage::isAllowed(const std::string& what) {
  return desk().isDemonstration() || isConfirmed(what, "Your passphrase as it is now shows that it is you.", what);
}

void ClinicPage::done(const base::Result<bool>& result, const std::string& words) {
  if (!result) return place().tell(result.failure());
  build();
  said_.front().field->enter();
  place().refreshHead();
  place().say(words);
}

bool ClinicPage::isPapersChanged() const {
  for (const Said& said : said_)
    if (said.field->text() != said.first) return true;
  return paper_ != nullptr && paper_->code() != records::idOf(desk().settings().paperSize);
}

std::string ClinicPage::whyStay() const { return isPapersChanged() ? "Save what the clinic says on papers first (Ctrl Enter), or press Esc to leave it as it was." : ""; }

void ClinicPage::savePapers() {
  FieldCheck check;
  std::map<std::string, std::string> members{{kPaperSize, paper_->code()}};
  for (const Said& said : said_) members[said.member] = said.field->text();
  for (std::size_t i = 0; i < 2; ++i) check.needs(*said_[i].field);
  if (check.enterFirst()) return refit();
  done(desk().changeSettings(members), "Saved");
}

void ClinicPage::addPerson() {
  FieldCheck check;
  check.needs(*name_);
  check.needs(*profession_);
  check(*handle_, records::troubleWithHandle(handle_->text()));
  check(*passphrase_, records::troubleWithPassphrase(secretIn(*passphrase_)));
  check(*again_, secretIn(*again_) == secretIn(*passphrase_) ? "" : "This is not the same passphrase.");
  const auto role = records::roleOf(role_->code());
  role_->complain(role ? "" : "This is needed.");
  if (check.enterFirst() || !role) return refit();
  if (!isAllowed("Let them sign in")) return;
  const wxBusyCursor waiting;
  const std::string name = name_->text();
  done(desk().clinic()->file().addClinician({handle_->text(), name, profession_->text(), *role, false, false, {}}, secretIn(*passphrase_)), name + " may sign in");
}

void ClinicPage::endRights(const std::string& handle, const std::string& name) {
  const int sure = wxMessageDialog(this, shown(name + " could no longer sign in. What they wrote and signed stays. This cannot be taken back."), "End these rights?",
                                   wxYES_NO | wxNO_DEFAULT | wxICON_NONE).ShowModal();
  if (sure != wxID_YES || !isAllowed("End the rights")) return;
  const wxBusyCursor waiting;
  done(desk().clinic()->file().revoke(handle), name + " may no longer sign in");
}

void ClinicPage::changePassphrase() {
  FieldCheck check;
  check(*own_, records::troubleWithPassphrase(secretIn(*own_)));
  check(*ownAgain_, secretIn(*ownAgain_) == secretIn(*own_) ? "" : "This is not the same passphrase.");
  if (check.enterFirst()) return refit();
  if (!isAllowed("Change it")) return;
  const wxBusyCursor waiting;
  done(desk().clinic()->file().changePassphrase(secretIn(*own_)), "Your passphrase was changed");
}

void ClinicPage::backUp() {
  FieldCheck check;
  check.needs(*folder_);
  if (check.enterFirst()) return refit();
  const wxBusyCursor waiting;
  const auto made = desk().clinic()->file().backup(folder_->text(), kBackupsKept);
  if (!made) return place().tell(made.failure());
  place().say("Backup: " + made.value());
}

bool ClinicPage::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  if (key == WXK_ESCAPE && isPapersChanged()) return CallAfter([this] { enter(); }), true;
  if (event.ControlDown() && (key == WXK_RETURN || key == WXK_NUMPAD_ENTER)) return CallAfter([this] { savePapers(); }), true;
  return false;
}

}  // namespace stile::desktop
