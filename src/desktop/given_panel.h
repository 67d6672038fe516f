// Answers that were given, each a step to its question: the last few beside a question, and all of them.
#pragma once

#include <functional>
#include <vector>

#include "desktop/fitted.h"
#include "desktop/question_view.h"

namespace stile::desktop {

class KeyButton;
class Prose;

/// Answers one below the other.
class SaidLinks : public Stack {
 public:
  SaidLinks(wxWindow* parent, const Theme& theme, std::function<void(interview::QuestionRef)> jump);
  /// Makes links beforehand.
  void makeReady(std::size_t count);
  /// Nothing of what was shown before stays in a control.
  void show(std::vector<SaidRow> rows);
  /// The focus to the first.
  void enter();

 private:
  KeyButton* make(std::size_t number);

  const Theme& theme_;
  std::function<void(interview::QuestionRef)> jump_;
  Kept<KeyButton> links_;
  std::vector<SaidRow> rows_;  ///< by link
};

/// All of them, in the place of a question.
class GivenPanel : public Stack {
 public:
  GivenPanel(wxWindow* parent, const Theme& theme, std::function<void(interview::QuestionRef)> jump);
  void show(std::vector<SaidRow> rows);
  void enter() { links_->enter(); }
  SaidLinks& links() { return *links_; }

 private:
  Prose* none_;
  SaidLinks* links_;
};

}  // namespace stile::desktop
