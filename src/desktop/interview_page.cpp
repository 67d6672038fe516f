#include "desktop/interview_page.h"

#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/wrapsizer.h>
#include <wx/wupdlock.h>

#include "application/client_interview.h"
#include "desktop/accessible.h"
#include "desktop/answer_panel.h"
#include "desktop/answer_steps.h"
#include "desktop/decision_side.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"
#include "desktop/urgent_panel.h"

namespace stile::desktop {

using drawing::Colour;
using interview::QuestionRef;

namespace {

constexpr std::size_t kSaidShown = 4, kSaidInSmall = 2;
constexpr int kMargin = 22, kFootAbove = 10, kSmallHeight = 580, kSmallWidth = 1100;

}  // namespace

InterviewPage::InterviewPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  left_ = new Column(this, theme(), Colour::Sheet, kMargin, 560);
  auto* down = new wxBoxSizer(wxVERTICAL);
  foot_ = new wxPanel(this);
  foot_->SetBackgroundColour(theme().colour(Colour::Sheet));
  foot_->SetSizer(new wxWrapSizer(wxHORIZONTAL, wxREMOVE_LEADING_SPACES));
  side_ = new DecisionSide(this, theme(), [this](QuestionRef question) { jump(question); });
  down->Add(left_, 1, wxEXPAND);
  down->AddSpacer(FromDIP(kFootAbove));
  down->Add(foot_, 0, wxEXPAND | wxLEFT, FromDIP(kMargin));
  across->Add(down, 36, wxEXPAND);
  across->Add(side_, 64, wxEXPAND);
  SetSizer(across);
  // What other pages do changes what is shown here.
  Bind(wxEVT_SHOW, [this](wxShowEvent& event) {
    event.Skip();
    if (!event.IsShown()) side_->forget();
  });
}

std::string InterviewPage::keys() const { return "1 to 9 answer · U not sure · S leave it · Backspace back · F6 ladder · F7 narrows most"; }

void InterviewPage::enter() {
  if (!desk().isContentRead()) return buildWaiting("Opening", "Reading rules and questions.");
  if (desk().content() == nullptr) return buildWaiting("Screening is off: the rules have a mistake", base::toText(desk().contentIssues().all().front()));
  if (desk().interview() == nullptr) {
    const auto begun = desk().beginInterview("");
    if (!begun) {
      place().tell(begun.failure());
      return place().go("client");
    }
  }
  isUrgentShown_ = false;
  side_->Show();
  buildQuestion();
}

void InterviewPage::buildWaiting(const std::string& title, const std::string& words) {
  const wxWindowUpdateLocker calm(this);
  side_->Hide();
  clear();
  left_->put(new Prose(left_, theme(), Step::Heading, title));
  left_->put(new Prose(left_, theme(), Step::Body, words), 8);
  left_->refit();
}

void InterviewPage::buildQuestion() {
  auto& session = desk().interview()->session();
  if (session.prompt() == nullptr) return buildEnd();
  const wxWindowUpdateLocker calm(this);
  clear();
  view_ = questionViewOf(session);
  const auto progress = session.progress();
  left_->put(new Prose(left_, theme(), Step::Heading, view_.section.empty() ? session.ground().form().title() : view_.section));
  left_->put(new Prose(left_, theme(), Step::Small, std::to_string(progress.answered) + " answered", Colour::Ink2));
  buildSaid();
  left_->put(new Rule(left_, theme(), Colour::Post, 4), 8);
  left_->put(new Prose(left_, theme(), GetClientSize().x < FromDIP(kSmallWidth) ? Step::Heading : Step::Question, view_.question), 12);
  if (!view_.help.empty()) left_->put(new Prose(left_, theme(), Step::Small, view_.help, Colour::Ink2), 4);
  if (!view_.before.empty()) left_->put(new Prose(left_, theme(), Step::Reading, "Said before: " + view_.before + "."), 6);
  const auto consequences = showsConsequences_ ? consequencesOf(session, view_) : std::vector<std::string>{};
  answer_ = new AnswerPanel(left_, foot_, theme(), view_, consequences,
                            // All later: taking an answer makes the panel anew, and it still has a key in hand.
                            {[this](const AnswerRow& row) { CallAfter([this, row] { take(row); }); },
                             [this](const std::set<std::size_t>& chosen) { CallAfter([this, chosen] { takeOptions(chosen); }); },
                             [this](const std::string& text, bool isConfirmed) { CallAfter([this, text, isConfirmed] { takeTyped(text, isConfirmed); }); },
                             [this](const std::set<std::size_t>& yes, const std::set<std::size_t>& notSure) {
                               CallAfter([this, yes, notSure] { takeList(yes, notSure); });
                             }});
  left_->put(answer_);
  if (showsConsequences_ && !view_.about.empty()) {
    std::string about;
    for (const std::string& title : view_.about) about += (about.empty() ? "" : "; ") + title;
    left_->put(new Prose(left_, theme(), Step::Small, "It decides about: " + about + ".", Colour::Ink2), 8);
  }
  buildFoot(true);
  left_->refit();
  showSide();
  focusAnswer();
}

