// A session held as a conversation: one prompt after the other, until nothing is left or somebody
// stops. Decides nothing; the session does.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "cli/terminal.h"
#include "interview/session.h"

namespace stile::cli {

class InterviewTalk {
 public:
  /// Writes down what was said so far; a failure ends the talk.
  using Save = std::function<std::optional<base::Failure>()>;
  enum class End { Finished, Stopped };
  /// What was said at an earlier interview, or nullptr; it is shown, and "=" says it again.
  using LastTime = std::function<const answers::Answered*(const interview::QuestionRef&)>;

  InterviewTalk(interview::Session& session, Terminal& terminal, Save save, LastTime lastTime = {})
      : session_(session), terminal_(terminal), save_(std::move(save)), lastTime_(std::move(lastTime)) {}

  base::Result<End> run();

 private:
  /// What was typed: an answer, or one of the commands.
  struct Typed {
    enum class Kind { Answer, Same, Why, Back, Skip, NotSure, Change, Stop, EndOfInput } kind = Kind::Answer;
    std::string text;
  };

  void introduce();
  void show(const interview::Prompt& prompt);
  void showQuestion(const interview::QuestionRef& ref);
  void showList(const interview::Prompt& prompt);
  Typed read(const interview::Prompt& prompt);
  /// True when something was taken in and must be saved.
  bool take(const interview::Prompt& prompt, const Typed& typed);
  bool takeAnswer(const interview::QuestionRef& ref, const std::string& text);
  bool takeSame(const interview::Prompt& prompt);
  bool takeAnswers(const interview::QuestionRef& ref, const std::vector<answers::Answer>& answers);
  const answers::Answered* before(const interview::QuestionRef& ref) const { return lastTime_ ? lastTime_(ref) : nullptr; }
  bool takeList(const interview::Prompt& prompt, const std::string& text);
  bool takeAnother(const std::string& text);
  bool takeSkip();
  void chooseChange();
  void explain(const interview::Prompt& prompt);
  /// True when it told what must be done today.
  bool tellIfUrgent();
  /// False when the clinician stops because of it.
  bool interruptIfUrgent();
  void tellIfSettled();
  bool confirms(const std::string& question);

  interview::Session& session_;
  Terminal& terminal_;
  Save save_;
  LastTime lastTime_;
  bool isEnded_ = false;  ///< the input came to its end
  bool hasInterrupted_ = false, hasToldSettled_ = false;
};

}  // namespace stile::cli
