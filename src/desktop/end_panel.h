// Where an interview ends: what still holds the decision, and the way to it.
#pragma once

#include <functional>
#include <vector>

#include "desktop/fitted.h"
#include "interview/session.h"

namespace stile::desktop {

class KeyButton;
class Prose;

/// Its controls stay: the end is shown as fast as a question.
class EndPanel : public Stack {
 public:
  EndPanel(wxWindow* parent, const Theme& theme, std::function<void(interview::QuestionRef)> jump, std::function<void()> decide);
  /// Makes links beforehand, one a call. True while some are still to be made.
  bool makeReady();
  void show(const interview::Session& session);
  /// The focus to the way on.
  void enter();

 private:
  KeyButton* makeLink(std::size_t number);

  const Theme& theme_;
  std::function<void(interview::QuestionRef)> jump_;
  Prose *holds_, *more_;
  Stack* list_;
  Kept<KeyButton> links_;
  std::vector<interview::QuestionRef> linked_;  ///< by link
  KeyButton* go_;
};

}  // namespace stile::desktop
