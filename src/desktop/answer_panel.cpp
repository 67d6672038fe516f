#include "desktop/answer_panel.h"

#include <wx/choice.h>
#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>

#include <algorithm>
#include <cctype>

#include "desktop/accessible.h"
#include "desktop/button_row.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"

namespace stile::desktop {
namespace {

constexpr const char* kTheseOnly = "These, and no to the others";
constexpr const char* kMarked = "Something is marked: take it with Enter, or take the marks away first.";

const char* markWords(int mark) { return mark == 1 ? "yes" : mark == 2 ? "not sure" : ""; }

std::string keyOf(std::size_t index) { return index < 9 ? std::to_string(index + 1) : ""; }

}  // namespace

AnswerPanel::AnswerPanel(wxWindow* parent, ButtonRow* foot, const Theme& theme, Takers takers)
    : wxPanel(parent), foot_(foot), theme_(theme), takers_(std::move(takers)) {
  SetBackgroundColour(parent->GetBackgroundColour());
  SetSizer(new wxBoxSizer(wxVERTICAL));
  makeField();
  trouble_ = new Prose(this, theme, Step::Reading, "", drawing::Colour::Shut);
  GetSizer()->Add(trouble_, 0, wxTOP, FromDIP(8));
  confirm_ = new KeyButton(this, theme, "", {"Alt K", "It is right, keep it", "", false});
  confirm_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { takers_.typed(typedText(), true); });
  GetSizer()->Add(confirm_, 0, wxTOP, FromDIP(8));
  rowSizer_ = new wxBoxSizer(wxVERTICAL);
  GetSizer()->Add(rowSizer_, 0, wxEXPAND | wxTOP, FromDIP(10));
  listHelp_ = new Prose(this, theme, Step::Small, "A number marks yes; again, not sure; once more, no. U: not sure of any. S: leave them all.", drawing::Colour::Ink2);
  GetSizer()->Add(listHelp_, 0, wxTOP, FromDIP(4));
  spare_ = new KeyButton(this, theme, "answer", {"", " ", "", false});
  spare_->Hide();
  take_ = new KeyButton(foot_, theme, "primary", {"Enter", " ", "", false});
  take_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { takeChosen(); });
  foot_->put(take_);
  rest();
}

void AnswerPanel::makeField() {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  field_ = new wxTextCtrl(this, wxID_ANY, "");
  field_->SetFont(theme_.font(Step::Heading));
  field_->SetMinSize(FromDIP(wxSize(180, -1)));
  across->Add(field_, 1, wxALIGN_CENTRE_VERTICAL);
  unit_ = new wxChoice(this, wxID_ANY);
  nameFor(*unit_, "Unit");
  across->Add(unit_, 0, wxALIGN_CENTRE_VERTICAL | wxLEFT, FromDIP(8));
  GetSizer()->Add(across, 0, wxEXPAND | wxTOP, FromDIP(10));
  fieldHelp_ = new Prose(this, theme_, Step::Small, " ", drawing::Colour::Ink2);
  GetSizer()->Add(fieldHelp_, 0, wxTOP, FromDIP(4));
}

bool AnswerPanel::makeReady(std::size_t rows, std::size_t mostAtOnce) {
  for (; rows_.all().size() < rows && mostAtOnce > 0; --mostAtOnce) rows_.prepare([this](std::size_t number) { return makeRow(number); });
  return rows_.all().size() < rows;
}

void AnswerPanel::prepare(const QuestionView& view, const std::string& asLine) {
  spare_->tighten(isTight_);
  for (const AnswerRow& answer : view.answers) spare_->prepare({answer.key, answer.words, "", false});
  if (view.kind == QuestionKind::YesNo) spare_->prepare({keyOf(0), asLine, "", false});
}

