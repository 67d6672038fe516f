#include "desktop/history_page.h"

#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/wupdlock.h>

#include "application/client_events.h"
#include "application/client_screening.h"
#include "application/screen_again.h"
#include "desktop/entry_form.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/reply_form.h"
#include "desktop/text.h"
#include "desktop/words_dialog.h"
#include "documents/decision_words.h"

namespace stile::desktop {

using drawing::Colour;

namespace {

constexpr const char *kTyped = "what was typed", *kReplyKind = "clearanceReply";

std::string issuesInWords(const base::Issues& issues, const base::Failure& failure) {
  std::string words = documents::asSentence(documents::capitalized(failure.message));
  for (const auto& issue : issues.all())
    if (issue.severity == base::Severity::Error) words += " " + documents::asSentence(documents::capitalized(issue.message));
  return words;
}

}  // namespace

HistoryPage::HistoryPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  list_ = new Column(this, theme(), Colour::Sheet, 22, 760);
  side_ = new Column(this, theme(), Colour::Well, 22, 560);
  across->Add(list_, 56, wxEXPAND);
  across->Add(side_, 44, wxEXPAND);
  SetSizer(across);
}

void HistoryPage::enter() {
  selected_ = 0;
  if (!read()) return;
  buildTimeline();
  buildSide();
  if (!rows_.empty()) rows_.front()->SetFocus();
}

bool HistoryPage::read() {
  const auto work = application::RecordWork::open(*desk().clinic(), desk().clientId());
  if (!work) return place().tell(work.failure()), false;
  record_ = work.value().folded();
  entries_ = work.value().entries();
  lines_ = application::timelineOf(*desk().clinic(), entries_);
  if (selected_ >= lines_.size()) selected_ = 0;
  return true;
}

wxWindow* HistoryPage::button(const std::string& style, const std::string& cap, const std::string& words, std::function<void()> act) {
  auto* made = new KeyButton(side_, theme(), style, {cap, words, "", false});
  made->Bind(wxEVT_BUTTON, [this, act = std::move(act)](wxCommandEvent&) { CallAfter(act); });
  if (style == "said")
    side_->put(made, 2);
  else
    side_->space(10), side_->stack().Add(made);
  return made;
}

void HistoryPage::buildTimeline() {
  const wxWindowUpdateLocker calm(list_);
  list_->clear();
  rows_.clear();
  list_->put(new Prose(list_, theme(), Step::Title, "History"));
  if (const std::string waits = records::planWaitsBecause(record_, desk().today()); !waits.empty())
    list_->put(new TermRow(list_, theme(), "The plan waits", documents::asSentence(documents::capitalized(waits))), 8);
  if (const std::string stand = application::planStandInWords(record_, desk().clinic()->policy(), desk().today()); !stand.empty())
    list_->put(new TermRow(list_, theme(), "The plan", stand), 4);
  for (const auto& task : desk().client()->card.tasks)
    list_->put(new TermRow(list_, theme(), task.due <= desk().today() ? "Now" : "From " + task.due.toLongText(), records::nextOf(task, desk().clinic()->policy()),
                           "waiting for " + task.waitingFor + " since " + task.since.toLongText()), 4);
  if (lines_.empty()) list_->put(new Prose(list_, theme(), Step::Body, "Nothing has happened yet. The interview, and what is recorded at the right, will stand here."), 12);
  std::string day;
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    const auto& line = lines_[i];
    if (line.date.toLongText() != day) {
      day = line.date.toLongText();
      auto* title = new Prose(list_, theme(), Step::Reading, day);
      title->SetFont(theme().font(15, true));
      list_->put(title, 16);
      list_->put(new Rule(list_, theme(), Colour::Post, 3), 4);
    }
    auto* row = new KeyButton(list_, theme(), "row", {"", line.title, line.words, true});
    row->choose(i == selected_);
    row->Bind(wxEVT_BUTTON, [this, i](wxCommandEvent&) { CallAfter([this, i] { select(i); }); });
    row->Bind(wxEVT_SET_FOCUS, [this, i](wxFocusEvent& event) {
      event.Skip();
      CallAfter([this, i] { if (i != selected_) select(i); });
    });
    list_->put(row);
    rows_.push_back(row);
  }
  list_->refit();
}

