#include "answers/response_validator.h"

#include <algorithm>
#include <utility>

#include "answers/answer_checker.h"
#include "answers/calculated_value.h"
#include "answers/option_checker.h"
#include "answers/option_toggle.h"
#include "expression/evaluator.h"
#include "questionnaire/item_type.h"

namespace stile::answers {
namespace {

using expression::Truth;
using questionnaire::Item;
using questionnaire::ItemType;

/// Stated reasons that settle a required question: asked, and there is no answer to be had.
bool isSettledWithout(const ResponseItem& question) {
  return question.absentReason == "asked-unknown" || question.absentReason == "asked-declined";
}

std::string firstWords(const base::Issues& issues) {
  return issues.empty() ? std::string() : issues.all().front().message;
}

}  // namespace

ResponseValidator::ResponseValidator(json::Node response, const ResponseHead& head, const std::string& now,
                                     base::Issues& issues)
    : head_(head),
      issues_(issues),
      tree_(response, *head.form, issues),
      scope_(tree_, now),
      enablement_(tree_, &scope_) {}

void ResponseValidator::validate() {
  checkConstraints(head_.form->constraints(), {nullptr, &tree_.root(), nullptr}, tree_.node());
  checkLevel(head_.form->items(), tree_.root());
}

void ResponseValidator::error(json::Node at, const std::string& subject, std::string message,
                              std::string remedy) {
  issues_.error(at.place(), subject, std::move(message), std::move(remedy));
}

void ResponseValidator::note(json::Node at, const std::string& subject, std::string message,
                             std::string remedy) {
  issues_.add({base::Severity::Note, at.place(), subject, std::move(message), std::move(remedy)});
}

void ResponseValidator::checkLevel(const std::vector<std::unique_ptr<Item>>& items,
                                   const Occurrence& within) {
  for (const auto& item : items) checkItem(*item, within);
}

void ResponseValidator::checkItem(const Item& item, const Occurrence& within) {
  const auto found = ResponseTree::find(within, item);
  const Truth enabled = enablement_.isEnabled(item, within);
  if (enabled == Truth::False) {
    checkDisabled(found);
    return;
  }
  if (enabled == Truth::Unknown) {
    checkUndecided(item, within);
  } else if (head_.isFinal()) {
    checkRequired(item, within, found);
  }
  checkOccurs(item, within, found);
  for (const ResponseItem* each : found) {
    if (questionnaire::isQuestion(item.type)) checkAnswers(*each);
    checkConstraints(item.constraints, {&item, &within, each}, each->node);
    for (const auto& occurrence : each->occurrences) checkLevel(item.items, *occurrence);
  }
}

void ResponseValidator::checkDisabled(const std::vector<const ResponseItem*>& found) {
  for (const ResponseItem* each : found) {
    const std::string& linkId = each->item->linkId;
    if (each->holdsAnswer()) {
      error(each->node, linkId,
            "\"" + linkId + "\" is answered, but its condition says that it does not apply",
            "remove the answer, or correct the answers it depends on");
    }
  }
}

void ResponseValidator::checkUndecided(const Item& item, const Occurrence& within) {
  // Told once, at the outermost item that is undecided.
  if (enablement_.isEnabled(within) == Truth::Unknown) return;
  base::Issues why;
  if (item.enableExpression) {
    const auto selves = ResponseTree::find(within, item);
    scope_.evaluate(*item.enableExpression, {&item, &within, selves.empty() ? nullptr : selves.front()}, why);
  }
  std::string message = "whether \"" + item.linkId + "\" applies cannot be decided";
  if (const std::string words = firstWords(why); !words.empty()) message += ": " + words;
  if (head_.isFinal()) {
    error(within.node, item.linkId, std::move(message),
          "a response with such an item cannot be " + head_.status + "; keep it in-progress");
  } else {
    note(within.node, item.linkId, std::move(message), "check the answers its condition depends on");
  }
}

void ResponseValidator::checkRequired(const Item& item, const Occurrence& within,
                                      const std::vector<const ResponseItem*>& found) {
  if (!item.isRequired) return;
  const json::Node at = found.empty() ? within.node : found.front()->node;
  if (item.type == ItemType::Group) {
    const bool holdsItems = std::any_of(found.begin(), found.end(), [](const ResponseItem* each) {
      return !each->occurrences.empty() && !each->occurrences.front()->items.empty();
    });
    if (!holdsItems) {
      error(at, item.linkId, "the required group \"" + item.linkId + "\" is missing or empty",
            "answer its questions");
    }
    return;
  }
  if (!questionnaire::isQuestion(item.type)) return;
  const bool isAnswered = std::any_of(found.begin(), found.end(), [](const ResponseItem* each) {
    return each->answerCount() > 0 || isSettledWithout(*each);
  });
  if (!isAnswered) {
    error(at, item.linkId, "the required question \"" + item.linkId + "\" is not answered",
          "answer it, or state that it was asked and why there is no answer");
  }
}

void ResponseValidator::checkOccurs(const Item& item, const Occurrence& within,
                                    const std::vector<const ResponseItem*>& found) {
  if (!item.minOccurs && !item.maxOccurs) return;
  const bool isGroup = item.type == ItemType::Group;
  long long count = 0;
  bool isSettled = false;
  for (const ResponseItem* each : found) {
    count += isGroup ? 1 : static_cast<long long>(each->answerCount());
    isSettled = isSettled || isSettledWithout(*each);
  }
  const char* what = isGroup ? " repetitions" : " answers";
  const json::Node at = found.empty() ? within.node : found.front()->node;
  if (item.maxOccurs && count > *item.maxOccurs) {
    error(at, item.linkId,
          "there are " + std::to_string(count) + what + ", and at most " + std::to_string(*item.maxOccurs) +
              " are allowed",
          "remove some");
  }
  if (head_.isFinal() && item.minOccurs && count < *item.minOccurs && !isSettled) {
    error(at, item.linkId,
          "there are " + std::to_string(count) + what + ", and at least " + std::to_string(*item.minOccurs) +
              " are needed",
          "add the others");
  }
}

void ResponseValidator::checkAnswers(const ResponseItem& question) {
  for (const auto& answer : question.occurrences) checkAnswer(*answer, *question.item, issues_);
  checkTogether(question, issues_);
  checkToggled(question);
  checkCalculated(question);
}

void ResponseValidator::checkToggled(const ResponseItem& question) {
  const Item& item = *question.item;
  if (item.toggles.empty()) return;
  for (const auto& answer : question.occurrences) {
    const questionnaire::Option* option = optionOf(*answer, item);
    if (!option) continue;
    base::Issues why;
    const Truth truth = mayChoose(*option, {&item, question.within, &question}, scope_, why);
    if (truth == Truth::True) continue;
    if (truth == Truth::False) {
      error(*answer->value, item.linkId,
            "\"" + option->code + "\" may not be chosen as the other answers stand",
            "choose another option, or correct the answers it depends on");
    } else {
      note(*answer->value, item.linkId,
           "whether \"" + option->code + "\" may be chosen cannot be decided: " + firstWords(why),
           "check it by hand");
    }
  }
}

void ResponseValidator::checkCalculated(const ResponseItem& question) {
  const Item& item = *question.item;
  if (!item.calculatedExpression || !question.answerCount()) return;
  base::Issues why;
  const auto value = scope_.evaluate(*item.calculatedExpression, {&item, question.within, &question}, why);
  if (!value) {
    note(question.node, item.linkId, "the calculated value cannot be checked: " + firstWords(why),
         "check it by hand");
    return;
  }
  const auto expected = calculatedAnswers(*value, item);
  if (isSameAnswers(expected, question)) return;
  std::string words;
  for (const CalculatedAnswer& each : expected) words += (words.empty() ? "" : ", ") + each.words;
  note(question.node, item.linkId,
       "the form calculates " + (words.empty() ? std::string("no value") : words) + " here",
       "correct it, unless it was changed on purpose");
}

void ResponseValidator::checkConstraints(const std::vector<questionnaire::Constraint>& constraints,
                                         const ExpressionPlace& place, json::Node at) {
  const std::string subject = place.item ? place.item->linkId : "response";
  for (const questionnaire::Constraint& constraint : constraints) {
    base::Issues why;
    const auto result = scope_.evaluate(constraint.expression, place, why);
    const auto holds = result ? expression::asCondition(*result) : std::nullopt;
    if (holds && *holds) continue;
    const std::string name =
        constraint.key.empty() ? std::string("a constraint") : "the constraint " + constraint.key;
    std::string message = constraint.human.empty() ? name + " does not hold" : constraint.human;
    std::string remedy = name + " asks for: " + constraint.expression.text;
    if (!result) message = name + " cannot be evaluated: " + firstWords(why);
    if (constraint.isWarning) {
      note(at, subject, std::move(message), std::move(remedy));
    } else {
      error(at, subject, std::move(message), std::move(remedy));
    }
  }
}

}  // namespace stile::answers
