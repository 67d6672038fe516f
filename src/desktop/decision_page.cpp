#include "desktop/decision_page.h"

#include <wx/clipbrd.h>
#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/utils.h>
#include <wx/wupdlock.h>

#include "desktop/decision_view.h"
#include "desktop/drawing_panel.h"
#include "desktop/key_button.h"
#include "desktop/ladder_panel.h"
#include "desktop/prose.h"
#include "desktop/text.h"
#include "desktop/urgent_panel.h"
#include "desktop/words_dialog.h"
#include "documents/decision_drawing.h"
#include "documents/decision_words.h"

namespace stile::desktop {

using drawing::Colour;

namespace {

constexpr std::size_t kFindingsShown = 8;

void heading(Column& column, const Theme& theme, const std::string& words, int above = 22) {
  column.put(new Prose(&column, theme, Step::Heading, words), above);
  column.put(new Rule(&column, theme, Colour::Post, 2), 4);
}

}  // namespace

DecisionPage::DecisionPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  left_ = new Column(this, theme(), Colour::Sheet, 22, 900);
  right_ = new Column(this, theme(), Colour::Well, 20, 560);
  across->Add(left_, 62, wxEXPAND);
  across->Add(right_, 38, wxEXPAND);
  SetSizer(across);
}

void DecisionPage::enter() {
  const wxWindowUpdateLocker calm(this);
  left_->clear();
  right_->clear();
  if (desk().screening() == nullptr) {
    left_->put(new Prose(left_, theme(), Step::Title, "Nothing is decided yet"));
    left_->put(new Prose(left_, theme(), Step::Body, whyNothing()), 8);
    auto* go = new KeyButton(left_, theme(), "primary", {"", "To the interview", "", false});
    go->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { place().go("interview"); }); });
    left_->space(16);
    left_->stack().Add(go);
    go->SetFocus();
  } else {
    buildLeft();
    buildRight();
  }
  left_->refit();
  right_->refit();
}

void DecisionPage::buildLeft() {
  const auto& screening = *desk().screening();
  if (screening.reach.limits.action >= limits::Action::SameDay) left_->put(new UrgentPanel(left_, theme(), screening, desk().settings().emergencyNumber));
  left_->put(new Prose(left_, theme(), Step::Title, documents::decisionSentence(screening)), 4);
  left_->put(new Prose(left_, theme(), Step::Body, documents::intervalSentence(screening)), 6);
  auto* ladder = new LadderPanel(left_, theme(), Colour::Sheet, desk().interview() == nullptr ? std::function<void(int)>() : [this](int slot) { goToQuestion(slot); });
  ladder->show(screening, desk().settings().emergencyNumber);
  left_->put(ladder, 16);
  left_->put(new Rule(left_, theme()), 12);
  left_->put(new Prose(left_, theme(), Step::Reading, documents::actionSentence(screening)), 10);
  left_->stack().Add(new DrawingPanel(left_, theme(), Colour::Sheet, documents::actionStripOf(screening, 440)), 0, wxTOP, FromDIP(4));
  const auto rows = findingRowsOf(screening);
  std::size_t certain = 0, open = 0;
  heading(*left_, theme(), "Findings");
  for (const FindingRow& row : rows) {
    if (!row.isCertain || ++certain > kFindingsShown) continue;
    left_->put(new TermRow(left_, theme(), row.title, row.sentence, row.because));
  }
  if (certain == 0) left_->put(new Prose(left_, theme(), Step::Reading, "No finding is certain."), 8);
  if (certain > kFindingsShown) {
    heading(*left_, theme(), "And " + std::to_string(certain - kFindingsShown) + " more findings");
    std::size_t index = 0;
    for (const FindingRow& row : rows)
      if (row.isCertain && ++index > kFindingsShown) left_->put(new TermRow(left_, theme(), row.title, row.sentence, row.because));
  }
  for (const FindingRow& row : rows) open += row.isCertain ? 0 : 1;
  if (open == 0) return;
  heading(*left_, theme(), "Not settled: " + documents::counted(open, "rule"));
  std::size_t shown = 0;
  for (const FindingRow& row : rows)
    if (!row.isCertain && ++shown <= kFindingsShown) left_->put(new TermRow(left_, theme(), row.title, row.sentence, row.because));
  if (open > kFindingsShown)
    left_->put(new Prose(left_, theme(), Step::Small, "and " + std::to_string(open - kFindingsShown) + " more; all stand on the screening summary", Colour::Ink2), 6);
}