void AnswerPanel::rest() {
  view_ = {};
  marks_.clear();
  rows_.keep(0);
  for (wxWindow* one : std::initializer_list<wxWindow*>{field_, unit_, fieldHelp_, listHelp_, trouble_, confirm_, take_}) one->Hide();
}

void AnswerPanel::show(const QuestionView& view, const std::vector<std::string>& consequences, const std::string& standing) {
  view_ = view;
  for (const auto& row : rows_.all())
    if (row->GetToolTip() != nullptr) row->UnsetToolTip();
  groupFor(*this, view.question, standing.empty() ? "Question" : "Question, " + standing);
  showField();
  const bool isList = view_.kind == QuestionKind::List;
  marks_.assign(isList ? view_.items.size() : view_.answers.size(), 0);
  isList ? showItems() : showRows(consequences);
  rows_.keep(marks_.size());
  hasMoved_ = false;
  for (std::size_t i = 0; i < std::min(view_.marks.size(), marks_.size()); ++i)
    if (view_.marks[i] != 0) setMark(i, view_.marks[i]);
  listHelp_->Show(isList);
  trouble_->Hide();
  confirm_->Hide();
  take_->Show(isTyped() || hasMarks());
  if (take_->IsShown()) sayTake(isTyped() ? "Take it" : isList ? (hasAnyMark() ? kTheseOnly : "No to all of these") : "Take what is marked");
}

void AnswerPanel::showField() {
  field_->Show(isTyped());
  fieldHelp_->Show(isTyped());
  unit_->Show(isTyped() && !view_.units.empty());
  if (!isTyped()) return;
  field_->ChangeValue("");
  field_->SetHint(shown(view_.example));
  nameFor(*field_, view_.question);
  describe(*field_, view_.example);
  wxArrayString units;
  for (const std::string& words : view_.unitWords) units.Add(shown(words));
  if (unit_->IsShown() && units != unit_->GetStrings()) unit_->Set(units);
  if (unit_->IsShown()) unit_->SetSelection(0);
  fieldHelp_->say(view_.range.empty() ? view_.example : view_.range);
}

KeyButton* AnswerPanel::makeRow(std::size_t number) {
  auto* button = new KeyButton(this, theme_, "answer", {"", " ", "", false});
  button->Bind(wxEVT_BUTTON, [this, number](wxCommandEvent&) { press(number); });
  button->Bind(wxEVT_ENTER_WINDOW, [this, button, number](wxMouseEvent& event) {
    event.Skip();
    hint(*button, number);
  });
  button->MoveBeforeInTabOrder(listHelp_);
  rowSizer_->Add(button, 0, wxEXPAND | wxTOP, -1);
  return button;
}

/// The whole question of a line of a list. Only when the pointer comes to it: with every tooltip that changes, the
/// toolkit looks where the pointer is.
void AnswerPanel::hint(KeyButton& row, std::size_t number) const {
  if (number < view_.items.size())
    row.SetToolTip(shown(view_.items[number].question));
  else if (row.GetToolTip() != nullptr)
    row.UnsetToolTip();
}

KeyButton& AnswerPanel::row(std::size_t index) {
  KeyButton& row = rows_.at(index, [this](std::size_t number) { return makeRow(number); });
  row.tighten(isTight_);
  return row;
}

void AnswerPanel::showRows(const std::vector<std::string>& consequences) {
  for (std::size_t i = 0; i < view_.answers.size(); ++i) {
    const AnswerRow& answer = view_.answers[i];
    const std::string cap = isTyped() ? (answer.kind == AnswerRow::Kind::NotSure ? "Alt U" : answer.kind == AnswerRow::Kind::Declined ? "Alt R" : "Alt S") : answer.key;
    KeyButton& button = row(i);
    button.choose(false);
    button.say({cap, answer.words, i < consequences.size() ? consequences[i] : "", false});
    nameFor(button, answer.words + ": " + view_.question);
  }
}

