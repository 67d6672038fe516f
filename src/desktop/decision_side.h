// The right side of the interview: counter, action today, sentence, ladder with its reasons, and what
// is still open.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "desktop/fitted.h"
#include "interview/session.h"
#include "screening/screening.h"

namespace stile::desktop {

class DrawingPanel;
class KeyButton;
class LadderPanel;
class Prose;

class DecisionSide : public Column {
 public:
  DecisionSide(wxWindow* parent, const Theme& theme, std::function<void(interview::QuestionRef)> jump);
  /// `session` and `screening` must stay until the next call, or until forget().
  void show(interview::Session& session, const screening::Screening& screening, const std::string& emergencyNumber);
  void forget();
  /// To the ladder, for F6.
  void enter();

 private:
  KeyButton& link(std::size_t index);
  void showOpen(interview::Session& session);

  const Theme& theme_;
  std::function<void(interview::QuestionRef)> jump_;
  interview::Session* session_ = nullptr;
  Prose *count_, *countWords_, *sentence_, *possible_, *action_;
  DrawingPanel* strip_;
  LadderPanel* ladder_;
  Stack* open_;
  Prose* openTitle_;
  Kept<KeyButton> links_;
  std::vector<interview::QuestionRef> linked_;  ///< by link
};

}  // namespace stile::desktop
