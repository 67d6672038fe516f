#include "answers/response_enablement.h"

#include <algorithm>
#include <vector>

#include "answers/answer_match.h"

namespace stile::answers {
namespace {

using expression::Truth;
using questionnaire::EnableOperator;
using questionnaire::EnableWhen;
using questionnaire::Item;

Truth ofBool(bool value) {
  return value ? Truth::True : Truth::False;
}

Truth some(const ResponseItem& question, const EnableWhen& condition, EnableOperator op) {
  Truth result = Truth::False;
  for (const auto& answer : question.occurrences) {
    if (answer->value) result = expression::truthOr(result, matches(*answer, condition, op));
  }
  return result;
}

/// The condition on the answers that stand at `question`; nullptr: none.
Truth valueOf(const EnableWhen& condition, const ResponseItem* question) {
  const bool isAnswered = question && question->answerCount() > 0;
  if (condition.op == EnableOperator::Exists) {
    return ofBool(isAnswered == condition.boolean.value_or(true));
  }
  if (condition.op == EnableOperator::NotEqual) {
    return isAnswered ? expression::truthNot(some(*question, condition, EnableOperator::Equal)) : Truth::True;
  }
  return isAnswered ? some(*question, condition, condition.op) : Truth::False;
}

/// The items from just below `above` down to `item`; `above` nullptr: from the top of the form.
std::vector<const Item*> pathBelow(const Item* above, const Item& item) {
  std::vector<const Item*> path;
  for (const Item* at = &item; at && at != above; at = at->parent) path.insert(path.begin(), at);
  return path;
}

bool isAbove(const Item* above, const Item& item) {
  for (const Item* at = item.parent; at; at = at->parent) {
    if (at == above) return true;
  }
  return above == nullptr;
}

}  // namespace

ResponseEnablement::ResponseEnablement(const ResponseTree& tree, ConditionEvaluator* expressions)
    : tree_(tree), expressions_(expressions) {
  for (const Item* item : tree.form().inOrder()) order_.emplace(item, order_.size());
}

Truth ResponseEnablement::isEnabled(const Occurrence& occurrence) {
  return occurrence.of ? isEnabled(*occurrence.of->item, *occurrence.of->within) : Truth::True;
}

Truth ResponseEnablement::isEnabled(const Item& item, const Occurrence& within) {
  const Key key{&item, &within};
  if (const auto found = known_.find(key); found != known_.end()) return found->second;
  if (open_.empty()) steps_ = 0;
  if (++steps_ > kMaxEnablementSteps || !open_.insert(key).second) {
    sawCircle_ = true;
    return Truth::Unknown;
  }
  const Truth result = compute(item, within);
  open_.erase(key);
  // What was computed inside a circle holds for that question only; asked by itself it may be decided.
  if (!sawCircle_ || open_.empty()) known_.emplace(key, result);
  if (open_.empty()) sawCircle_ = false;
  return result;
}

Truth ResponseEnablement::compute(const Item& item, const Occurrence& within) {
  const Truth above = isEnabled(within);
  if (above == Truth::False) return above;
  Truth own = Truth::True;
  if (!item.enableWhen.empty()) {
    own = ofBool(!item.enableAny);
    for (const EnableWhen& condition : item.enableWhen) {
      const Truth truth = holds(condition, item, within);
      own = item.enableAny ? expression::truthOr(own, truth) : expression::truthAnd(own, truth);
    }
  }
  if (item.enableExpression) {
    const auto selves = ResponseTree::find(within, item);
    const ResponseItem* self = selves.empty() ? nullptr : selves.front();
    const Truth truth =
        expressions_ ? expressions_->holds(*item.enableExpression, item, within, self) : Truth::Unknown;
    own = expression::truthAnd(own, truth);
  }
  return expression::truthAnd(above, own);
}

Truth ResponseEnablement::holds(const EnableWhen& condition, const Item& item, const Occurrence& within) {
  const Item* question = tree_.form().find(condition.question);
  if (!question) return Truth::Unknown;  // an issue of the form
  const ResponseItem* at = nearest(*question, item, within);
  const Truth unanswered = valueOf(condition, nullptr);
  if (!at) return unanswered;
  const Truth answered = valueOf(condition, at);
  if (answered == unanswered) return answered;
  switch (isEnabled(*question, *at->within)) {
    case Truth::True:
      return answered;
    case Truth::False:
      return unanswered;
    case Truth::Unknown:
      break;
  }
  return Truth::Unknown;
}

const ResponseItem* ResponseEnablement::nearest(const Item& question, const Item& from,
                                                const Occurrence& within) const {
  // Up to the innermost place that holds both, and straight to the question where it is on the way.
  const Occurrence* shared = &within;
  while (shared->of) {
    if (shared->of->item == &question) return shared->of;
    if (isAbove(shared->of->item, question)) break;
    shared = shared->of->within;
  }
  const Item* above = shared->of ? shared->of->item : nullptr;
  const auto path = pathBelow(above, question);
  const auto fromPath = pathBelow(above, from);
  const bool isBefore = order_.at(path.front()) <= order_.at(fromPath.front());
  std::vector<const Occurrence*> places{shared};
  for (const Item* step : path) {
    std::vector<const ResponseItem*> found;
    for (const Occurrence* place : places) {
      const auto here = ResponseTree::find(*place, *step);
      found.insert(found.end(), here.begin(), here.end());
    }
    if (found.empty()) return nullptr;
    if (step == &question) return isBefore ? found.back() : found.front();
    places.clear();
    for (const ResponseItem* each : found) {
      for (const auto& occurrence : each->occurrences) places.push_back(occurrence.get());
    }
  }
  return nullptr;
}

}  // namespace stile::answers