void HistoryPage::select(std::size_t line) {
  if (line >= rows_.size()) return;
  if (selected_ < rows_.size()) rows_[selected_]->choose(false);
  selected_ = line;
  rows_[line]->choose(true);
  buildSide();
}

void HistoryPage::buildSide() {
  const wxWindowUpdateLocker calm(side_);
  side_->clear();
  form_ = nullptr;
  reply_ = nullptr;
  if (selected_ < lines_.size()) buildDetails(lines_[selected_]);
  const auto possible = records::possibleEntries(record_, desk().today());
  if (!possible.empty()) {
    side_->put(new Prose(side_, theme(), Step::Heading, "Record"), lines_.empty() ? 0 : 22);
    side_->put(new Rule(side_, theme(), Colour::Post, 2), 4);
  }
  for (const auto& entry : possible) button("said", "", entry.words, [this, entry] { entry.kind == kReplyKind ? buildReply(entry) : buildForm(entry); });
  if (record_.lastScreening() != nullptr) button("said", "", "Ask a physician about what waits for a clearance", [this] { ask(); });
  side_->refit();
}

void HistoryPage::buildDetails(const application::TimelineLine& line) {
  side_->put(new Prose(side_, theme(), Step::Heading, line.title));
  side_->put(new Prose(side_, theme(), Step::Small, line.date.toLongText() + ", by " + line.by, Colour::Ink2), 2);
  for (const auto& [term, text] : line.details) side_->put(new TermRow(side_, theme(), term, text));
  if (line.kind == "screening") buildChanges(line.entry);
}

void HistoryPage::buildChanges(const std::string& screening) {
  const auto compared = application::compareScreenings(entries_, screening);
  if (!compared) return;
  const auto& one = compared.value();
  side_->put(new Prose(side_, theme(), Step::Strong, "What changed since " + one.from.toLongText()), 16);
  const auto add = [this](const std::vector<application::Changed>& lines) {
    for (const auto& line : lines) {
      const auto* fact = desk().content() == nullptr ? nullptr : desk().content()->dictionary.find(line.what);
      side_->put(new TermRow(side_, theme(), documents::capitalized(fact == nullptr ? line.what : fact->label), line.now.empty() ? "no longer" : line.now,
                             line.before.empty() ? "new" : "before: " + line.before));
    }
  };
  add(one.decision);
  add(one.findings);
  add(one.facts);
  if (one.decision.empty() && one.findings.empty() && one.facts.empty()) side_->put(new Prose(side_, theme(), Step::Body, "Nothing changed."), 8);
}

void HistoryPage::buildFoot() {
  auto* row = new wxBoxSizer(wxHORIZONTAL);
  const auto add = [&](const std::string& style, const std::string& cap, const std::string& words, std::function<void()> act) {
    auto* made = new KeyButton(side_, theme(), style, {cap, words, "", false});
    made->Bind(wxEVT_BUTTON, [this, act = std::move(act)](wxCommandEvent&) { CallAfter(act); });
    row->Add(made, 0, wxRIGHT, FromDIP(10));
  };
  add("primary", "Ctrl Enter", "Record it", [this] { record(); });
  add("", "Esc", "Not now", [this] { buildSide(); });
  side_->space(16);
  side_->stack().Add(row);
  side_->refit();
}

void HistoryPage::buildForm(const records::PossibleEntry& entry) {
  const wxWindowUpdateLocker calm(side_);
  side_->clear();
  reply_ = nullptr;
  recording_ = entry;
  side_->put(new Prose(side_, theme(), Step::Heading, entry.words));
  form_ = new EntryForm(side_, theme(), entry, desk().today());
  side_->put(form_);
  buildFoot();
  form_->enter();
}

void HistoryPage::buildReply(const records::PossibleEntry& entry) {
  if (desk().content() == nullptr) return place().say("The rules are not read yet.");
  auto asked = application::findingsAsked(*desk().clinic(), desk().clientId(), entry.known.front().second, *desk().content());
  if (!asked) return place().tell(asked.failure());
  const auto* form = desk().content()->forms.byName("clearance-reply");
  const wxWindowUpdateLocker calm(side_);
  side_->clear();
  form_ = nullptr;
  recording_ = entry;
  asked_ = std::move(asked).value();
  std::string to;
  for (const auto& one : record_.clearances)
    if (one.id == entry.known.front().second) to = one.to;
  side_->put(new Prose(side_, theme(), Step::Heading, entry.words));
  reply_ = new ReplyForm(side_, theme(), *form, asked_, to, desk().today());
  side_->put(reply_);
  buildFoot();
  reply_->enter();
}

