#include "desktop/measurement_page.h"

#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>
#include <wx/wupdlock.h>

#include "application/client_interview.h"
#include "desktop/accessible.h"
#include "desktop/answer_panel.h"
#include "desktop/answer_steps.h"
#include "desktop/button_row.h"
#include "desktop/drawing_panel.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/test_panel.h"
#include "desktop/text.h"
#include "desktop/urgent_panel.h"

namespace stile::desktop {

using drawing::Colour;

MeasurementPage::MeasurementPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  list_ = new Column(this, theme(), Colour::Sheet, 22, 560);
  detail_ = new Column(this, theme(), Colour::Well, 22, 560);
  across->Add(list_, 46, wxEXPAND);
  across->Add(detail_, 54, wxEXPAND);
  SetSizer(across);
  Bind(wxEVT_TIMER, [this](wxTimerEvent&) { fileUrgent(this->place(), *detail_, filed_); });
}

void MeasurementPage::enter() {
  if (!desk().isContentRead()) return buildWhyNot("Opening", "Reading rules and questions.");
  if (desk().content() == nullptr) return buildWhyNot("Screening is off: the rules have a mistake", base::toText(desk().contentIssues().all().front()));
  if (desk().interview() == nullptr)
    if (const auto begun = desk().beginInterview(""); !begun) return buildWhyNot("Nothing can be measured now", begun.failure().message);
  fill();
  if (rows_.empty()) return buildWhyNot("Nothing to measure", "The form of this interview asks for no reading and no test.");
  toList();
}

void MeasurementPage::buildWhyNot(const std::string& title, const std::string& words) {
  const wxWindowUpdateLocker calm(this);
  list_->clear();
  detail_->clear();
  buttons_.clear();
  answer_ = nullptr;
  test_ = nullptr;
  list_->put(new Prose(list_, theme(), Step::Heading, title));
  list_->put(new Prose(list_, theme(), Step::Body, words), 8);
  auto* go = new KeyButton(list_, theme(), "", {"", "To the interview", "", false});
  go->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { place().go("interview"); }); });
  list_->space(16);
  list_->stack().Add(go);
  list_->refit();
  detail_->refit();
  go->SetFocus();
}

void MeasurementPage::fill() {
  rows_ = measureRowsOf(*desk().interview(), desk().interviewScreening(), *desk().content());
  if (selected_ >= rows_.size()) selected_ = 0;
  const wxWindowUpdateLocker calm(this);
  buildList();
  buildDetail();
}

void MeasurementPage::buildList() {
  list_->clear();
  buttons_.clear();
  list_->put(new Prose(list_, theme(), Step::Title, "Measurements and tests"));
  std::string section;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const MeasureRow& row = rows_[i];
    if (row.section != section) {
      section = row.section;
      auto* title = new Prose(list_, theme(), Step::Reading, section);
      title->SetFont(theme().font(15, true));
      list_->put(title, 16);
      list_->put(new Rule(list_, theme(), Colour::Post, 3), 4);
    }
    std::string beside = !row.said.empty() ? row.said : !row.leftOut.empty() ? "left out" : row.before.empty() ? "" : "last: " + row.before;
    auto* button = new KeyButton(list_, theme(), "row", {"", row.title, beside, true});
    button->choose(i == selected_);
    button->Bind(wxEVT_BUTTON, [this, i](wxCommandEvent&) {
      CallAfter([this, i] {
        select(i);
        if (answer_ != nullptr) answer_->enter();
      });
    });
    button->Bind(wxEVT_SET_FOCUS, [this, i](wxFocusEvent& event) {
      event.Skip();
      CallAfter([this, i] { select(i); });
    });
    list_->put(button);
    buttons_.push_back(button);
  }
  list_->refit();
}

