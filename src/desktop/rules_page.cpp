#include "desktop/rules_page.h"

#include <wx/choice.h>
#include <wx/dirdlg.h>
#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>
#include <wx/utils.h>
#include <wx/wupdlock.h>

#include "application/compare_content.h"
#include "application/screen_client.h"
#include "desktop/accessible.h"
#include "desktop/choice_field.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/rules_view.h"
#include "desktop/text.h"
#include "documents/decision_words.h"
#include "documents/rule_book.h"

namespace stile::desktop {

using drawing::Colour;

namespace {

/// Rows beyond these are found by a narrower search; a native button each would be slow.
constexpr std::size_t kRowsShown = 60;
constexpr std::size_t kIssuesShown = 40;

}  // namespace

RulesPage::RulesPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  auto* left = new wxBoxSizer(wxVERTICAL);
  top_ = new wxPanel(this);
  top_->SetBackgroundColour(theme().colour(Colour::Sheet));
  left->Add(top_, 0, wxEXPAND | wxALL, FromDIP(22));
  list_ = new Column(this, theme(), Colour::Sheet, 0);
  left->Add(list_, 1, wxEXPAND | wxLEFT | wxRIGHT, FromDIP(22));
  across->Add(left, 44, wxEXPAND);
  side_ = new Column(this, theme(), Colour::Well, 22, 700);
  across->Add(side_, 56, wxEXPAND);
  SetSizer(across);
}

void RulesPage::enter() {
  record_.reset();
  if (desk().client() != nullptr)
    if (auto work = application::RecordWork::open(*desk().clinic(), desk().clientId())) record_ = work.value().folded();
  buildTop();
  selected_ = 0;
  fill();
  if (find_ != nullptr) find_->SetFocus();
}

void RulesPage::buildTop() {
  const wxWindowUpdateLocker calm(top_);
  top_->DestroyChildren();
  find_ = nullptr;
  topic_ = nullptr;
  auto* down = new wxBoxSizer(wxVERTICAL);
  down->Add(new Prose(top_, theme(), Step::Title, "Rules"));
  if (desk().content() != nullptr) {
    down->Add(new Prose(top_, theme(), Step::Small, desk().content()->version + ", " + documents::counted(desk().content()->rules.rules.size(), "rule"), Colour::Ink2), 0, wxTOP, FromDIP(2));
    find_ = new wxTextCtrl(top_, wxID_ANY, "");
    find_->SetFont(theme().font(Step::Body));
    find_->SetHint("Find: words of a rule");
    nameFor(*find_, "Find rules", "Words of the title, the condition or the sentences");
    find_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { selected_ = 0, fill(); });
    down->Add(find_, 0, wxEXPAND | wxTOP, FromDIP(10));
    topic_ = new ChoiceField(top_, theme(), "Topic", ruleTopicsOf(*desk().content()), "all topics");
    topic_->control().Bind(wxEVT_CHOICE, [this](wxCommandEvent&) { selected_ = 0, fill(); });
    down->Add(topic_, 0, wxEXPAND | wxTOP, FromDIP(10));
  }
  auto* check = new KeyButton(top_, theme(), "", {"Alt C", "Check an edited copy…", "", false});
  check->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { checkCopy(); }); });
  down->Add(check, 0, wxTOP, FromDIP(10));
  top_->SetSizer(down);
  Layout();
}

void RulesPage::fill() {
  const wxWindowUpdateLocker calm(this);
  list_->clear();
  rows_.clear();
  found_.clear();
  side_->clear();
  if (desk().content() == nullptr) {
    list_->put(new Prose(list_, theme(), Step::Heading, desk().isContentRead() ? "The rules have a mistake" : "Opening"), 8);
    for (const auto& issue : desk().contentIssues().all()) list_->put(new Prose(list_, theme(), Step::Reading, base::toText(issue)), 8);
    side_->refit();
    return list_->refit();
  }
  found_ = rulesFound(*desk().content(), topic_->code(), plain(find_->GetValue()));
  list_->put(new Prose(list_, theme(), Step::Small, found_.empty() ? "No rule has all of these words." : documents::counted(found_.size(), "rule") + " found", Colour::Ink2));
  for (std::size_t i = 0; i < found_.size() && i < kRowsShown; ++i) {
    auto* row = new KeyButton(list_, theme(), "row", {"", found_[i]->title, found_[i]->id, true});
    row->Bind(wxEVT_BUTTON, [this, i](wxCommandEvent&) { CallAfter([this, i] { select(i); }); });
    row->Bind(wxEVT_SET_FOCUS, [this, i](wxFocusEvent& event) {
      event.Skip();
      CallAfter([this, i] { select(i); });
    });
    list_->put(row);
    rows_.push_back(row);
  }
  if (found_.size() > kRowsShown) list_->put(new Prose(list_, theme(), Step::Small, "and " + std::to_string(found_.size() - kRowsShown) + " more: choose a topic, or find by more words", Colour::Ink2), 8);
  list_->refit();
  select(0);
}

