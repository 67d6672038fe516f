#include "desktop/client_page.h"

#include <wx/event.h>
#include <wx/msgdlg.h>
#include <wx/sizer.h>

#include <algorithm>

#include "application/client_records.h"
#include "desktop/client_fields.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"

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

std::string ClientPage::keys() const {
  if (isNew_) return "Enter next field · Ctrl Enter takes the client in";
  return isChanging_ ? "Enter next field · Ctrl Enter saves · Esc leaves it as it was" : "Alt C change · Alt 3 interview · Alt 1 today";
}

std::string ClientPage::whyStay() const {
  return isChanging_ && fields_->isChanged() ? "Save the change first, or leave it as it was." : "";
}

void ClientPage::enter() {
  isNew_ = desk().client() == nullptr;
  isChanging_ = false;
  show();
}

void ClientPage::show() {
  column_->clear();
  fields_ = nullptr;
  isNew_ ? buildNew() : isChanging_ ? buildChange() : buildKnown();
  column_->refit();
  if (fields_ != nullptr) fields_->enter();
}

wxWindow* ClientPage::button(const std::string& style, const std::string& cap, const std::string& words, std::function<void()> act) {
  auto* made = new KeyButton(column_, theme(), style, {cap, words, "", false});
  made->Bind(wxEVT_BUTTON, [this, act = std::move(act)](wxCommandEvent&) { CallAfter(act); });
  column_->space(10);
  column_->stack().Add(made);
  return made;
}

void ClientPage::buildNew() {
  column_->put(new Prose(column_, theme(), Step::Title, "New client"));
  fields_ = new ClientFields(column_, theme(), nullptr);
  column_->put(fields_);
  column_->space(12);
  button("primary", "Ctrl Enter", "Take in and begin", [this] { takeIn(""); });
  button("", "Alt T", "Take in and begin by telephone", [this] { takeIn(kTelephoneForm); });
}

void ClientPage::buildChange() {
  const auto known = application::readClient(*desk().clinic(), desk().clientId());
  if (!known) {
    isChanging_ = false;
    buildKnown();
    return place().tell(known.failure());
  }
  column_->put(new Prose(column_, theme(), Step::Title, "Change name, contacts or physician"));
  column_->put(new Prose(column_, theme(), Step::Small, "What was written before stays in the history.", drawing::Colour::Ink2), 4);
  fields_ = new ClientFields(column_, theme(), &known.value());
  column_->put(fields_);
  column_->space(12);
  button("primary", "Ctrl Enter", "Save the change", [this] { change(); });
  button("", "Esc", "Leave it as it was", [this] { leaveAsItWas(); });
}

void ClientPage::buildKnown() {
  const auto& card = desk().client()->card;
  column_->put(new Prose(column_, theme(), Step::Title, card.name()));
  column_->put(new Rule(column_, theme(), drawing::Colour::Post, 3), 8);
  if (const auto born = base::Date::parse(card.born)) column_->put(new TermRow(column_, theme(), "Born", born->toLongText()));
  if (!card.record.empty()) column_->put(new TermRow(column_, theme(), "Record", card.record));
  if (!card.telephone.empty()) column_->put(new TermRow(column_, theme(), "Telephone", card.telephone));
  if (const auto known = application::readClient(*desk().clinic(), desk().clientId())) {
    const auto& physician = known.value().physician;
    column_->put(new TermRow(column_, theme(), "Physician", physician.name.empty() ? "not said; a letter needs one" : physician.name, physician.place));
  }
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
  button("", "Alt C", "Change name, contacts or physician", [this] { beginChange(); });
}

void ClientPage::beginChange() {
  isChanging_ = true;
  show();
  place().refreshHead();
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
  const auto client = fields_->client(desk().today());
  if (!client) return column_->refit();
  base::Issues issues;
  const auto added = application::addClient(*desk().clinic(), records::toJson(*client), "the client", issues);
  if (!added) return place().tell(added.failure());
  for (const std::string& other : added.value().couldBeSame)
    wxMessageDialog(this, shown(other + "\n\nBoth records are kept. If they are one person, they can be merged."), "Somebody could be the same person", wxOK | wxICON_NONE).ShowModal();
  desk().openClient(added.value().id);
  place().say("Saved");
  begin(form);
  if (place().desk().client() != nullptr) place().refreshHead();
}

void ClientPage::leaveAsItWas() {
  enter();
  place().refreshHead();
}

void ClientPage::change() {
  const auto client = fields_->client(desk().today());
  if (!client) return column_->refit();
  base::Issues issues;
  const auto changed = application::changeClient(*desk().clinic(), desk().clientId(), records::toJson(*client), "the client", issues);
  if (!changed) return place().tell(changed.failure());
  desk().recordChanged();
  enter();
  place().refreshHead();
  place().say("Saved");
}

bool ClientPage::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  if (event.AltDown() && key == 'T' && !isChanging_) {
    if (isNew_) return CallAfter([this] { takeIn(kTelephoneForm); }), true;
    if (desk().content() != nullptr && !hasDraft()) return CallAfter([this] { begin(kTelephoneForm); }), true;
  }
  if (!isNew_ && !isChanging_ && event.AltDown() && key == 'C') return CallAfter([this] { beginChange(); }), true;
  if (isChanging_ && key == WXK_ESCAPE) return CallAfter([this] { leaveAsItWas(); }), true;
  if (fields_ == nullptr || (key != WXK_RETURN && key != WXK_NUMPAD_ENTER)) return false;
  const auto take = [this] { isNew_ ? takeIn("") : change(); };
  if (event.ControlDown()) return CallAfter(take), true;
  if (FindFocus() == nullptr || !fields_->IsDescendant(FindFocus())) return false;
  if (!fields_->enterNext()) CallAfter(take);
  return true;
}

}  // namespace stile::desktop
