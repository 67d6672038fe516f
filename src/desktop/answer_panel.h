// Where one question is answered: rows with keys, a field with its unit, or a list.
#pragma once

#include <wx/panel.h>

#include <functional>
#include <set>
#include <string>
#include <vector>

#include "desktop/fitted.h"
#include "desktop/question_view.h"

class wxChoice;
class wxKeyEvent;
class wxTextCtrl;

namespace stile::desktop {

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
  /// `consequences`: one for each answer, or empty. `foot`: where the button that takes what was marked or
  /// typed stands, in view however long the answers are.
  AnswerPanel(wxWindow* parent, wxWindow* foot, const Theme& theme, const QuestionView& view, const std::vector<std::string>& consequences, Takers takers);

  void enter();
  /// Puts a value into the field, to be looked at and taken.
  void fill(const std::string& text);
  /// True when the key was one of this question's.
  bool onKey(wxKeyEvent& event);
  /// Below the field: why a value is not taken, or whether it is meant.
  void complain(const std::string& words, bool canConfirm);
  void fit(int width) override;

 private:
  void addRows(const std::vector<std::string>& consequences);
  void addField();
  void addList();
  void addTake(const std::string& words);
  void mark(std::size_t index);
  void takeChosen();
  bool hasMarks() const { return view_.kind == QuestionKind::List || view_.kind == QuestionKind::SeveralOf; }
  std::string typedText() const;

  wxWindow* foot_;
  const Theme& theme_;
  QuestionView view_;
  Takers takers_;
  std::vector<KeyButton*> rows_;  ///< answers; for a list its questions
  std::vector<int> marks_;        ///< of rows that can be marked: 0 no, 1 yes, 2 not sure
  KeyButton *take_ = nullptr, *confirm_ = nullptr;
  wxTextCtrl* field_ = nullptr;
  wxChoice* unit_ = nullptr;
  Prose* trouble_ = nullptr;
};

}  // namespace stile::desktop
