#include "answers/regex_match.h"

#include "expression/evaluator.h"

namespace stile::answers {

expression::Truth matchesWhole(const std::string& pattern, const std::string& text) {
  using expression::Truth;
  base::Issues ignored;  // the caller tells that the pattern could not be used
  static const auto matcher = [] {
    base::Issues none;
    return expression::Expression::parse("matchesFull(%pattern)", "regex", none);
  }();
  if (!matcher) return Truth::Unknown;
  expression::Environment environment;
  environment.variables["pattern"] = {expression::Item::text(pattern)};
  const auto result = matcher->evaluate({expression::Item::text(text)}, environment, ignored);
  const auto holds = result ? expression::asCondition(*result) : std::nullopt;
  if (!holds || result->empty()) return Truth::Unknown;
  return *holds ? Truth::True : Truth::False;
}

}  // namespace stile::answers