void AnswerPanel::showItems() {
  for (std::size_t i = 0; i < view_.items.size(); ++i) {
    KeyButton& button = row(i);
    button.choose(false);
    button.say({keyOf(i), view_.items[i].words, "", false});
    nameFor(button, view_.items[i].words);
  }
}

void AnswerPanel::press(std::size_t index) {
  if (view_.kind == QuestionKind::List) return mark(index);
  const AnswerRow chosen = view_.answers[index];
  if (chosen.isNone && hasMarks() && hasAnyMark()) return complain(kMarked, false);
  if (chosen.isNone) return takers_.options({chosen.option});
  if (view_.kind == QuestionKind::SeveralOf && chosen.kind == AnswerRow::Kind::Option) return mark(index);
  takers_.row(chosen);
}

void AnswerPanel::sayTake(const std::string& words) {
  take_->say({"Enter", words, "", false});
}

void AnswerPanel::mark(std::size_t index) {
  const bool isList = view_.kind == QuestionKind::List;
  setMark(index, (marks_[index] + 1) % (isList ? 3 : 2));
  KeyButton& marked = row(index);
  if (isList) {
    sayTake(hasAnyMark() ? kTheseOnly : "No to all of these");
    foot_->GetParent()->Layout();
  }
  GetParent()->Layout();
  reveal(marked);
}

void AnswerPanel::setMark(std::size_t index, int mark) {
  marks_[index] = mark;
  KeyButton& marked = row(index);
  KeyButtonWords words = marked.said();
  words.beside = markWords(mark);
  marked.say(words);
  marked.choose(mark == 1);
}

bool AnswerPanel::hasAnyMark() const {
  return std::any_of(marks_.begin(), marks_.end(), [](int mark) { return mark != 0; });
}

std::string AnswerPanel::typedText() const {
  std::string text = plain(field_->GetValue());
  const bool hasLetters = std::any_of(text.begin(), text.end(), [](unsigned char c) { return std::isalpha(c) != 0 || c == '%'; });
  // A unit that was typed stands; otherwise the one chosen beside the field.
  if (!view_.units.empty() && !hasLetters && !text.empty()) text += " " + view_.unitWords[static_cast<std::size_t>(unit_->GetSelection())];
  return text;
}

void AnswerPanel::takeChosen() {
  if (isTyped()) return takers_.typed(typedText(), false);
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
  if (!isTyped()) return reveal(*trouble_);
  nameFor(*field_, view_.question, words);
  field_->SetFocus();
}

void AnswerPanel::enter() {
  wxWindow* const first = isTyped() ? static_cast<wxWindow*>(field_) : marks_.empty() ? nullptr : rows_.all().front();
  if (first == nullptr) return;
  // Where the focus stands already, the toolkit tells a screen reader nothing: the words there are new all the same.
  if (first->HasFocus())
    announceFocus(*first);
  else
    first->SetFocus();
  // In a low window the field comes before the words above it; its place is known once all is laid out.
  if (isTyped()) CallAfter([this] { reveal(*field_); });
}

std::pair<std::vector<int>, std::string> AnswerPanel::begun() const { return {marks_, isTyped() ? plain(field_->GetValue()) : ""}; }

void AnswerPanel::resume(const std::pair<std::vector<int>, std::string>& begun) {
  if (!begun.second.empty()) return fill(begun.second);
  if (!hasMarks() || begun.first.size() != marks_.size()) return;
  for (std::size_t i = 0; i < marks_.size(); ++i)
    if (begun.first[i] != 0) setMark(i, begun.first[i]);
  if (view_.kind == QuestionKind::List && hasAnyMark()) sayTake(kTheseOnly);
}

void AnswerPanel::fill(const std::string& text) {
  if (!isTyped()) return;
  field_->ChangeValue(shown(text));
  field_->SetFocus();
  field_->SetInsertionPointEnd();
}

