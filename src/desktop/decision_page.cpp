#include "desktop/decision_page.h"

#include <wx/app.h>
#include <wx/clipbrd.h>
#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/utils.h>
#include <wx/wupdlock.h>

#include <algorithm>

#include "desktop/accessible.h"
#include "desktop/button_row.h"
#include "desktop/decision_view.h"
#include "desktop/drawing_panel.h"
#include "desktop/key_button.h"
#include "desktop/ladder_panel.h"
#include "desktop/override_dialog.h"
#include "desktop/prose.h"
#include "desktop/text.h"
#include "desktop/urgent_panel.h"
#include "desktop/words_dialog.h"
#include "documents/decision_drawing.h"
#include "documents/decision_words.h"
#include "documents/override_words.h"

namespace stile::desktop {

using drawing::Colour;

namespace {

constexpr std::size_t kFindingsShown = 8, kLimitsShown = 8;

/// What was decided against the finding stands with it.
std::string becauseOf(const FindingRow& row, const records::DecisionNotes& notes) {
  std::string because = row.because;
  for (const auto& note : notes.overrides)
    if (note.rule == row.rule) because += (because.empty() ? "" : "\n") + documents::overrideWords(note);
  return because;
}

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
  // What other pages do changes what is shown here: nothing of it stays, and enter() makes it anew.
  Bind(wxEVT_SHOW, [this](wxShowEvent& event) {
    event.Skip();
    if (event.IsShown()) return;
    desk().stopSearch();
    // Later: it may be one of the buttons that asked for the other page.
    CallAfter([this] {
      if (!IsShown()) clear();
    });
  });
}

void DecisionPage::clear() {
  nearest_ = nullptr;
  left_->clear();
  right_->clear();
}

void DecisionPage::enter() {
  const wxWindowUpdateLocker calm(this);
  desk().stopSearch();
  clear();
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
  if (nearest_ != nullptr) searchNearest();
}

void DecisionPage::searchNearest() {
  desk().searchNearest([this, isHere = std::weak_ptr<bool>(isHere_)](NearestWords words) {
    wxTheApp->CallAfter([this, isHere, words = std::move(words)] {
      if (isHere.expired() || nearest_ == nullptr || !IsShown()) return;
      nearest_->say(words.milder + "\n" + words.stricter);
      left_->refit();
    });
  });
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
  if (desk().interview() != nullptr && desk().filedEntry().empty()) {
    nearest_ = new Prose(left_, theme(), Step::Small, "Looking for the nearest other decision …", Colour::Ink2);
    left_->put(nearest_, 8);
  }
  const auto rows = findingRowsOf(screening);
  std::size_t certain = 0, open = 0;
  heading(*left_, theme(), "Findings");
  for (const FindingRow& row : rows) {
    if (!row.isCertain || (++certain > kFindingsShown && !areFindingsUnfolded_)) continue;
    left_->put(new TermRow(left_, theme(), row.title, row.sentence, becauseOf(row, desk().notes())));
  }
  if (certain == 0) left_->put(new Prose(left_, theme(), Step::Reading, "No finding is certain."), 8);
  if (certain > kFindingsShown) addFold(*left_, certain - kFindingsShown, "finding", areFindingsUnfolded_);
  for (const FindingRow& row : rows) open += row.isCertain ? 0 : 1;
  if (open == 0) return;
  heading(*left_, theme(), "Not settled: " + documents::counted(open, "rule"));
  std::size_t shown = 0;
  for (const FindingRow& row : rows)
    if (!row.isCertain && ++shown <= kFindingsShown) left_->put(new TermRow(left_, theme(), row.title, row.sentence, becauseOf(row, desk().notes())));
  if (open > kFindingsShown)
    left_->put(new Prose(left_, theme(), Step::Small, "and " + std::to_string(open - kFindingsShown) + " more; all stand on the screening summary", Colour::Ink2), 6);
}

void DecisionPage::addFold(Column& column, std::size_t count, const std::string& what, bool& isUnfolded) {
  auto* more = new KeyButton(&column, theme(), "flat", {"", isUnfolded ? "Show only the gravest" : "Show " + documents::counted(count, "more " + what), "", false});
  more->Bind(wxEVT_BUTTON, [this, &column, &isUnfolded](wxCommandEvent&) {
    CallAfter([this, &column, &isUnfolded] {
      isUnfolded = !isUnfolded;
      const int before = column.GetViewStart().y;
      enter();
      column.Scroll(0, before);
    });
  });
  column.space(8);
  column.stack().Add(more);
}

void DecisionPage::buildRight() {
  const auto& screening = *desk().screening();
  buildSigning();
  const auto add = [this](const std::string& title, const std::vector<LimitRow>& rows) {
    if (rows.empty()) return;
    heading(*right_, theme(), title);
    const std::size_t shown = areLimitsUnfolded_ ? rows.size() : std::min(rows.size(), kLimitsShown);
    for (std::size_t i = 0; i < shown; ++i) right_->put(new TermRow(right_, theme(), rows[i].term, rows[i].text, rows[i].holders));
    if (rows.size() > kLimitsShown) addFold(*right_, rows.size() - kLimitsShown, "row", areLimitsUnfolded_);
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
  auto* row = new ButtonRow(right_, theme(), Colour::Well, 8);
  auto* sign = new KeyButton(row, theme(), "primary", {"Alt S", "Sign…", "", false});
  sign->Enable(!desk().isSignedOff());
  sign->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { this->sign(); }); });
  const auto button = [this, row](const std::string& cap, const std::string& words, std::function<void()> act) {
    auto* made = new KeyButton(row, theme(), "", {cap, words, "", false});
    made->Bind(wxEVT_BUTTON, [this, act = std::move(act)](wxCommandEvent&) { CallAfter(act); });
    return made;
  };
  auto* note = button("Alt N", "Copy a note", [this] { copyNote(); });
  auto* otherwise = button("Alt O", "Override a finding…", [this] { decideOtherwise(); });
  for (KeyButton* one : {sign, note, otherwise}) row->put(one);
  right_->put(row, 10);
  buildNotes();
  sign->IsEnabled() ? sign->SetFocus() : note->SetFocus();
}

