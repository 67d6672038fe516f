#include "desktop/interview_page.h"

#include <wx/event.h>
#include <wx/sizer.h>

#include <limits>

#include "application/client_interview.h"
#include "desktop/accessible.h"
#include "desktop/answer_panel.h"
#include "desktop/answer_steps.h"
#include "desktop/button_row.h"
#include "desktop/decision_side.h"
#include "desktop/end_panel.h"
#include "desktop/given_panel.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"
#include "desktop/urgent_panel.h"

namespace stile::desktop {

using drawing::Colour;
using interview::QuestionRef;

namespace {

constexpr std::size_t kSaidShown = 4, kSaidInSmall = 1;
constexpr std::size_t kRowsAtOnce = 14;
constexpr std::size_t kWaysOut = 3;  // beside the options of a question
constexpr int kLeftPercent = 36, kMargin = 22, kFootAbove = 10, kSmallHeight = 580, kSmallWidth = 1100;

}  // namespace

InterviewPage::InterviewPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  left_ = new Column(this, theme(), Colour::Sheet, kMargin, 560);
  auto* down = new wxBoxSizer(wxVERTICAL);
  foot_ = new ButtonRow(this, theme(), Colour::Sheet, 6);
  makeQuestion();
  makeFoot();
  side_ = new DecisionSide(this, theme(), [this](QuestionRef question) { jump(question); });
  down->Add(left_, 1, wxEXPAND);
  down->AddSpacer(FromDIP(kFootAbove));
  down->Add(foot_, 0, wxEXPAND | wxLEFT, FromDIP(kMargin));
  across->Add(down, kLeftPercent, wxEXPAND);
  across->Add(side_, 100 - kLeftPercent, wxEXPAND);
  SetSizer(across);
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    foot_->fit(GetClientSize().x * kLeftPercent / 100 - FromDIP(kMargin));
  });
  // While nobody waits for anything: what was answered, and the rows of the longest question.
  Bind(wxEVT_IDLE, [this](wxIdleEvent& event) {
    event.Skip();
    save();
    if (rowsWanted_ > 0 && IsShown() && (answer_->makeReady(rowsWanted_, 1) || end_->makeReady() || prepareNext())) event.RequestMore();
  });
  Bind(wxEVT_TIMER, [this](wxTimerEvent&) { fileUrgent(this->place(), *left_, isUrgentShown_ ? urgent_->filed() : nullptr); });
  // What other pages do changes what is shown here.
  Bind(wxEVT_SHOW, [this](wxShowEvent& event) {
    event.Skip();
    if (event.IsShown()) return;
    save();
    if (auto* interview = desk().interview()) interview->setSaving(application::ClientInterview::Saving::ByStep);
    side_->forget();
    for (SaidLinks* answers : {said_, &given_->links()}) answers->show({});
    begun_ = {};
  });
}

std::string InterviewPage::keys() const {
  const bool isTyping = view_.kind == QuestionKind::Typed;
  return std::string(isTyping ? "Enter takes it · Alt U not sure · Alt S leave it" : "1 to 9 answer · U not sure · S leave it") + " · F6 ladder · F7 narrows most · F8 what hangs on it · F5 all answers";
}

void InterviewPage::enter() {
  if (!desk().isContentRead()) return showWaiting("Opening", "Reading rules and questions.");
  if (desk().content() == nullptr) return showWaiting("Screening is off: the rules have a mistake", base::toText(desk().contentIssues().all().front()));
  if (desk().interview() == nullptr) {
    const auto begun = desk().beginInterview("");
    if (!begun) {
      place().tell(begun.failure());
      return place().go("client");
    }
  }
  desk().interview()->setSaving(application::ClientInterview::Saving::ByCaller);
  isUrgentShown_ = false;
  prepared_ = 0;
  side_->Show();
  for (const auto& question : desk().interview()->session().ground().questions().all()) rowsWanted_ = std::max(rowsWanted_, question.item->options.size() + kWaysOut);
  showQuestion();
}

