#include "desktop/client_mode_page.h"

#include <wx/choice.h>
#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>
#include <wx/toplevel.h>
#include <wx/utils.h>
#include <wx/wupdlock.h>

#include <algorithm>

#include "application/client_interview.h"
#include "desktop/accessible.h"
#include "desktop/answer_steps.h"
#include "desktop/client_question.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/rung_panel.h"
#include "desktop/speech.h"
#include "desktop/text.h"
#include "desktop/urgent_panel.h"
#include "desktop/words_dialog.h"
#include "documents/decision_words.h"
#include "facts/fact_display.h"
#include "questionnaire/item_type.h"

namespace stile::desktop {

using drawing::Colour;
using Kind = AnswerRow::Kind;

namespace {

constexpr int kFewLeft = 12, kClientMargin = 30;
constexpr std::size_t kLong = 60;  // of a question, in bytes: longer ones stand smaller

}  // namespace

ClientModePage::ClientModePage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* down = new wxBoxSizer(wxVERTICAL);
  column_ = new Column(this, theme(), Colour::Sheet, kClientMargin, 1100);
  foot_ = new wxPanel(this);
  foot_->SetBackgroundColour(theme().colour(Colour::Ground));
  down->Add(column_, 1, wxEXPAND);
  down->Add(foot_, 0, wxEXPAND);
  SetSizer(down);
  Bind(wxEVT_TIMER, [this](wxTimerEvent&) { fileUrgent(); });
}

void ClientModePage::enter() {
  if (words_ == nullptr) words_ = clientLanguages(desk().contentFolder()).front();
  marked_.clear();
  build();
}

bool ClientModePage::findQuestion() {
  auto& session = desk().interview()->session();
  const auto* prompt = session.prompt();
  if (prompt == nullptr) return false;
  if (prompt->anotherOf >= 0) return true;
  for (const auto& ref : prompt->questions)
    if (isForClient(session.question(ref), *desk().content())) return question_ = ref, true;
  for (const OpenRow& open : stillOpen(session, static_cast<std::size_t>(session.progress().leftAtMost)))
    if (isForClient(session.question(open.question), *desk().content())) {
      session.change(open.question);
      return question_ = open.question, true;
    }
  return false;
}

void ClientModePage::speakIn(const ClientWords& words) {
  const auto& form = desk().interview()->session().ground().form();
  form_ = {};
  if (&words != clientLanguages(desk().contentFolder()).front()) {
    const wxBusyCursor waiting;
    auto translated = application::formInLanguage(desk().contentFolder(), form.name(), words.language);
    if (!translated) return place().tell(translated.failure());
    form_ = std::move(translated).value();
  }
  words_ = &words;
  build();
}

const questionnaire::Item& ClientModePage::itemOf(const interview::FormQuestion& question) const {
  const auto* item = form_.form == nullptr ? nullptr : form_.form->find(question.item->linkId);
  return item == nullptr ? *question.item : *item;
}

std::string ClientModePage::sectionOf(const questionnaire::Item& item) const {
  for (const auto* at = item.parent; at != nullptr; at = at->parent)
    if (!at->text.empty()) return at->text;
  return {};
}

std::string ClientModePage::readAloud() const {
  std::string words = text_;
  if (!help_.empty()) words += "\n" + help_;
  for (const KeyButton* row : rows_) words += "\n" + row->said().words + ".";
  return words;
}

KeyButton* ClientModePage::row(const std::string& style, const std::string& cap, const std::string& words, std::function<void()> act) {
  auto* made = new KeyButton(rungs_, theme(), style, {cap, words, "", false});
  made->Bind(wxEVT_BUTTON, [this, act = std::move(act)](wxCommandEvent&) { CallAfter(act); });
  rungs_->put(made);
  if (!cap.empty()) rows_.push_back(made);
  return made;
}

