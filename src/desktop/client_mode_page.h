// Client mode: the screen is turned to the client. One large question, big targets, nothing else, and
// no way out without the passphrase of whoever is signed in.
#pragma once

#include <set>
#include <string>
#include <vector>

#include <wx/timer.h>

#include "application/translated_forms.h"
#include "desktop/client_words.h"
#include "desktop/page.h"
#include "desktop/question_view.h"

class wxChoice;
class wxTextCtrl;

namespace stile::desktop {

struct AnswerStep;
class Column;
class KeyButton;
class Prose;
class RungPanel;

class ClientModePage : public Page {
 public:
  ClientModePage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool onKey(wxKeyEvent& event) override;

 private:
  /// What is asked now, or the first open question that a client can answer; false when there is none.
  bool findQuestion();
  void build();
  void buildHead();
  void buildQuestion();
  void buildField(const interview::FormQuestion& question);
  void buildEnd(const std::string& title, const std::string& words);
  void buildFoot(bool hasBack);
  /// Plain large type.
  Prose* aside(const std::string& words);
  KeyButton* row(const std::string& style, const std::string& cap, const std::string& words, std::function<void()> act);
  /// Questions, options and helps in this language from now on.
  void speakIn(const ClientWords& words);
  /// The item in the client's language.
  const questionnaire::Item& itemOf(const interview::FormQuestion& question) const;
  std::string sectionOf(const questionnaire::Item& item) const;
  /// What "Read it to me" says: the question, why it is asked, and the answers.
  std::string readAloud() const;

  void take(const AnswerRow& row);
  void takeMarked();
  void took(const AnswerStep& step);
  void fileUrgent();
  void leave();

  Column* column_;
  wxPanel* foot_;  ///< always in view, however long the question is
  RungPanel* rungs_ = nullptr;
  Prose* trouble_ = nullptr;
  wxTextCtrl* field_ = nullptr;
  wxChoice* unit_ = nullptr;
  const ClientWords* words_ = nullptr;
  application::FormInLanguage form_;  ///< in another language than that of the content
  interview::QuestionRef question_;
  QuestionView view_;
  wxTimer filing_{this};
  std::string text_;              ///< the question as it stands on the screen
  std::string help_;              ///< why it is asked
  std::vector<KeyButton*> rows_;  ///< with the keys 1 to 9
  std::set<std::size_t> marked_;  ///< options of a choice with several answers
  bool isOver_ = false;           ///< the end, or the staff is called
};

}  // namespace stile::desktop