void InterviewPage::makeQuestion() {
  // Not in the column itself: it moves its children when it scrolls, hidden ones too, and GTK complains of those.
  auto* both = new Stack(left_);
  left_->put(both);
  question_ = new Stack(both);
  other_ = new Stack(both);
  urgent_ = new UrgentStep(both, theme(), [this] { goOn(); }, [this] { place().go("decision"); });
  end_ = new EndPanel(both, theme(), [this](QuestionRef question) { jump(question); }, [this] { place().go("decision"); });
  given_ = new GivenPanel(both, theme(), [this](QuestionRef question) { jump(question); });
  for (Stack* one : std::initializer_list<Stack*>{question_, other_, urgent_, end_, given_}) both->put(one);
  section_ = new Prose(question_, theme(), Step::Heading, " ");
  question_->put(section_);
  counted_ = new Prose(question_, theme(), Step::Small, " ", Colour::Ink2);
  question_->put(counted_);
  said_ = new SaidLinks(question_, theme(), [this](QuestionRef question) { jump(question); });
  question_->put(said_);
  said_->makeReady(kSaidShown);
  question_->put(new Rule(question_, theme(), Colour::Post, 4), 8);
  asked_ = new Prose(question_, theme(), Step::Question, " ");
  question_->put(asked_, 12);
  help_ = new Prose(question_, theme(), Step::Small, " ", Colour::Ink2);
  question_->put(help_, 4);
  before_ = new Prose(question_, theme(), Step::Reading, " ");
  question_->put(before_, 6);
  answer_ = new AnswerPanel(question_, foot_, theme(),
                            {[this](const AnswerRow& row) { take(row); }, [this](const std::set<std::size_t>& chosen) { takeOptions(chosen); },
                             [this](const std::string& text, bool isConfirmed) { takeTyped(text, isConfirmed); },
                             [this](const std::set<std::size_t>& yes, const std::set<std::size_t>& notSure) { takeList(yes, notSure); }});
  question_->put(answer_);
  answer_->makeReady(kRowsAtOnce, kRowsAtOnce);
  about_ = new Prose(question_, theme(), Step::Small, " ", Colour::Ink2);
  question_->put(about_, 8);
}

void InterviewPage::makeFoot() {
  const auto add = [&](const std::string& cap, const std::string& words, std::function<void()> act) {
    auto* button = new KeyButton(foot_, theme(), "", {cap, words, "", false});
    button->Bind(wxEVT_BUTTON, [act = std::move(act)](wxCommandEvent&) { act(); });
    foot_->put(button);
    return button;
  };
  add("Alt ←", "Back", [this] { given_->IsShown() ? toggleGiven() : back(); });
  consequences_ = add("F8", "What hangs on it?", [this] { toggleConsequences(); });
  allAnswers_ = add("F5", "All answers", [this] { toggleGiven(); });
}

void InterviewPage::showQuestion(const std::vector<answers::Answered>& takenBack) {
  auto& session = desk().interview()->session();
  if (session.prompt() == nullptr) return showEnd();
  view_ = questionViewOf(session);
  putBack(view_, session, takenBack);
  showInstead(*question_);
  const bool isNarrow = GetClientSize().x < FromDIP(kSmallWidth) * theme().factor();
  section_->say(view_.section.empty() ? session.ground().form().title() : view_.section);
  const std::string standing = standingWords(session);
  counted_->say(standing);
  showSaid();
  asked_->step(isNarrow ? Step::Heading : Step::Question);
  asked_->sayOrHide(view_.question);
  help_->sayOrHide(view_.help);
  before_->sayOrHide(view_.before.empty() ? "" : "Said before: " + view_.before + ".");
  answer_->tighten(isLow());
  answer_->show(view_, showsConsequences_ ? consequencesOf(session, view_) : std::vector<std::string>{}, standing);
  std::string about;
  if (showsConsequences_)
    for (const std::string& title : view_.about) about += (about.empty() ? "" : "; ") + title;
  about_->sayOrHide(about.empty() ? "" : "It decides about: " + about + ".");
  showFoot(true);
  left_->Scroll(0, 0);
  left_->refit();
  // What was said before may go out of sight above, what is asked may not go below.
  if (isLow()) left_->showFrom(*asked_);
  isListSeen_ = false;
  showSide();
  answer_->enter();
}

bool InterviewPage::isLow() const { return GetClientSize().y < FromDIP(kSmallHeight) * theme().factor(); }

bool InterviewPage::hasManyRows() const { return view_.kind == QuestionKind::List || view_.kind == QuestionKind::SeveralOf; }