void ClientModePage::build() {
  const wxWindowUpdateLocker calm(this);
  stopSpeaking();
  column_->clear();
  rows_.clear();
  field_ = nullptr;
  unit_ = nullptr;
  trouble_ = nullptr;
  isOver_ = !findQuestion();
  if (isOver_) return buildEnd(words_->thanks, words_->givenBack);
  buildHead();
  buildQuestion();
  trouble_ = new Prose(column_, theme(), Step::Question, "", Colour::Shut);
  column_->put(trouble_, 10);
  trouble_->Hide();
  buildFoot(true);
  column_->refit();
  if (field_ != nullptr)
    field_->SetFocus();
  else if (!rows_.empty())
    rows_.front()->SetFocus();
}

void ClientModePage::buildHead() {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  const auto progress = desk().interview()->session().progress();
  // Most of what could still be asked falls away: a large number would only frighten.
  const bool isNearEnd = progress.leftAtMost <= kFewLeft;
  std::string count = isNearEnd ? words_->toGo : words_->answered;
  const std::string slot = "{count}";
  count.replace(count.find(slot), slot.size(), std::to_string(isNearEnd ? progress.leftAtMost : progress.answered));
  auto* left = new wxBoxSizer(wxVERTICAL);
  left->Add(new Prose(column_, theme(), Step::Heading, count, Colour::Ink2));
  if (!form_.notice.empty()) left->Add(new Prose(column_, theme(), Step::Small, form_.notice, Colour::Ink2));
  across->Add(left, 1, wxALIGN_CENTRE_VERTICAL);
  const auto add = [&](const std::string& words, std::function<void()> act) {
    auto* made = new KeyButton(column_, theme(), "clientSmall", {"", words, "", false});
    made->Bind(wxEVT_BUTTON, [this, act = std::move(act)](wxCommandEvent&) { CallAfter(act); });
    across->Add(made, 0, wxLEFT, FromDIP(10));
  };
  for (const auto* language : clientLanguages(desk().contentFolder()))
    if (language != words_) add(language->name, [this, language] { speakIn(*language); });
  if (canSpeak()) add(words_->readAloud, [this] { speak(readAloud(), words_->language); });
  column_->stack().Add(across, 0, wxEXPAND);
}

void ClientModePage::buildQuestion() {
  auto& session = desk().interview()->session();
  if (session.prompt()->anotherOf >= 0) {
    view_ = questionViewOf(session);
    text_ = words_->anotherOne;
    help_.clear();
    const auto& dictionary = session.ground().dictionary();
    const auto* member = form_.form == nullptr ? nullptr : form_.form->find(dictionary.at(dictionary.groupMembers(session.prompt()->anotherOf).front()).id);
    column_->put(aside(member == nullptr ? view_.section : sectionOf(*member)), 10);
    column_->put(new Prose(column_, theme(), Step::Client, text_), 4);
    rungs_ = new RungPanel(column_, theme());
    groupFor(*rungs_, text_, "Question");
    column_->put(rungs_, 20);
    row("client", "1", words_->yesAnother, [this] { take({Kind::Yes, "", "", 0, false}); });
    row("client", "2", words_->no, [this] { take({Kind::No, "", "", 0, false}); });
    return;
  }
  const auto& question = session.question(question_);
  view_ = questionViewOf(session, question_);
  const questionnaire::Item& item = itemOf(question);
  text_ = item.text;
  help_ = item.help;
  if (const std::string section = sectionOf(item); !section.empty()) column_->put(aside(section), 10);
  column_->put(new Prose(column_, theme(), text_.size() > kLong ? Step::Title : Step::Client, text_), 4);
  if (!help_.empty()) column_->put(aside(help_), 4);
  if (view_.kind == QuestionKind::Typed) buildField(question);
  rungs_ = new RungPanel(column_, theme());
  groupFor(*rungs_, text_, "Question");
  column_->put(rungs_, 16);
  if (view_.kind == QuestionKind::Typed) row("client", "", words_->next, [this] { takeMarked(); });
  std::size_t next = 1;
  const auto cap = [&next] { return next <= 9 ? std::to_string(next++) : std::string(" "); };
  for (const AnswerRow& answer : view_.answers) {
    std::string words = answer.words;
    if (answer.kind == Kind::Yes) words = words_->yes;
    if (answer.kind == Kind::No) words = words_->no;
    if (answer.kind == Kind::NotSure) words = words_->notSure;
    if (answer.kind == Kind::Declined) words = words_->ratherNot;
    if (answer.kind == Kind::Later) words = words_->skip;
    const bool isOption = answer.kind == Kind::Option;
    if (isOption && answer.option < item.options.size()) words = item.options[answer.option].display;
    const bool isWayOut = answer.kind == Kind::NotSure || answer.kind == Kind::Declined || answer.kind == Kind::Later;
    // A typed answer has digits of its own.
    auto* made = row(isWayOut ? "clientSmall" : "client", view_.kind == QuestionKind::Typed ? "" : cap(), words, [this, answer] { take(answer); });
    made->choose(isOption && marked_.contains(answer.option));
    if (!isOption || view_.kind != QuestionKind::SeveralOf) continue;
    const bool isLast = &answer == &view_.answers.back() || (&answer + 1)->kind != Kind::Option;
    if (isLast) row("client", "", words_->thatIsAll, [this] { takeMarked(); });
  }
}

