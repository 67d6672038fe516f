// An interview from the first question to the last: what to ask, what was said, how far it is.
//
// Pure: no clock, no files, no terminal. The command line and the desktop drive the same session,
// and what a session has taken in is a response to its form at any time.
#pragma once

#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "answers/response.h"
#include "interview/draft.h"
#include "interview/next_question.h"
#include "screening/content.h"

namespace stile::interview {

/// What to put to the client now. One screen, one answer.
struct Prompt {
  std::vector<QuestionRef> questions;  ///< several: a list that "no to all of these" answers
  int anotherOf = -1;                  ///< a group: "is there another one?"; then there are no questions
  Reason reason = Reason::Matters;
  bool isList() const { return questions.size() > 1; }
};

/// How an interview stands.
enum class Closing {
  Open,           ///< questions are left that could change the decision
  Settled,        ///< both ends of the decision are equal
  AsFarAsItGoes,  ///< none are left, and answers that are missing hold it
  Emergency,      ///< send for help; the rest is asked later
};

struct Progress {
  int shown = 0;      ///< screens answered so far (a list is one, a measurement with repeats is one)
  int answered = 0;   ///< questions with an answer
  int skipped = 0;    ///< questions with a reason instead
  int leftAtMost = 0; ///< questions that may still be worth asking
};

class Session {
 public:
  /// `content` and its form must outlive the session. `earlier`: responses on record, whose answers
  /// are not asked again while they count. `draft`: a response to the same form to go on with.
  Session(const screening::Content& content, const questionnaire::Form& form, base::Date today,
          std::vector<answers::Response> earlier = {}, std::vector<screening::ClearanceReply> replies = {},
          const answers::Response* draft = nullptr);
  ~Session();
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;

  /// nullptr when nothing is left to ask.
  const Prompt* prompt() const { return prompt_ ? &*prompt_ : nullptr; }
  const FormQuestion& question(const QuestionRef& ref) const;

  /// Takes an answer to a question (of the prompt or any other). Impossible values are refused: an
  /// error in `issues` and nothing taken. Implausible ones are asked back, unless `isConfirmed`.
  /// True when it was taken.
  bool answer(const QuestionRef& ref, std::vector<answers::Answer> answers, base::Issues& issues, bool isConfirmed = false);
  /// Takes a list: yes to these, not sure of those, no to the others of the prompt.
  void answerList(const std::set<QuestionRef>& yes, const std::set<QuestionRef>& notSure = {});
  /// Whether the group of the prompt has another repetition.
  void another(bool isThere);
  /// Leaves the prompt's questions without an answer, with the reason.
  void skip(answers::Absence why);
  /// Asks a question again now, whatever was said.
  void change(const QuestionRef& ref);
  /// Takes back the last step and shows its prompt again; false at the beginning. A question that was asked again
  /// and not answered is left as it stood, and nothing is taken back.
  bool back();

  Closing closing() const;
  Progress progress() const;
  /// What was taken in so far, answers that no longer apply included.
  const answers::Response& response() const { return draft_.response(); }
  /// What was said to a question, or nullptr.
  const answers::Answered* said(const QuestionRef& ref) const { return draft_.find(questions(), ref); }
  Position& position() { return *position_; }
  const Stakes& stakes() const { return *stakes_; }
  const Ground& ground() const { return *ground_; }
  /// Questions with a known answer, identity left out: what nearestChange() may change.
  std::vector<QuestionRef> given() const;
  /// Unanswered questions that hold the decision: asked, and not sure, declined or not answered.
  std::vector<QuestionRef> heldBy() const;

 private:
  struct Step {
    Draft draft;
    std::optional<Prompt> prompt;
    std::set<std::string> counted;
  };

  const Questions& questions() const { return ground_->questions(); }
  facts::FactSet factsOf(const Draft& draft) const;
  void remember();
  void proceed();
  std::vector<Candidate> candidates() const;
  bool isUnanswered(const QuestionRef& ref) const;
  int groupBegun() const;
  Prompt promptFor(const Choice& choice) const;
  void count();

  const screening::Content& content_;
  base::Date today_;
  std::vector<answers::Response> earlier_;
  std::unique_ptr<Ground> ground_;
  std::unique_ptr<Position> position_;
  std::unique_ptr<Stakes> stakes_;
  Draft draft_;
  std::vector<Candidate> open_;  ///< the questions without an answer that apply now
  std::optional<Prompt> prompt_;
  std::optional<QuestionRef> askedAgain_;
  std::vector<Step> steps_;
  std::set<std::string> counted_;  ///< names of the screens shown
};

}  // namespace stile::interview
