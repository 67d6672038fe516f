#include "desktop/answer_panel.h"

#include <wx/choice.h>
#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>

#include <algorithm>
#include <cctype>

#include "desktop/accessible.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"

namespace stile::desktop {
namespace {

const char* markWords(int mark) { return mark == 1 ? "yes" : mark == 2 ? "not sure" : ""; }

std::string keyOf(std::size_t index) { return index < 9 ? std::to_string(index + 1) : ""; }

}  // namespace

AnswerPanel::AnswerPanel(wxWindow* parent, wxWindow* foot, const Theme& theme, const QuestionView& view, const std::vector<std::string>& consequences, Takers takers)
    : wxPanel(parent), foot_(foot), theme_(theme), view_(view), takers_(std::move(takers)) {
  SetBackgroundColour(parent->GetBackgroundColour());
  groupFor(*this, view.question, "Question");
  SetSizer(new wxBoxSizer(wxVERTICAL));
  if (view_.kind == QuestionKind::Typed) addField();
  view_.kind == QuestionKind::List ? addList() : addRows(consequences);
  trouble_ = new Prose(this, theme, Step::Reading, "", drawing::Colour::Shut);
  trouble_->Hide();
  GetSizer()->Add(trouble_, 0, wxTOP, FromDIP(8));
  confirm_ = new KeyButton(this, theme, "", {"Alt K", "It is right, keep it", "", false});
  confirm_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { takers_.typed(typedText(), true); });
  confirm_->Hide();
  GetSizer()->Add(confirm_, 0, wxTOP, FromDIP(8));
}

void AnswerPanel::addRows(const std::vector<std::string>& consequences) {
  for (std::size_t i = 0; i < view_.answers.size(); ++i) {
    const AnswerRow& row = view_.answers[i];
    const bool isTyped = view_.kind == QuestionKind::Typed;
    const std::string cap = isTyped ? (row.kind == AnswerRow::Kind::NotSure ? "Alt U" : row.kind == AnswerRow::Kind::Declined ? "Alt R" : "Alt S") : row.key;
    auto* button = new KeyButton(this, theme_, "answer", {cap, row.words, i < consequences.size() ? consequences[i] : "", false});
    nameFor(*button, row.words + ": " + view_.question, cap.empty() ? "" : "Key " + cap);
    button->Bind(wxEVT_BUTTON, [this, i](wxCommandEvent&) {
      const AnswerRow& chosen = view_.answers[i];
      if (chosen.isNone) return CallAfter([this, option = chosen.option] { takers_.options({option}); });
      if (view_.kind == QuestionKind::SeveralOf && chosen.kind == AnswerRow::Kind::Option) return mark(i);
      CallAfter([this, i] { takers_.row(view_.answers[i]); });
    });
    GetSizer()->Add(button, 0, wxEXPAND | wxTOP, i == 0 ? FromDIP(10) : -1);
    rows_.push_back(button);
    marks_.push_back(0);
  }
  if (view_.kind == QuestionKind::SeveralOf) addTake("Take what is marked");
}

void AnswerPanel::addField() {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  field_ = new wxTextCtrl(this, wxID_ANY, "");
  field_->SetFont(theme_.font(Step::Heading));
  field_->SetHint(shown(view_.example));
  field_->SetMinSize(FromDIP(wxSize(180, -1)));
  nameFor(*field_, view_.question, view_.example);
  across->Add(field_, 1, wxALIGN_CENTRE_VERTICAL);
  if (!view_.units.empty()) {
    unit_ = new wxChoice(this, wxID_ANY);
    for (const std::string& words : view_.unitWords) unit_->Append(shown(words));
    unit_->SetSelection(0);
    nameFor(*unit_, "Unit");
    across->Add(unit_, 0, wxALIGN_CENTRE_VERTICAL | wxLEFT, FromDIP(8));
  }
  GetSizer()->Add(across, 0, wxEXPAND | wxTOP, FromDIP(10));
  const std::string help = view_.range.empty() ? view_.example : view_.range;
  GetSizer()->Add(new Prose(this, theme_, Step::Small, help, drawing::Colour::Ink2), 0, wxTOP, FromDIP(4));
  addTake("Take it");
}

void AnswerPanel::addList() {
  for (std::size_t i = 0; i < view_.items.size(); ++i) {
    auto* button = new KeyButton(this, theme_, "answer", {keyOf(i), view_.items[i], "", false});
    button->Bind(wxEVT_BUTTON, [this, i](wxCommandEvent&) { mark(i); });
    GetSizer()->Add(button, 0, wxEXPAND | wxTOP, i == 0 ? FromDIP(10) : -1);
    rows_.push_back(button);
    marks_.push_back(0);
  }
  addTake("No to all of these");
  GetSizer()->Add(new Prose(this, theme_, Step::Small, "A number marks yes; the same number again, not sure; once more, no.", drawing::Colour::Ink2), 0, wxTOP, FromDIP(4));
}

void AnswerPanel::addTake(const std::string& words) {
  take_ = new KeyButton(foot_, theme_, "primary", {"Enter", words, "", false});
  take_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { takeChosen(); }); });
  foot_->GetSizer()->Add(take_, 0, wxRIGHT | wxBOTTOM, FromDIP(8));
}