void ClientModePage::buildField(const interview::FormQuestion& question) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  field_ = new wxTextCtrl(column_, wxID_ANY, "");
  field_->SetFont(theme().font(Step::Title));
  field_->SetMinSize(FromDIP(wxSize(420, 64)));
  nameFor(*field_, text_, words_->answer);
  across->Add(field_, 0, wxALIGN_CENTRE_VERTICAL);
  if (!question.item->units.empty()) {
    unit_ = new wxChoice(column_, wxID_ANY);
    unit_->SetFont(theme().font(Step::Title));
    for (const std::string& unit : view_.unitWords) unit_->Append(shown(unit));
    unit_->SetSelection(0);
    nameFor(*unit_, words_->unit);
    across->Add(unit_, 0, wxALIGN_CENTRE_VERTICAL | wxLEFT, FromDIP(12));
  }
  column_->space(16);
  const auto type = question.item->type;
  const bool isWords = type == questionnaire::ItemType::String || type == questionnaire::ItemType::Text;
  if (!isWords) column_->put(aside(type == questionnaire::ItemType::Date ? words_->writeDate : words_->writeNumber));
  column_->space(6);
  column_->stack().Add(across);
}

void ClientModePage::buildEnd(const std::string& title, const std::string& words) {
  column_->put(new Prose(column_, theme(), Step::Client, title), 80);
  column_->put(new Prose(column_, theme(), Step::Title, words), 20);
  text_ = title;
  buildFoot(false);
  column_->refit();
}

void ClientModePage::buildFoot(bool hasBack) {
  foot_->DestroyChildren();
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  across->AddSpacer(FromDIP(kClientMargin));
  const auto add = [&](const std::string& words, std::function<void()> act) {
    auto* made = new KeyButton(foot_, theme(), "clientSmall", {"", words, "", false});
    made->Bind(wxEVT_BUTTON, [this, act = std::move(act)](wxCommandEvent&) { CallAfter(act); });
    across->Add(made, 0, wxRIGHT | wxTOP | wxBOTTOM, FromDIP(12));
    return made;
  };
  if (hasBack) {
    add(words_->back, [this] {
      const auto done = desk().interview()->back();
      if (done && done.value()) desk().answersChanged();
      build();
    });
    add(words_->needHelp, [this] {
      wxBell();
      const wxWindowUpdateLocker calm(this);
      column_->clear();
      rows_.clear();
      field_ = nullptr;
      isOver_ = true;
      buildEnd(words_->needHelp, words_->helpComes);
    });
  }
  auto* staff = add(words_->staff, [this] { leave(); });
  if (hasBack) {
    auto* unwell = new Prose(foot_, theme(), Step::Heading, words_->unwell);
    unwell->fit(std::max(FromDIP(240), GetClientSize().x - across->CalcMin().x - FromDIP(2 * kClientMargin)));
    across->Add(unwell, 1, wxALIGN_CENTRE_VERTICAL);
  }
  foot_->SetSizer(across);
  Layout();
  foot_->Layout();
  if (!hasBack) staff->SetFocus();
}

Prose* ClientModePage::aside(const std::string& words) {
  auto* made = new Prose(column_, theme(), Step::Heading, words, Colour::Ink2);
  made->SetFont(theme().font(20, false));
  return made;
}