void DecisionPage::buildRight() {
  const auto& screening = *desk().screening();
  buildSigning();
  const auto add = [this](const std::string& title, const std::vector<LimitRow>& rows) {
    if (rows.empty()) return;
    heading(*right_, theme(), title);
    for (const LimitRow& row : rows) right_->put(new TermRow(right_, theme(), row.term, row.text, row.holders));
  };
  add("Referrals", referralRowsOf(screening, *desk().content()));
  add("Limits", limitRowsOf(screening, *desk().content()));
  add("Checks and gates", checkRowsOf(screening, *desk().content()));
  std::vector<LimitRow> policies;
  for (const auto& policy : screening.policies) policies.push_back({policy.title, policy.display, policy.decides});
  add("Policies that decided", policies);
}

void DecisionPage::buildSigning() {
  const auto& who = desk().clinic()->file().who();
  heading(*right_, theme(), who.name + ", " + who.profession, 0);
  const bool isFiled = !desk().filedEntry().empty();
  right_->put(new Prose(right_, theme(), Step::Reading, desk().isSignedOff() ? "Signed off." : isFiled ? "Filed, not signed." : "Not signed. Signing files the screening as it stands."), 8);
  auto* sign = new KeyButton(right_, theme(), "primary", {"Alt S", "Sign…", "", false});
  sign->Enable(!desk().isSignedOff());
  sign->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { this->sign(); }); });
  auto* note = new KeyButton(right_, theme(), "", {"", "Copy a note", "", false});
  note->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { copyNote(); });
  auto* row = new wxBoxSizer(wxHORIZONTAL);
  row->Add(sign, 0, wxRIGHT, FromDIP(10));
  row->Add(note);
  right_->space(10);
  right_->stack().Add(row);
  sign->IsEnabled() ? sign->SetFocus() : note->SetFocus();
}

void DecisionPage::sign() {
  if (desk().isSignedOff()) return;
  if (!desk().clinic()->file().who().maySign()) return place().tell({base::FailureKind::Usage, "An assistant does not sign. A clinician signs in and signs."});
  std::string words = "With your passphrase you sign the decision as it stands here.";
  while (true) {
    const auto passphrase = askWords(*this, theme(), {"Sign the screening", words, "Passphrase", "Sign", true});
    if (!passphrase) break;
    const wxBusyCursor waiting;
    const auto checked = desk().checkPassphrase(*passphrase);
    if (checked) return signNow();
    words = checked.failure().message;
  }
  // Called off after a wrong one: the file stays locked until somebody signs in.
  if (desk().clinic()->isLocked()) place().lock();
}

void DecisionPage::signNow() {
  base::Issues issues;
  if (desk().filedEntry().empty())
    if (const auto done = desk().completeInterview(issues); !done) return place().tell(done.failure());
  const auto signedOff = desk().signOff();
  if (!signedOff) return place().tell(signedOff.failure());
  std::string words = "Signed";
  for (const std::string& warning : signedOff.value()) words += ". " + warning;
  place().say(words);
  place().refreshHead();
  enter();
}

void DecisionPage::copyNote() {
  if (!wxTheClipboard->Open()) return;
  wxTheClipboard->SetData(new wxTextDataObject(shown(noteOf(*desk().screening(), *desk().content()))));
  wxTheClipboard->Close();
  place().say("A note is copied: paste it into the other record");
}

void DecisionPage::goToQuestion(int slot) {
  auto* interview = desk().interview();
  if (interview == nullptr) return;
  const int question = interview->session().ground().questions().placeOf(slot);
  if (question < 0) return place().say("Nobody asks this: it is worked out from other answers.");
  interview->session().change({question, interview->session().question({question, -1}).group >= 0 ? 0 : -1});
  place().go("interview");
}

bool DecisionPage::onKey(wxKeyEvent& event) {
  if (event.AltDown() && event.GetKeyCode() == 'S' && desk().screening() != nullptr) return CallAfter([this] { sign(); }), true;
  return false;
}

}  // namespace stile::desktop