void InterviewPage::buildSaid() {
  for (const SaidRow& row : saidLately(desk().interview()->session(), GetClientSize().y < FromDIP(kSmallHeight) ? kSaidInSmall : kSaidShown)) {
    auto* button = new KeyButton(left_, theme(), "said", {"", row.words, row.answer, false});
    nameFor(*button, row.words + " " + row.answer + ". Change it");
    button->Bind(wxEVT_BUTTON, [this, ref = row.question](wxCommandEvent&) { CallAfter([this, ref] { jump(ref); }); });
    left_->put(button, 2);
  }
}

void InterviewPage::buildFoot(bool isQuestion) {
  const auto add = [&](const std::string& cap, const std::string& words, std::function<void()> act) {
    auto* button = new KeyButton(foot_, theme(), "", {cap, words, "", false});
    button->Bind(wxEVT_BUTTON, [this, act = std::move(act)](wxCommandEvent&) { CallAfter(act); });
    foot_->GetSizer()->Add(button, 0, wxRIGHT | wxBOTTOM, FromDIP(8));
  };
  add("Alt ←", "Back", [this] { back(); });
  if (isQuestion) add("F8", showsConsequences_ ? "Hide what hangs on it" : "What hangs on it?", [this] { toggleConsequences(); });
  // Twice: a row that wraps knows its height only when it has been laid out once.
  Layout();
  Layout();
}

void InterviewPage::clear() {
  left_->clear();
  foot_->GetSizer()->Clear(true);
  answer_ = nullptr;
}

void InterviewPage::buildEnd() {
  const wxWindowUpdateLocker calm(this);
  clear();
  left_->put(new Prose(left_, theme(), Step::Title, "That was the last question"));
  const auto held = desk().interview()->session().heldBy();
  if (!held.empty()) left_->put(new Prose(left_, theme(), Step::Body, "Answers that are missing hold the decision:"), 8);
  for (const auto& ref : held) {
    auto* button = new KeyButton(left_, theme(), "said", {"", desk().interview()->session().question(ref).item->text, "", false});
    button->Bind(wxEVT_BUTTON, [this, ref](wxCommandEvent&) { CallAfter([this, ref] { jump(ref); }); });
    left_->put(button, 2);
  }
  left_->space(16);
  auto* go = new KeyButton(left_, theme(), "primary", {"Enter", "To the decision", "", false});
  go->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { place().go("decision"); }); });
  left_->stack().Add(go);
  buildFoot(false);
  left_->refit();
  showSide();
  go->SetFocus();
}