void AnswerPanel::mark(std::size_t index) {
  const bool isList = view_.kind == QuestionKind::List;
  marks_[index] = (marks_[index] + 1) % (isList ? 3 : 2);
  KeyButtonWords words = rows_[index]->said();
  words.beside = markWords(marks_[index]);
  rows_[index]->say(words);
  rows_[index]->choose(marks_[index] == 1);
  if (isList) {
    const auto marked = std::count_if(marks_.begin(), marks_.end(), [](int mark) { return mark != 0; });
    take_->say({"Enter", marked == 0 ? "No to all of these" : "These, and no to the others", "", false});
    // Twice: a row that wraps knows its height only when it has been laid out once.
    foot_->GetParent()->Layout();
    foot_->GetParent()->Layout();
  }
  GetParent()->Layout();
}

std::string AnswerPanel::typedText() const {
  std::string text = field_ == nullptr ? "" : plain(field_->GetValue());
  const bool hasLetters = std::any_of(text.begin(), text.end(), [](unsigned char c) { return std::isalpha(c) != 0 || c == '%'; });
  // A unit that was typed stands; otherwise the one chosen beside the field.
  if (unit_ != nullptr && !hasLetters && !text.empty()) text += " " + view_.unitWords[static_cast<std::size_t>(unit_->GetSelection())];
  return text;
}

void AnswerPanel::takeChosen() {
  if (view_.kind == QuestionKind::Typed) return takers_.typed(typedText(), false);
  std::set<std::size_t> yes, notSure;
  for (std::size_t i = 0; i < marks_.size(); ++i) {
    if (marks_[i] == 1) yes.insert(i);
    if (marks_[i] == 2) notSure.insert(i);
  }
  if (view_.kind == QuestionKind::List) return takers_.list(yes, notSure);
  if (yes.empty()) return complain("Mark what applies, or say that you are not sure.", false);
  takers_.options(yes);
}

void AnswerPanel::complain(const std::string& words, bool canConfirm) {
  trouble_->say(words);
  trouble_->Show(!words.empty());
  confirm_->Show(canConfirm);
  if (field_ != nullptr) {
    nameFor(*field_, view_.question, words);
    field_->SetFocus();
  }
}

void AnswerPanel::enter() {
  if (field_ != nullptr) return field_->SetFocus();
  if (!rows_.empty()) rows_.front()->SetFocus();
}

void AnswerPanel::fill(const std::string& text) {
  if (field_ == nullptr) return;
  field_->ChangeValue(shown(text));
  field_->SetFocus();
  field_->SetInsertionPointEnd();
}

bool AnswerPanel::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  const bool isEnter = key == WXK_RETURN || key == WXK_NUMPAD_ENTER;
  if (event.AltDown() && confirm_->IsShown() && key == 'K') return takers_.typed(typedText(), true), true;
  const bool isLetterFree = field_ == nullptr || event.AltDown();
  if (isEnter && !event.AltDown() && take_ != nullptr && (field_ == nullptr || field_->HasFocus())) return takeChosen(), true;
  if (event.ControlDown() || !isLetterFree) return false;
  const auto takeKind = [this](AnswerRow::Kind kind) {
    for (const AnswerRow& row : view_.answers)
      if (row.kind == kind) return takers_.row(row), true;
    return false;
  };
  using Kind = AnswerRow::Kind;
  if (view_.kind != QuestionKind::List) {
    if (key == 'U') return takeKind(Kind::NotSure);
    if (key == 'R') return takeKind(Kind::Declined);
    if (key == 'S') return takeKind(Kind::Later);
  }
  if (event.AltDown()) return false;
  if (key == 'Y') return takeKind(Kind::Yes);
  if (key == 'N' && view_.kind == QuestionKind::List) return takers_.list({}, {}), true;
  if (key == 'N') {
    for (const AnswerRow& row : view_.answers)
      if (row.isNone) return takers_.options({row.option}), true;
    return takeKind(Kind::No);
  }
  if (key >= '1' && key <= '9') {
    const auto index = static_cast<std::size_t>(key - '1');
    if (view_.kind == QuestionKind::List && index >= rows_.size()) return true;
    if (view_.kind == QuestionKind::List) return mark(index), true;
    const std::string cap(1, static_cast<char>(key));
    for (std::size_t i = 0; i < view_.answers.size(); ++i) {
      if (view_.answers[i].key != cap) continue;
      if (view_.kind == QuestionKind::SeveralOf && view_.answers[i].kind == Kind::Option) return mark(i), true;
      return takers_.row(view_.answers[i]), true;
    }
    return true;
  }
  if (key == WXK_DOWN || key == WXK_UP) {
    const auto at = std::find_if(rows_.begin(), rows_.end(), [](KeyButton* row) { return row->HasFocus(); });
    if (at == rows_.end()) return false;
    if (key == WXK_DOWN && at + 1 != rows_.end()) (*(at + 1))->SetFocus();
    if (key == WXK_UP && at != rows_.begin()) (*(at - 1))->SetFocus();
    return true;
  }
  return false;
}

void AnswerPanel::fit(int width) { fitChildren(*this, width); }

}  // namespace stile::desktop