void DecisionPage::buildNotes() {
  const auto& notes = desk().notes();
  if (notes.overrides.empty()) return;
  heading(*right_, theme(), "Set by a clinician", 8);
  const auto& who = desk().clinic()->file().who();
  for (const auto& one : notes.overrides) {
    const auto* rule = desk().content()->rules.find(one.rule);
    right_->put(new TermRow(right_, theme(), rule == nullptr ? one.rule : documents::capitalized(rule->title), documents::overrideWords(one)));
    const bool waitsForMe = one.needsSecond && one.secondBy.empty() && who.role == records::Role::Lead && one.by != who.name + ", " + who.profession;
    if (!waitsForMe) continue;
    auto* second = new KeyButton(right_, theme(), "", {"", "Sign as the second…", "", false});
    nameFor(*second, "Sign as the second: " + one.rule);
    second->Bind(wxEVT_BUTTON, [this, entry = one.entry](wxCommandEvent&) { CallAfter([this, entry] { signSecond(entry); }); });
    right_->space(6);
    right_->stack().Add(second);
  }
}

bool DecisionPage::isSignedFor(const std::string& title, const std::string& words, const std::string& button) {
  if (!desk().clinic()->file().who().maySign()) {
    place().tell({base::FailureKind::Usage, "An assistant does not sign. A clinician signs in and signs."});
    return false;
  }
  return isConfirmed(title, words, button);
}

void DecisionPage::sign() {
  if (desk().isSignedOff()) return;
  if (isSignedFor("Sign the screening", "With your passphrase you sign the decision as it stands here.", "Sign")) signNow();
}

void DecisionPage::decideOtherwise() {
  if (desk().screening() == nullptr) return;
  const auto findings = application::overridable(*desk().screening());
  if (findings.empty()) return place().say("There is no finding here that a clinician may set aside.");
  const auto wanted = askOverride(*this, theme(), findings, !desk().filedEntry().empty());
  if (!wanted) return;
  if (wanted->isEvidence) return place().go("interview");
  if (!isSignedFor("Sign the override", "With your passphrase you sign: " + documents::asSentence(wanted->instead), "Sign")) return;
  const auto done = desk().overrideFinding(wanted->rule, wanted->instead, wanted->reason);
  if (!done) place().tell(done.failure());
  else place().say("The override is signed and on record");
  place().refreshHead();
  enter();
}

void DecisionPage::signSecond(const std::string& entry) {
  if (!isSignedFor("Second signature", "With your passphrase you agree to the override of your colleague.", "Sign")) return;
  const auto done = desk().signSecond(entry);
  if (!done) return place().tell(done.failure());
  place().say("Signed as the second");
  enter();
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
  wxTheClipboard->SetData(new wxTextDataObject(shown(noteOf(*desk().screening(), *desk().content(), desk().notes()))));
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
  if (desk().screening() == nullptr) return false;
  if (event.GetKeyCode() == WXK_F6) {
    isRightInHand_ = !isRightInHand_;
    place().say(isRightInHand_ ? "Page up and page down: signing, referrals and limits" : "Page up and page down: decision and findings");
    return true;
  }
  if (!event.HasAnyModifiers()) return (isRightInHand_ ? right_ : left_)->scrollBy(event.GetKeyCode());
  if (!event.AltDown()) return false;
  switch (event.GetKeyCode()) {
    case 'S': return CallAfter([this] { sign(); }), true;
    case 'O': return CallAfter([this] { decideOtherwise(); }), true;
    case 'N': return copyNote(), true;
    default: return false;
  }
}

}  // namespace stile::desktop