void ClientModePage::take(const AnswerRow& answer) {
  auto& interview = *desk().interview();
  if (interview.session().prompt() != nullptr && interview.session().prompt()->anotherOf >= 0) return took({true, interview.another(answer.kind == Kind::Yes), {}, false});
  if (view_.kind == QuestionKind::SeveralOf && answer.kind == Kind::Option && !answer.isNone) {
    if (!marked_.erase(answer.option)) marked_.insert(answer.option);
    return build();
  }
  took(takeRow(interview, question_, answer));
}

void ClientModePage::takeMarked() {
  if (view_.kind != QuestionKind::Typed) {
    if (!marked_.empty()) took(takeOptions(*desk().interview(), question_, marked_));
    return;
  }
  std::string text = plain(field_->GetValue());
  if (desk().interview()->session().question(question_).item->type == questionnaire::ItemType::Date) text = dateInEnglish(text, *words_);
  const bool hasUnit = std::any_of(text.begin(), text.end(), [](unsigned char c) { return std::isalpha(c) != 0 || c == '%'; });
  if (unit_ != nullptr && !hasUnit && !text.empty()) text += " " + view_.unitWords[static_cast<std::size_t>(unit_->GetSelection())];
  took(takeTyped(*desk().interview(), question_, text, false));
}

void ClientModePage::took(const AnswerStep& step) {
  if (!step.isTaken) {
    // What is wrong with it is told in English only: in another language the client hears that it was not taken.
    trouble_->say((*words_->notTaken == '\0' ? step.trouble : std::string(words_->notTaken)) + (step.canBeConfirmed ? " " + std::string(words_->tellStaff) : ""));
    trouble_->Show();
    return column_->refit();
  }
  marked_.clear();
  desk().answersChanged();
  if (!desk().interview()->isUrgent()) return build();
  wxBell();
  if (auto* top = dynamic_cast<wxTopLevelWindow*>(wxGetTopLevelParent(this))) top->RequestUserAttention(wxUSER_ATTENTION_ERROR), top->Raise();
  const wxWindowUpdateLocker calm(this);
  column_->clear();
  rows_.clear();
  field_ = nullptr;
  isOver_ = true;
  buildEnd(words_->tellStaffNow, words_->helpComes);
  filing_.StartOnce(kFilingAfter);
}

void ClientModePage::fileUrgent() {
  if (desk().interview() == nullptr || !desk().interview()->isUrgent()) return;
  base::Issues issues;
  // A failure is for staff: it comes up when they file the decision.
  (void)desk().interview()->fileUrgent(issues);
}

void ClientModePage::leave() {
  stopSpeaking();
  std::string words = "The passphrase of " + desk().clinic()->file().who().name + " gives the whole program back.";
  while (!desk().isDemonstration()) {
    const auto passphrase = askWords(*this, theme(), {"Staff", words, "Passphrase", "Leave", true});
    // After a wrong one the file is locked, and nothing the client says could be saved.
    if (!passphrase) return desk().clinic()->isLocked() ? place().lock() : void();
    const auto checked = desk().checkPassphrase(*passphrase);
    if (checked) break;
    // The client reads along: no sign-in name, and nothing that frightens.
    words = checked.failure().kind == base::FailureKind::Secret ? "That is not the passphrase. Try it again." : documents::asSentence(documents::capitalized(checked.failure().message));
  }
  place().setClientMode(false);
  place().go(desk().interview() != nullptr && isOver_ ? "decision" : "interview");
}

bool ClientModePage::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  const bool isEnter = key == WXK_RETURN || key == WXK_NUMPAD_ENTER;
  if (field_ != nullptr && field_->HasFocus()) return isEnter ? CallAfter([this] { takeMarked(); }), true : false;
  if (event.HasAnyModifiers() || key < '1' || key > '9') return false;
  const auto at = static_cast<std::size_t>(key - '1');
  if (at >= rows_.size() || rows_[at]->said().cap == " ") return true;
  wxCommandEvent press(wxEVT_BUTTON, rows_[at]->GetId());
  press.SetEventObject(rows_[at]);
  rows_[at]->ProcessWindowEvent(press);
  return true;
}

}  // namespace stile::desktop
