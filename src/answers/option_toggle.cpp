#include "answers/option_toggle.h"

#include <algorithm>

#include "expression/evaluator.h"

namespace stile::answers {
namespace {

using expression::Truth;
using questionnaire::Option;

bool isOneOf(const Option& option, const std::vector<Option>& list) {
  return std::any_of(list.begin(), list.end(), [&](const Option& other) {
    const bool isSystem = other.system.empty() || other.system == option.system;
    return other.type == option.type && other.code == option.code && isSystem;
  });
}

}  // namespace

Truth mayChoose(const Option& option, const ExpressionPlace& place, ExpressionScope& scope,
                base::Issues& issues) {
  Truth result = Truth::True;
  for (const questionnaire::OptionToggle& toggle : place.item->toggles) {
    if (!isOneOf(option, toggle.options)) continue;
    const auto value = scope.evaluate(toggle.condition, place, issues);
    const auto holds = value ? expression::asCondition(*value) : std::nullopt;
    const Truth truth = !holds ? Truth::Unknown : *holds ? Truth::True : Truth::False;
    result = expression::truthAnd(result, truth);
  }
  return result;
}

std::vector<const Option*> shutOptions(const ExpressionPlace& place, ExpressionScope& scope) {
  std::vector<const Option*> shut;
  if (place.item->toggles.empty()) return shut;
  for (const Option& option : place.item->options) {
    base::Issues ignored;  // what cannot be decided stays open and is told when it is chosen
    if (mayChoose(option, place, scope, ignored) == Truth::False) shut.push_back(&option);
  }
  return shut;
}

}  // namespace stile::answers