void InterviewPage::showSaid() {
  // What has many rows needs all the room.
  const std::size_t most = hasManyRows() ? 0 : isLow() ? kSaidInSmall : kSaidShown;
  said_->show(saidLately(desk().interview()->session(), most));
}

bool InterviewPage::prepareNext() {
  auto* interview = desk().interview();
  if (interview == nullptr || prepared_ >= interview->session().ground().questions().all().size()) return false;
  const QuestionRef next{static_cast<int>(prepared_++), -1};
  const QuestionView view = questionViewOf(interview->session(), next);
  asked_->prepare(view.question);
  answer_->prepare(view, questionnaire::lineOf(*interview->session().question(next).item));
  return true;
}

void InterviewPage::showFoot(bool isQuestion) {
  foot_->Show();
  // Where there is little room, the keys alone.
  consequences_->Show(isQuestion && !isLow());
  allAnswers_->Show(!isQuestion || !isLow());
  consequences_->say({"F8", showsConsequences_ ? "Hide what hangs on it" : "What hangs on it?", "", false});
  std::string words;
  for (const wxWindow* button : foot_->GetChildren())
    if (button->IsShown()) words += dynamic_cast<const KeyButton&>(*button).said().words + "\n";
  if (words == footShown_) return;
  footShown_ = words;
  Layout();
}

void InterviewPage::hideFoot() {
  foot_->Hide();
  footShown_.clear();
  Layout();
}

void InterviewPage::showInstead(Stack& stack) {
  for (Stack* one : std::initializer_list<Stack*>{question_, other_, urgent_, end_, given_}) one->Show(one == &stack);
  if (&stack == question_) return;
  answer_->rest();
  left_->Scroll(0, 0);
}

void InterviewPage::showWaiting(const std::string& title, const std::string& words) {
  side_->Hide();
  hideFoot();
  showInstead(*other_);
  other_->clear();
  other_->put(new Prose(other_, theme(), Step::Heading, title));
  other_->put(new Prose(other_, theme(), Step::Body, words), 8);
  left_->refit();
}

void InterviewPage::showEnd() {
  showInstead(*end_);
  end_->show(desk().interview()->session());
  showFoot(false);
  left_->refit();
  showSide();
  end_->enter();
}

void InterviewPage::showUrgent() {
  isUrgentShown_ = true;
  showInstead(*urgent_);
  urgent_->show(desk().interviewDecision(), desk().settings().emergencyNumber);
  hideFoot();
  left_->refit();
  showSide();
  urgent_->enter();
  filing_.StartOnce(kFilingAfter);
}

void InterviewPage::showSide() { side_->show(desk().interview()->session(), desk().interviewDecision(), desk().settings().emergencyNumber); }

void InterviewPage::take(const AnswerRow& row) {
  auto& interview = *desk().interview();
  save();
  if (view_.kind == QuestionKind::List) {
    (void)interview.skip(row.kind == AnswerRow::Kind::NotSure ? answers::Absence::NotSure : answers::Absence::NotAnswered);
    return after();
  }
  if (view_.kind == QuestionKind::Another) {
    (void)interview.another(row.kind == AnswerRow::Kind::Yes);
    return after();
  }
  took(takeRow(interview, interview.session().prompt()->questions.front(), row));
}

bool InterviewPage::bringsMoreIntoView() {
  const wxWindow* const last = answer_->lastRow();
  if (last == nullptr || isListSeen_ || left_->showsEndOf(*last)) return false;
  left_->scrollBy(WXK_PAGEDOWN);
  isListSeen_ = left_->showsEndOf(*last);
  place().say("There is more below: look at all of them, then take them.");
  return true;
}

void InterviewPage::takeOptions(const std::set<std::size_t>& chosen) {
  if (view_.kind == QuestionKind::SeveralOf && bringsMoreIntoView()) return;
  save();
  auto& interview = *desk().interview();
  took(desktop::takeOptions(interview, interview.session().prompt()->questions.front(), chosen));
}

void InterviewPage::takeTyped(const std::string& text, bool isConfirmed) {
  if (text.find_first_not_of(' ') == std::string::npos) return answer_->complain("Write the answer first, or press Alt S to leave it.", false);
  save();
  auto& interview = *desk().interview();
  took(desktop::takeTyped(interview, interview.session().prompt()->questions.front(), text, isConfirmed));
}