void RulesPage::select(std::size_t rule) {
  if (rule >= rows_.size()) return;
  const wxWindowUpdateLocker calm(side_);
  if (selected_ < rows_.size()) rows_[selected_]->choose(false);
  selected_ = rule;
  rows_[rule]->choose(true);
  side_->clear();
  const rules::Rule& one = *found_[rule];
  side_->put(new Prose(side_, theme(), Step::Question, one.title));
  for (const auto& row : documents::ruleRows(one, *desk().content()))
    side_->put(new TermRow(side_, theme(), row.term, row.text.front()), 0);
  if (record_) {
    const std::string day = lastFired(*record_, one.id);
    side_->put(new TermRow(side_, theme(), "Last fired", day.empty() ? "Never for " + record_->client.fullName() + "." : "On " + day + ", for " + record_->client.fullName() + "."));
  }
  side_->refit();
}

void RulesPage::checkCopy() {
  wxDirDialog dialog(this, "The edited copy: a folder with questionnaires and rules", "", wxDD_DIR_MUST_EXIST);
  if (dialog.ShowModal() != wxID_OK) return;
  if (reader_.joinable()) reader_.join();
  place().say("Reading the edited copy");
  {
    const wxWindowUpdateLocker calm(side_);
    side_->clear();
    side_->put(new Prose(side_, theme(), Step::Heading, "Reading the edited copy"));
    side_->refit();
  }
  // Reading takes a second or two: the window stays awake meanwhile.
  reader_ = std::jthread([this, folder = plain(dialog.GetPath())] {
    auto edited = std::make_shared<Edited>();
    edited->folder = folder;
    const auto read = application::loadContent(folder, edited->issues);
    if (read)
      edited->content = read.value();
    else if (edited->issues.empty())
      edited->issues.error({folder, 0, 0, {}}, "", read.failure().message);
    CallAfter([this, edited] { showCopy(*edited); });
  });
}

void RulesPage::showCopy(const Edited& edited) {
  const wxWindowUpdateLocker calm(side_);
  side_->clear();
  side_->put(new Prose(side_, theme(), Step::Question, edited.content == nullptr ? "The edited copy has a mistake" : "The edited copy can be used"));
  side_->put(new Prose(side_, theme(), Step::Small, edited.folder, Colour::Ink2), 2);
  const auto& issues = edited.issues.all();
  for (std::size_t i = 0; i < issues.size() && i < kIssuesShown; ++i) side_->put(new Prose(side_, theme(), Step::Reading, base::toText(issues[i])), 8);
  if (issues.size() > kIssuesShown) side_->put(new Prose(side_, theme(), Step::Small, "and " + std::to_string(issues.size() - kIssuesShown) + " more", Colour::Ink2), 8);
  if (edited.content != nullptr) {
    side_->put(new Prose(side_, theme(), Step::Body, "Content " + edited.content->version + ": " + documents::counted(edited.content->rules.rules.size(), "rule") + ". Nothing to mend."), 8);
    showChanges(*edited.content);
  }
  side_->refit();
  place().say(edited.content == nullptr ? "Checked: it has a mistake" : "Checked: nothing to mend");
}

void RulesPage::showChanges(const screening::Content& edited) {
  if (desk().client() == nullptr) {
    side_->put(new Prose(side_, theme(), Step::Reading, "Open a client first, and what it would change for that client stands here."), 12);
    return;
  }
  if (desk().content() == nullptr) return;
  side_->put(new Prose(side_, theme(), Step::Heading, "What it would change for " + desk().client()->card.name()), 22);
  side_->put(new Rule(side_, theme(), Colour::Post, 2), 4);
  const wxBusyCursor waiting;
  const auto compared = application::compareContent(*desk().clinic(), desk().clientId(), *desk().content(), edited, desk().today());
  if (!compared) {
    side_->put(new Prose(side_, theme(), Step::Reading, documents::asSentence(documents::capitalized(compared.failure().message))), 8);
    return;
  }
  const auto add = [this](const std::vector<application::Changed>& lines) {
    for (const auto& line : lines)
      side_->put(new TermRow(side_, theme(), documents::capitalized(line.what), line.now.empty() ? "no longer" : line.now, line.before.empty() ? "new" : "now in use: " + line.before));
  };
  add(compared.value().decision);
  add(compared.value().findings);
  add(compared.value().exercises);
  if (compared.value().isSame()) side_->put(new Prose(side_, theme(), Step::Body, "Nothing: decision, findings and exercises stay as they are."), 8);
}

bool RulesPage::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  if (event.AltDown() && key == 'C') return CallAfter([this] { checkCopy(); }), true;
  if (event.ControlDown() && key == 'F') return find_ != nullptr ? find_->SetFocus() : void(), true;
  if (rows_.empty() || (key != WXK_UP && key != WXK_DOWN)) return false;
  const bool isRow = rows_[selected_]->HasFocus();
  if (!isRow && (find_ == nullptr || !find_->HasFocus())) return false;
  if (!isRow) return rows_[selected_]->SetFocus(), true;
  if (key == WXK_DOWN && selected_ + 1 < rows_.size()) rows_[selected_ + 1]->SetFocus();
  if (key == WXK_UP && selected_ > 0) rows_[selected_ - 1]->SetFocus();
  return true;
}

}  // namespace stile::desktop