void MeasurementPage::buildDetail() {
  detail_->clear();
  answer_ = nullptr;
  test_ = nullptr;
  if (selected_ >= rows_.size()) return detail_->refit();
  const MeasureRow& row = rows_[selected_];
  const QuestionView view = questionViewOf(desk().interview()->session(), row.question);
  detail_->put(new Prose(detail_, theme(), Step::Question, view.question));
  if (!view.help.empty()) detail_->put(new Prose(detail_, theme(), Step::Small, view.help, Colour::Ink2), 4);
  if (!row.said.empty()) detail_->put(new TermRow(detail_, theme(), "Today", row.said, row.level), 8);
  if (row.plot) detail_->stack().Add(new DrawingPanel(detail_, theme(), Colour::Well, *row.plot), 0, wxTOP, FromDIP(8));
  if (!row.before.empty()) detail_->put(new TermRow(detail_, theme(), "Last time", row.before, row.change), 4);
  for (const std::string& why : row.leftOut) detail_->put(new TermRow(detail_, theme(), "Left out", why), 4);
  if (row.how->gives != rules::Gives::Entry && row.leftOut.empty()) {
    test_ = new TestPanel(detail_, theme(), *row.how, [this](const std::string& value) { if (answer_ != nullptr) answer_->fill(value); },
                          [this](const std::string& words) { place().say(words); });
    detail_->put(test_, 8);
  }
  auto* foot = new ButtonRow(detail_, theme(), Colour::Well, 6);
  answer_ = new AnswerPanel(detail_, foot, theme(),
                            {[this, row](const AnswerRow& said) { CallAfter([this, row, said] { took(takeRow(*desk().interview(), row.question, said)); }); },
                             [this, row](const std::set<std::size_t>& chosen) { CallAfter([this, row, chosen] { took(takeOptions(*desk().interview(), row.question, chosen)); }); },
                             [this, row](const std::string& text, bool isConfirmed) {
                               CallAfter([this, row, text, isConfirmed] { took(takeTyped(*desk().interview(), row.question, text, isConfirmed)); });
                             },
                             [](const std::set<std::size_t>&, const std::set<std::size_t>&) {}});
  answer_->show(view, {});
  detail_->put(answer_, 4);
  detail_->put(foot, 4);
  detail_->refit();
}

void MeasurementPage::select(std::size_t row) {
  if (row == selected_ || row >= rows_.size()) return;
  buttons_[selected_]->choose(false);
  selected_ = row;
  buttons_[row]->choose(true);
  const wxWindowUpdateLocker calm(detail_);
  buildDetail();
}

void MeasurementPage::toList() {
  if (selected_ < buttons_.size()) buttons_[selected_]->SetFocus();
}

bool MeasurementPage::isInList() const {
  const auto* focused = FindFocus();
  return focused != nullptr && list_->IsDescendant(const_cast<wxWindow*>(focused));
}

void MeasurementPage::took(const AnswerStep& step) {
  if (!step.isTaken) {
    answer_->complain(step.trouble, step.canBeConfirmed);
    return detail_->refit();
  }
  desk().answersChanged();
  place().say(savedWords(step.saved));
  place().refreshHead();
  fill();
  if (desk().interview()->isUrgent()) return buildUrgent();
  toList();
}

void MeasurementPage::buildUrgent() {
  const wxWindowUpdateLocker calm(detail_);
  detail_->clear();
  answer_ = nullptr;
  test_ = nullptr;
  detail_->put(new UrgentPanel(detail_, theme(), desk().interviewScreening(), desk().settings().emergencyNumber));
  filed_ = new Prose(detail_, theme(), Step::Body, "The action record is being filed.");
  detail_->put(filed_, 12);
  auto* go = new KeyButton(detail_, theme(), "primary", {"", "To the decision", "", false});
  go->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { place().go("decision"); }); });
  detail_->space(16);
  detail_->stack().Add(go);
  detail_->refit();
  go->SetFocus();
  filing_.StartOnce(kFilingAfter);
}

bool MeasurementPage::onKey(wxKeyEvent& event) {
  if (rows_.empty() || buttons_.empty()) return false;
  const int key = event.GetKeyCode();
  const bool isList = isInList();
  const auto* focused = FindFocus();
  const bool isTyping = dynamic_cast<const wxTextCtrl*>(focused) != nullptr;
  if (key == WXK_SPACE && test_ != nullptr && (test_->isRunning() || (isList && !isTyping))) return test_->press(), true;
  if (isList && (key == WXK_DOWN || key == WXK_UP)) {
    const std::size_t next = key == WXK_DOWN ? std::min(selected_ + 1, buttons_.size() - 1) : selected_ - (selected_ > 0 ? 1 : 0);
    return buttons_[next]->SetFocus(), true;
  }
  if (isList && (key == WXK_RETURN || key == WXK_NUMPAD_ENTER)) return answer_ != nullptr ? answer_->enter() : void(), true;
  if (key == WXK_ESCAPE && !isList) return toList(), true;
  if (isList || answer_ == nullptr || (test_ != nullptr && test_->hasField(focused))) return false;
  return answer_->onKey(event);
}

}  // namespace stile::desktop