void InterviewPage::buildUrgent(const application::Filed& filed) {
  const wxWindowUpdateLocker calm(this);
  isUrgentShown_ = true;
  clear();
  auto* slab = new UrgentPanel(left_, theme(), filed.screening, desk().settings().emergencyNumber);
  left_->put(slab);
  left_->put(new Prose(left_, theme(), Step::Body, "An action record is open: it stays on the list until somebody says what was done."), 12);
  left_->space(16);
  auto* on = new KeyButton(left_, theme(), "primary", {"1", "Go on with the questions", "", false});
  on->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { goOn(); }); });
  auto* stop = new KeyButton(left_, theme(), "", {"2", "Stop here, to the decision", "", false});
  stop->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { place().go("decision"); }); });
  left_->stack().Add(on, 0, wxBOTTOM, FromDIP(8));
  left_->stack().Add(stop);
  left_->refit();
  showSide();
  on->SetFocus();
}

void InterviewPage::showSide() { side_->show(desk().interview()->session(), desk().interviewScreening(), desk().settings().emergencyNumber); }

void InterviewPage::focusAnswer() {
  if (answer_ != nullptr) answer_->enter();
}

void InterviewPage::take(const AnswerRow& row) {
  auto& interview = *desk().interview();
  if (view_.kind == QuestionKind::Another) return after(interview.another(row.kind == AnswerRow::Kind::Yes));
  took(takeRow(interview, interview.session().prompt()->questions.front(), row));
}

void InterviewPage::takeOptions(const std::set<std::size_t>& chosen) {
  auto& interview = *desk().interview();
  took(desktop::takeOptions(interview, interview.session().prompt()->questions.front(), chosen));
}

void InterviewPage::takeTyped(const std::string& text, bool isConfirmed) {
  auto& interview = *desk().interview();
  took(desktop::takeTyped(interview, interview.session().prompt()->questions.front(), text, isConfirmed));
}

void InterviewPage::took(const AnswerStep& step) {
  if (step.isTaken) return after(step.saved);
  answer_->complain(step.trouble, step.canBeConfirmed);
  left_->refit();
}

void InterviewPage::takeList(const std::set<std::size_t>& yes, const std::set<std::size_t>& notSure) {
  auto& interview = *desk().interview();
  const auto questions = interview.session().prompt()->questions;
  std::set<QuestionRef> saidYes, saidNotSure;
  for (const std::size_t index : yes) saidYes.insert(questions[index]);
  for (const std::size_t index : notSure) saidNotSure.insert(questions[index]);
  after(interview.answerList(saidYes, saidNotSure));
}

void InterviewPage::after(const base::Result<bool>& taken) {
  side_->forget();
  desk().answersChanged();
  place().say(savedWords(taken));
  place().refreshHead();
  base::Issues issues;
  const auto urgent = desk().interview()->fileIfUrgent(issues);
  if (!urgent) place().tell(urgent.failure());
  if (urgent && urgent.value()) return buildUrgent(*urgent.value());
  buildQuestion();
}

void InterviewPage::back() {
  const auto done = desk().interview()->back();
  if (done && !done.value()) return place().say("This is the first question of this sitting.");
  desk().answersChanged();
  place().say(savedWords(done));
  isUrgentShown_ = false;
  buildQuestion();
}

void InterviewPage::jump(const QuestionRef& question) {
  desk().interview()->session().change(question);
  isUrgentShown_ = false;
  buildQuestion();
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
  if (key == WXK_F6) return isInSide ? focusAnswer() : side_->enter(), true;
  if (key == WXK_F7) return later([this] { jumpToNarrowing(); });
  if (key == WXK_F8) return later([this] { toggleConsequences(); });
  const bool isTyping = view_.kind == QuestionKind::Typed && answer_ != nullptr;
  if ((event.AltDown() && key == WXK_LEFT) || (key == WXK_BACK && !isTyping)) return later([this] { back(); });
  if (desk().interview()->session().prompt() == nullptr) return false;
  if (isInSide && (key == WXK_RETURN || key == WXK_SPACE)) return false;
  return answer_ != nullptr && answer_->onKey(event);
}

void InterviewPage::goOn() {
  isUrgentShown_ = false;
  buildQuestion();
}

void InterviewPage::toggleConsequences() {
  showsConsequences_ = !showsConsequences_;
  buildQuestion();
}

}  // namespace stile::desktop