bool AnswerPanel::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  const bool isEnter = key == WXK_RETURN || key == WXK_NUMPAD_ENTER;
  if (event.AltDown() && confirm_->IsShown() && key == 'K') return takers_.typed(typedText(), true), true;
  const bool isLetterFree = !isTyped() || event.AltDown();
  if (isEnter && !event.AltDown() && take_->IsShown() && (!isTyped() || field_->HasFocus())) return takeChosen(), true;
  // At once: the toolkit would hold the button down for a quarter of a second first.
  // A further Enter from the question before must not say yes to this one.
  if ((isEnter || key == WXK_SPACE) && !hasMoved_ && !isTyped() && !hasMarks() && !event.HasAnyModifiers() && focusedRow())
    return complain("Press the key of an answer, or move to one first.", false), true;
  hasMoved_ = hasMoved_ || key == WXK_TAB || key == WXK_DOWN || key == WXK_UP;
  if (isEnter && !event.AltDown() && !event.ControlDown())
    if (const auto at = focusedRow()) return press(*at), true;
  if (event.ControlDown() || !isLetterFree) return false;
  const auto takeKind = [this](AnswerRow::Kind kind) {
    for (const AnswerRow& row : view_.answers)
      if (row.kind == kind) return takers_.row(row), true;
    return false;
  };
  using Kind = AnswerRow::Kind;
  if (view_.kind == QuestionKind::List && (key == 'U' || key == 'S')) {
    // Of all of them: nobody has to say no to what was not asked, and no mark is lost.
    if (hasAnyMark()) return complain(kMarked, false), true;
    AnswerRow all;
    all.kind = key == 'U' ? Kind::NotSure : Kind::Later;
    return takers_.row(all), true;
  }
  if (view_.kind != QuestionKind::List) {
    if (key == 'U') return takeKind(Kind::NotSure);
    if (key == 'R') return takeKind(Kind::Declined);
    if (key == 'S') return takeKind(Kind::Later);
  }
  if (event.AltDown()) return false;
  if (key == 'Y') return takeKind(Kind::Yes);
  if (key == 'N' && hasMarks() && hasAnyMark()) return complain(kMarked, false), true;
  if (key == 'N' && view_.kind == QuestionKind::List) return takers_.list({}, {}), true;
  if (key == 'N') {
    for (const AnswerRow& row : view_.answers)
      if (row.isNone) return takers_.options({row.option}), true;
    return takeKind(Kind::No);
  }
  if (key >= '1' && key <= '9') {
    const auto index = static_cast<std::size_t>(key - '1');
    if (view_.kind == QuestionKind::List && index >= marks_.size()) return true;
    if (view_.kind == QuestionKind::List) return mark(index), true;
    const std::string cap(1, static_cast<char>(key));
    for (std::size_t i = 0; i < view_.answers.size(); ++i) {
      if (view_.answers[i].key != cap) continue;
      if (view_.kind == QuestionKind::SeveralOf) return press(i), true;
      return takers_.row(view_.answers[i]), true;
    }
    return true;
  }
  return (key == WXK_DOWN || key == WXK_UP) && step(key == WXK_DOWN);
}

const wxWindow* AnswerPanel::lastRow() const { return marks_.empty() ? nullptr : rows_.all()[marks_.size() - 1]; }

std::optional<std::size_t> AnswerPanel::focusedRow() const {
  for (std::size_t i = 0; i < marks_.size(); ++i)
    if (rows_.all()[i]->HasFocus()) return i;
  return std::nullopt;
}

bool AnswerPanel::step(bool isDown) {
  const auto at = focusedRow();
  if (!at) return false;
  const std::size_t to = isDown ? std::min(*at + 1, marks_.size() - 1) : *at - (*at > 0 ? 1 : 0);
  rows_.all()[to]->SetFocus();
  reveal(*rows_.all()[to]);
  return true;
}

void AnswerPanel::fit(int width) { fitChildren(*this, width); }

}  // namespace stile::desktop
