// The interview: the question asked now with what was said before it, and beside it the decision as
// it narrows. Every answer is on the disk before "Saved" shows; that comes after what follows from it is painted.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include <wx/timer.h>

#include "answers/response.h"
#include "desktop/fitted.h"
#include "desktop/page.h"
#include "desktop/prose.h"
#include "desktop/question_view.h"

namespace stile::desktop {

class AnswerPanel;
class ButtonRow;
struct AnswerStep;
class DecisionSide;
class EndPanel;
class GivenPanel;
class SaidLinks;
class KeyButton;
class Prose;
class UrgentStep;

class InterviewPage : public Page {
 public:
  InterviewPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool needsContent() const override { return true; }
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override;

 private:
  /// The controls of a question, which stay from one to the next.
  void makeQuestion();
  void makeFoot();
  /// `takenBack`: what was said before a step back, to stand there again.
  void showQuestion(const std::vector<answers::Answered>& takenBack = {});
  /// Whether the window is so low that answers need the room of what stands above them.
  bool isLow() const;
  bool hasManyRows() const;
  void showSaid();
  /// While somebody reads: lays out one more of the questions that may come. False when all are.
  bool prepareNext();
  void showFoot(bool isQuestion);
  void hideFoot();
  /// Shows one of what can stand on the left.
  void showInstead(Stack& stack);
  void showWaiting(const std::string& title, const std::string& words);
  /// What to do now comes before anything is filed: a full disk may not keep it back.
  void showUrgent();
  void showEnd();

  /// Nobody says no to what was out of sight: true when the rest comes into view first.
  bool bringsMoreIntoView();
  void take(const AnswerRow& row);
  void takeOptions(const std::set<std::size_t>& chosen);
  void takeTyped(const std::string& text, bool isConfirmed);
  void takeList(const std::set<std::size_t>& yes, const std::set<std::size_t>& notSure);
  void took(const AnswerStep& step);
  /// After every step: what it calls for, or the next question.
  void after();
  void save();
  void back();
  void jump(const interview::QuestionRef& question);
  void jumpToNarrowing();
  void showSide();
  void goOn();
  void toggleConsequences();
  void toggleGiven();

  Column* left_;
  Stack *question_, *other_;  ///< one of these and the next two is shown
  UrgentStep* urgent_;
  EndPanel* end_;
  GivenPanel* given_;
  Prose *section_, *counted_, *asked_, *help_, *before_, *about_;
  SaidLinks* said_;
  ButtonRow* foot_;  ///< buttons that stay in view below the question
  KeyButton *consequences_ = nullptr, *allAnswers_ = nullptr;
  std::string footShown_;  ///< words of its buttons, as laid out
  DecisionSide* side_;
  AnswerPanel* answer_;
  std::size_t rowsWanted_ = 0;  ///< of the question with the most answers
  std::size_t prepared_ = 0;    ///< questions laid out beforehand
  QuestionView view_;
  bool showsConsequences_ = false;
  std::pair<std::vector<int>, std::string> begun_;  ///< marks and text of an answer that waits behind all others
  bool isUrgentShown_ = false, isListSeen_ = false, isToBeSaved_ = false;
  wxTimer filing_{this};
};

}  // namespace stile::desktop
