#include "interview/answer_check.h"

#include <algorithm>

#include "base/utf8.h"
#include "facts/given.h"
#include "questionnaire/item_type.h"

namespace stile::interview {
namespace {

using answers::Answer;

class AnswerCheck {
 public:
  AnswerCheck(const FormQuestion& question, base::Date today, base::Issues& issues)
      : item_(*question.item), fact_(*question.fact), today_(today), issues_(issues) {}

  void check(const std::vector<Answer>& answers) {
    if (answers.empty()) return refuse("there is no answer", "answer, or say why there is none");
    if (answers.size() > 1 && !item_.repeats) return refuse("one answer is wanted, not several", "choose one of them");
    bool hasExclusive = false;
    for (const Answer& answer : answers) {
      checkOne(answer);
      for (const auto& option : item_.options)
        hasExclusive = hasExclusive || (option.isExclusive && answer.code == option.code);
    }
    if (hasExclusive && answers.size() > 1)
      refuse("\"none of these\" and one of these cannot both be so", "keep the right one");
  }

 private:
  void refuse(std::string message, std::string remedy) {
    issues_.error({}, item_.linkId, std::move(message), std::move(remedy));
  }

  void checkOne(const Answer& answer) {
    if (answer.number) return checkNumber(answer);
    if (answer.date) {
      if (answer.date->first() > today_) refuse(answer.date->toText() + " lies in the future", "correct the date");
      return;
    }
    if (answer.boolean) {
      if (item_.type != questionnaire::ItemType::Boolean) refuse("this is no yes-or-no question", "answer what is asked");
      return;
    }
    if (answer.code) {
      const bool isOffered = std::any_of(item_.options.begin(), item_.options.end(),
                                         [&](const auto& option) { return option.code == *answer.code; });
      if (!isOffered) refuse("\"" + *answer.code + "\" is not offered", "choose one of the answers shown");
      return;
    }
    if (!answer.text || answer.text->empty()) return refuse("the answer is empty", "write something, or say why not");
    if (item_.maxLength && static_cast<long long>(base::wellFormedUtf8(*answer.text).size()) > 4 * *item_.maxLength)
      refuse("the text is longer than " + std::to_string(*item_.maxLength) + " letters", "shorten it");
  }

  void checkNumber(const Answer& answer) {
    if (item_.type == questionnaire::ItemType::Quantity &&
        std::find(item_.units.begin(), item_.units.end(), answer.unit) == item_.units.end())
      return refuse("the unit " + answer.unit + " is not offered here", "use one of the units shown");
    const std::string written = answer.numberText + (answer.unit.empty() ? "" : " " + answer.unit);
    facts::checkedNumber(fact_, *answer.number, answer.unit, written, {}, item_.linkId, issues_);
  }

  const questionnaire::Item& item_;
  const facts::Definition& fact_;
  base::Date today_;
  base::Issues& issues_;
};

}  // namespace

void checkAnswer(const FormQuestion& question, const std::vector<Answer>& answers, base::Date today, base::Issues& issues) {
  AnswerCheck(question, today, issues).check(answers);
}

}  // namespace stile::interview
