#include "answers/response_lookup.h"

#include <utility>

#include "questionnaire/item_type.h"

namespace stile::answers {
namespace {

using expression::Truth;
using expression::Value;
using questionnaire::Item;
using questionnaire::KnownAnswers;

Value valueOf(const Answer& answer) {
  if (answer.boolean) return Value::boolean(*answer.boolean);
  if (answer.number) return Value::number(*answer.number);
  if (answer.code) return Value::code(*answer.code);
  if (answer.date) return Value::ofDate(*answer.date);
  return Value::ofText(answer.text.value_or(std::string()));
}

KnownAnswers knownOf(const Answered& answered, const Item& question) {
  KnownAnswers known;
  known.isComplete = !answered.absence;
  for (const Answer& answer : answered.answers) {
    known.values.push_back(valueOf(answer));
    known.units.push_back(base::parseUnit(answer.unit).value_or(base::Unit{}));
    if (questionnaire::isChoice(question.type) && !answer.code) known.isComplete = false;
  }
  return known;
}

}  // namespace

ResponseLookup::ResponseLookup(const Response& response, int repetition) {
  if (!response.form) return;
  std::map<std::pair<std::string, int>, const Answered*> answered;
  for (const Answered& each : response.answered) answered[{each.linkId, each.repetition}] = &each;
  // Conditions look only at earlier items, so one pass in form order is enough.
  for (const Item* item : response.form->inOrder()) {
    if (!questionnaire::isQuestion(item->type)) continue;
    KnownAnswers known;
    if (questionnaire::isEnabled(*item, *this) == Truth::False) {
      known.isApplicable = false;
    } else {
      const bool isInGroup = questionnaire::Form::repeatingGroupOf(*item) != nullptr;
      const auto found = answered.find({item->linkId, isInGroup ? repetition : -1});
      if (found != answered.end()) known = knownOf(*found->second, *item);
    }
    known_.emplace(item, std::move(known));
  }
}

KnownAnswers ResponseLookup::answersOf(const Item& question) const {
  const auto found = known_.find(&question);
  return found == known_.end() ? KnownAnswers{} : found->second;
}

}  // namespace stile::answers