void InterviewPage::took(const AnswerStep& step) {
  if (step.isTaken) return after();
  answer_->complain(step.trouble, step.canBeConfirmed);
  left_->refit();
}

void InterviewPage::takeList(const std::set<std::size_t>& yes, const std::set<std::size_t>& notSure) {
  if (bringsMoreIntoView()) return;
  save();
  auto& interview = *desk().interview();
  const auto questions = interview.session().prompt()->questions;
  std::set<QuestionRef> saidYes, saidNotSure;
  for (const std::size_t index : yes) saidYes.insert(questions[index]);
  for (const std::size_t index : notSure) saidNotSure.insert(questions[index]);
  (void)interview.answerList(saidYes, saidNotSure);
  after();
}

void InterviewPage::after() {
  isToBeSaved_ = true;
  side_->forget();
  desk().answersChanged();
  desk().interview()->isUrgent() ? showUrgent() : showQuestion();
  place().refreshHead();
}

void InterviewPage::save() {
  if (!isToBeSaved_) return;
  isToBeSaved_ = false;
  auto* interview = desk().interview();
  if (interview != nullptr) place().say(savedWords(interview->isSaved() ? base::Result<bool>(true) : interview->save()));
}

void InterviewPage::back() {
  save();
  const auto said = desk().interview()->session().response().answered;
  const auto done = desk().interview()->back();
  if (done && !done.value()) return place().say("This is the first question of this sitting.");
  isToBeSaved_ = true;
  desk().answersChanged();
  isUrgentShown_ = false;
  showQuestion(said);
}

void InterviewPage::jump(const QuestionRef& question) {
  desk().interview()->session().change(question);
  isUrgentShown_ = false;
  showQuestion();
}

void InterviewPage::jumpToNarrowing() {
  const auto open = stillOpen(desk().interview()->session(), 1);
  if (!open.empty()) jump(open.front().question);
}

bool InterviewPage::onKey(wxKeyEvent& event) {
  if (desk().interview() == nullptr || !side_->IsShown()) return false;
  const int key = event.GetKeyCode();
  // Whatever makes the page anew waits until the control that has the key is done with it.
  const auto later = [this](std::function<void()> act) { return CallAfter(std::move(act)), true; };
  if (isUrgentShown_) {
    if (key == '1') return later([this] { goOn(); });
    if (key == '2') return later([this] { place().go("decision"); });
    return false;
  }
  const bool isInSide = FindFocus() != nullptr && side_->IsDescendant(FindFocus());
  if (key == WXK_F6) return !isInSide ? side_->enter() : given_->IsShown() ? given_->enter() : answer_->enter(), true;
  if (key == WXK_F7) return later([this] { jumpToNarrowing(); });
  if (key == WXK_F8) return later([this] { toggleConsequences(); });
  if (key == WXK_F5) return later([this] { toggleGiven(); });
  const bool isTyping = question_->IsShown() && view_.kind == QuestionKind::Typed;
  if (!isInSide && !isTyping && left_->scrollBy(key)) return true;
  const bool isBack = (event.AltDown() && key == WXK_LEFT) || (key == WXK_BACK && !isTyping);
  if (given_->IsShown() && (isBack || key == WXK_ESCAPE)) return later([this] { toggleGiven(); });
  if (isBack) return later([this] { back(); });
  if (given_->IsShown() || desk().interview()->session().prompt() == nullptr) return false;
  if (isInSide && (key == WXK_RETURN || key == WXK_SPACE)) return false;
  return answer_->onKey(event);
}

void InterviewPage::toggleGiven() {
  if (given_->IsShown()) return showQuestion(), answer_->resume(begun_);
  begun_ = answer_->begun();
  showInstead(*given_);
  given_->show(saidLately(desk().interview()->session(), std::numeric_limits<std::size_t>::max()));
  showFoot(false);
  left_->refit();
  given_->enter();
}

void InterviewPage::goOn() {
  isUrgentShown_ = false;
  showQuestion();
}

void InterviewPage::toggleConsequences() {
  const auto begun = given_->IsShown() ? begun_ : answer_->begun();
  showsConsequences_ = !showsConsequences_;
  showQuestion();
  answer_->resume(begun);
}

}  // namespace stile::desktop