void HistoryPage::record() {
  auto& clinic = *desk().clinic();
  const std::string id = desk().clientId();
  base::Issues issues;
  if (reply_ != nullptr) {
    const auto given = reply_->reply();
    if (!given) return side_->refit();
    const auto filed = application::fileReply(clinic, id, recording_.known.front().second, *desk().content(), {kTyped, application::replyResponse(*desk().content(), asked_, *given)}, desk().today(), issues);
    return filed ? done("The reply is filed: screen again, and it counts.") : complain(issuesInWords(issues, filed.failure()));
  }
  if (form_ == nullptr) return;
  const auto body = form_->body();
  if (!body) return side_->refit();
  if (recording_.kind == "event") {
    const auto filed = application::fileEvent(clinic, id, *body, kTyped, issues);
    if (!filed) return complain(issuesInWords(issues, filed.failure()));
    done("Saved. The plan waits; screen again.");
    return buildLetter(filed.value().letterText, filed.value().mayBeSent);
  }
  const auto filed = application::fileEntry(clinic, id, recording_.kind, *body, kTyped, {}, issues);
  filed ? done("Saved") : complain(issuesInWords(issues, filed.failure()));
}

void HistoryPage::ask() {
  if (desk().content() == nullptr) return place().say("The rules are not read yet.");
  const auto to = askWords(*this, theme(), {"Ask a physician", "A letter is asked for about each finding of the last screening that waits for a clearance.", "Name of the physician", "Ask", false, record_.client.physician.name});
  if (!to || to->empty()) return;
  const auto asked = application::askPhysician(*desk().clinic(), desk().clientId(), *desk().content(), *to, desk().today());
  if (!asked) return place().tell({asked.failure().kind, documents::asSentence(documents::capitalized(asked.failure().message))});
  done("Saved. The letter stands on the page Papers.");
}

void HistoryPage::done(const std::string& words) {
  desk().recordChanged();
  place().say(words);
  place().refreshHead();
  enter();
}

void HistoryPage::buildLetter(const std::string& letter, bool mayBeSent) {
  const wxWindowUpdateLocker calm(side_);
  side_->clear();
  side_->put(new Prose(side_, theme(), Step::Heading, "A letter is drafted"));
  if (!mayBeSent) side_->put(new Prose(side_, theme(), Step::Body, "The client has not agreed to share with the physician: ask before it is sent."), 8);
  side_->put(new Prose(side_, theme(), Step::Reading, letter), 12);
  button("primary", "", "Screen again", [this] { place().go("interview"); })->SetFocus();
  button("", "Esc", "Back to the history", [this] { buildSide(); });
  side_->refit();
}

void HistoryPage::complain(const std::string& words) {
  side_->put(new Prose(side_, theme(), Step::Reading, words, Colour::Shut), 10);
  side_->refit();
  place().say("Not recorded");
}

bool HistoryPage::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  const bool isForm = form_ != nullptr || reply_ != nullptr;
  if (key == WXK_ESCAPE) {
    CallAfter([this] {
      buildSide();
      if (selected_ < rows_.size()) rows_[selected_]->SetFocus();
    });
    return true;
  }
  if (isForm && event.ControlDown() && (key == WXK_RETURN || key == WXK_NUMPAD_ENTER)) return CallAfter([this] { record(); }), true;
  const auto* focused = FindFocus();
  const bool isList = selected_ < rows_.size() && focused == rows_[selected_];
  if (!isList || (key != WXK_UP && key != WXK_DOWN)) return false;
  if (key == WXK_DOWN && selected_ + 1 < rows_.size()) rows_[selected_ + 1]->SetFocus();
  if (key == WXK_UP && selected_ > 0) rows_[selected_ - 1]->SetFocus();
  return true;
}

}  // namespace stile::desktop
