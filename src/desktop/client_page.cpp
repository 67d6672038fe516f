#include "desktop/client_page.h"

#include <wx/event.h>
#include <wx/msgdlg.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>
#include <wx/wupdlock.h>

#include <algorithm>

#include "application/client_records.h"
#include "desktop/form_field.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"
#include "desktop/typed_date.h"

namespace stile::desktop {

namespace {

constexpr const char *kTelephoneForm = "telephone", *kDraftTask = "draft";

}  // namespace

ClientPage::ClientPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  column_ = new Column(this, theme(), drawing::Colour::Sheet, 44, 560);
  across->Add(column_, 1, wxEXPAND);
  SetSizer(across);
}

void ClientPage::enter() {
  const wxWindowUpdateLocker calm(this);
  isNew_ = desk().client() == nullptr;
  column_->clear();
  isNew_ ? buildNew() : buildKnown();
  column_->refit();
  if (isNew_) given_->enter();
}

wxWindow* ClientPage::button(const std::string& style, const std::string& cap, const std::string& words, std::function<void()> act) {
  auto* made = new KeyButton(column_, theme(), style, {cap, words, "", false});
  made->Bind(wxEVT_BUTTON, [this, act = std::move(act)](wxCommandEvent&) { CallAfter(act); });
  column_->space(10);
  column_->stack().Add(made);
  return made;
}

void ClientPage::buildNew() {
  const auto field = [this](const std::string& words, const std::string& help = {}) {
    auto* made = new FormField(column_, theme(), words, FormField::Kind::Text, help);
    column_->put(made, 16);
    return made;
  };
  column_->put(new Prose(column_, theme(), Step::Title, "New client"));
  given_ = field("Given name");
  family_ = field("Family name");
  born_ = field("Date of birth", "Such as 14 March 1963 or 1963-03-14.");
  record_ = field("Record number", "Your own number. May be left out.");
  telephone_ = field("Telephone", "May be left out for now.");
  physician_ = field("Physician", "Who would get a letter. May be left out for now.");
  practice_ = field("Physician's practice", "May be left out for now.");
  column_->space(12);
  button("primary", "Ctrl Enter", "Take in and begin", [this] { takeIn(""); });
  button("", "Alt T", "Take in and begin by telephone", [this] { takeIn(kTelephoneForm); });
}

void ClientPage::buildKnown() {
  const auto& card = desk().client()->card;
  column_->put(new Prose(column_, theme(), Step::Title, card.name()));
  column_->put(new Rule(column_, theme(), drawing::Colour::Post, 3), 8);
  if (const auto born = base::Date::parse(card.born)) column_->put(new TermRow(column_, theme(), "Born", born->toLongText()));
  if (!card.record.empty()) column_->put(new TermRow(column_, theme(), "Record", card.record));
  if (!card.telephone.empty()) column_->put(new TermRow(column_, theme(), "Telephone", card.telephone));
  for (const auto& task : card.tasks) {
    const bool isDue = task.due <= desk().today();
    column_->put(new TermRow(column_, theme(), isDue ? "Now" : "From " + task.due.toLongText(),
                             records::nextOf(task, desk().clinic()->policy()),
                             isDue ? "waiting for " + task.waitingFor + " since " + task.since.toLongText() : ""));
  }
  column_->space(12);
  // A page without a focus would get no keys.
  button("primary", "", "Go to the interview", [this] { place().go("interview"); })->SetFocus();
  if (desk().content() != nullptr && !hasDraft()) button("", "Alt T", "Interview by telephone", [this] { begin(kTelephoneForm); });
  button("", "Alt 7", "Measurements and tests", [this] { place().go("tests"); });
  if (desk().isAsking()) button("", "F9", "Hand the screen to the client", [this] { place().setClientMode(true); });
  button("", "Alt 8", "History and follow-up", [this] { place().go("history"); });
}

bool ClientPage::hasDraft() const {
  const auto& tasks = desk().client()->card.tasks;
  return desk().isAsking() || std::any_of(tasks.begin(), tasks.end(), [](const auto& task) { return task.what == kDraftTask; });
}

void ClientPage::begin(const std::string& form) {
  if (!form.empty())
    if (const auto begun = desk().beginInterview(form); !begun) return place().tell(begun.failure());
  place().go("interview");
}

void ClientPage::takeIn(const std::string& form) {
  FormField* first = nullptr;
  const auto check = [&first](FormField* field, const std::string& trouble) {
    field->complain(trouble);
    if (!trouble.empty() && first == nullptr) first = field;
  };
  const auto born = typedDate(born_->text());
  check(given_, given_->text().empty() ? "This is needed." : "");
  check(family_, family_->text().empty() ? "This is needed." : "");
  check(born_, !born ? "Write the day, the month and the year." : *born > desk().today() ? "This day is still to come." : "");
  if (first != nullptr) {
    column_->refit();
    return first->enter();
  }
  records::Client client;
  client.given = given_->text();
  client.family = family_->text();
  client.born = born;
  client.record = record_->text();
  client.telephone = telephone_->text();
  client.physician.name = physician_->text();
  client.physician.place = practice_->text();
  base::Issues issues;
  const auto added = application::addClient(*desk().clinic(), records::toJson(client), "the client", issues);
  if (!added) return place().tell(added.failure());
  for (const std::string& other : added.value().couldBeSame)
    wxMessageDialog(this, shown(other + "\n\nBoth records are kept. If they are one person, they can be merged."), "Somebody could be the same person", wxOK | wxICON_NONE).ShowModal();
  desk().openClient(added.value().id);
  place().say("Saved");
  begin(form);
  if (place().desk().client() != nullptr) place().refreshHead();
}

bool ClientPage::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  if (event.AltDown() && key == 'T') {
    if (isNew_) return CallAfter([this] { takeIn(kTelephoneForm); }), true;
    if (desk().content() != nullptr && !hasDraft()) return CallAfter([this] { begin(kTelephoneForm); }), true;
  }
  if (!isNew_ || (key != WXK_RETURN && key != WXK_NUMPAD_ENTER)) return false;
  if (event.ControlDown()) return CallAfter([this] { takeIn(""); }), true;
  FormField* const fields[] = {given_, family_, born_, record_, telephone_, physician_, practice_};
  for (std::size_t i = 0; i + 1 < std::size(fields); ++i)
    if (fields[i]->control().HasFocus()) return fields[i + 1]->enter(), true;
  if (practice_->control().HasFocus()) return CallAfter([this] { takeIn(""); }), true;
  return false;
}

}  // namespace stile::desktop
