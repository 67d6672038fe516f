// The response an interview is writing: answers, reasons for missing ones, and lists that are not
// finished yet.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "answers/response.h"
#include "interview/question.h"

namespace stile::interview {

/// Always true: a repeating group that was begun and not finished keeps one more repetition, of
/// which nothing was asked. So an interview that breaks off never passes for a complete list.
class Draft {
 public:
  Draft(const questionnaire::Form& form, base::Date today);
  /// Goes on with a response to the same form.
  Draft(const answers::Response& response, const Questions& questions);

  const answers::Response& response() const { return response_; }
  const answers::Answered* find(const Questions& questions, const QuestionRef& ref) const;
  /// Puts an entry in the place of what was said before.
  void put(const Questions& questions, const QuestionRef& ref, std::vector<answers::Answer> answers,
           std::optional<answers::Absence> absence);

  /// Repetitions of a group that were begun.
  int begun(const std::string& group) const;
  bool isFinished(const std::string& group) const;
  void addRepetition(const std::string& group);
  void finish(const std::string& group);
  /// Asks no further, without saying that there are no more.
  void leave(const std::string& group) { left_.insert(group); }
  bool isLeft(const std::string& group) const { return left_.count(group) != 0; }
  /// Whether nothing but reasons for missing answers stands in the last repetition.
  bool isLastWithoutAnswers(const Questions& questions, const std::string& group) const;

 private:
  void restate(const std::string& group);

  answers::Response response_;
  std::map<std::string, std::pair<int, bool>> groups_;  ///< begun, finished
  std::set<std::string> left_;
};

}  // namespace stile::interview
