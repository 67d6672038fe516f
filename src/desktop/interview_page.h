// The interview: the question asked now with what was said before it, and beside it the decision as
// it narrows. Every answer is on the disk before "Saved" shows.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "answers/response.h"
#include "desktop/page.h"
#include "desktop/question_view.h"

namespace stile::application {
struct Filed;
}

namespace stile::desktop {

class AnswerPanel;
struct AnswerStep;
class Column;
class DecisionSide;

class InterviewPage : public Page {
 public:
  InterviewPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool needsContent() const override { return true; }
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override;

 private:
  void buildWaiting(const std::string& title, const std::string& words);
  void buildQuestion();
  void buildUrgent(const application::Filed& filed);
  void buildEnd();
  void buildSaid();
  void buildFoot(bool isQuestion);
  void clear();

  void take(const AnswerRow& row);
  void takeOptions(const std::set<std::size_t>& chosen);
  void takeTyped(const std::string& text, bool isConfirmed);
  void takeList(const std::set<std::size_t>& yes, const std::set<std::size_t>& notSure);
  void took(const AnswerStep& step);
  /// After every step: what was saved, what it calls for, and the next question.
  void after(const base::Result<bool>& taken);
  void back();
  void jump(const interview::QuestionRef& question);
  void jumpToNarrowing();
  void showSide();
  void focusAnswer();
  void goOn();
  void toggleConsequences();

  Column* left_;
  wxPanel* foot_;  ///< buttons that stay in view below the question
  DecisionSide* side_;
  AnswerPanel* answer_ = nullptr;
  QuestionView view_;
  bool showsConsequences_ = false;
  bool isUrgentShown_ = false;
};

}  // namespace stile::desktop
