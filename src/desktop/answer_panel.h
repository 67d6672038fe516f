// Where one question is answered: rows with keys, a field with its unit, or a list. Its controls stay from
// question to question.
#pragma once

#include <wx/panel.h>

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "desktop/fitted.h"
#include "desktop/question_view.h"

class wxChoice;
class wxKeyEvent;
class wxSizer;
class wxTextCtrl;

namespace stile::desktop {

class ButtonRow;
class KeyButton;
class Prose;

class AnswerPanel : public wxPanel, public Fitted {
 public:
  struct Takers {
    std::function<void(const AnswerRow&)> row;
    std::function<void(const std::set<std::size_t>&)> options;                                       ///< of a choice with several answers
    std::function<void(const std::string& text, bool isConfirmed)> typed;
    std::function<void(const std::set<std::size_t>& yes, const std::set<std::size_t>& notSure)> list;
  };
  /// `foot`: where the button that takes what was marked or typed stands, in view however long the answers are.
  AnswerPanel(wxWindow* parent, ButtonRow* foot, const Theme& theme, Takers takers);

  /// Asks a question, in the place of the one before. `consequences`: one for each answer, or empty. `standing` says
  /// how far the interview is, for a screen reader: it tells two askings of one question apart.
  void show(const QuestionView& view, const std::vector<std::string>& consequences, const std::string& standing = {});
  /// Makes rows beforehand, so that no question waits for them: until there are so many, or `mostAtOnce` were made.
  /// True while some are still to be made.
  bool makeReady(std::size_t rows, std::size_t mostAtOnce);
  /// Lays out what another question would show, so that it comes fast.
  void prepare(const QuestionView& view, const std::string& asLine);
  /// Lower rows from the next question on, where a window has little room.
  void tighten(bool isTight) { isTight_ = isTight; }
  /// Nothing is asked.
  void rest();
  void enter();
  /// What was marked and typed so far, and that again after the same question was shown anew.
  std::pair<std::vector<int>, std::string> begun() const;
  void resume(const std::pair<std::vector<int>, std::string>& begun);
  /// Puts a value into the field, to be looked at and taken.
  void fill(const std::string& text);
  /// The last of its answers, or of its questions; null when there is none.
  const wxWindow* lastRow() const;
  /// True when the key was one of this question's.
  bool onKey(wxKeyEvent& event);
  /// Below the field: why a value is not taken, or whether it is meant.
  void complain(const std::string& words, bool canConfirm);
  void fit(int width) override;

 private:
  void makeField();
  void showField();
  void showRows(const std::vector<std::string>& consequences);
  void showItems();
  KeyButton* makeRow(std::size_t number);
  KeyButton& row(std::size_t index);
  void hint(KeyButton& row, std::size_t number) const;
  void press(std::size_t index);
  void sayTake(const std::string& words);
  void mark(std::size_t index);
  void takeChosen();
  bool hasAnyMark() const;
  std::optional<std::size_t> focusedRow() const;
  /// The focus to the next or previous row; false when it stands in none.
  bool step(bool isDown);
  void setMark(std::size_t index, int mark);
  bool hasMarks() const { return view_.kind == QuestionKind::List || view_.kind == QuestionKind::SeveralOf; }
  bool isTyped() const { return view_.kind == QuestionKind::Typed; }
  std::string typedText() const;

  ButtonRow* foot_;
  const Theme& theme_;
  QuestionView view_;
  Takers takers_;
  Kept<KeyButton> rows_;    ///< answers; for a list its questions
  std::vector<int> marks_;  ///< of the rows shown: 0 no, 1 yes, 2 not sure
  bool hasMoved_ = false;    ///< the focus was moved to an answer by hand
  KeyButton *take_, *spare_, *confirm_;
  wxTextCtrl* field_;
  wxChoice* unit_;
  Prose *fieldHelp_, *listHelp_, *trouble_;
  wxSizer* rowSizer_;
  bool isTight_ = false;
};

}  // namespace stile::desktop
