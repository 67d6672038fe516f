#include "answers/score.h"

#include "answers/option_checker.h"

namespace stile::answers {

std::optional<base::Rational> scoreOf(const Occurrence& answer, const questionnaire::Item& question) {
  const questionnaire::Option* option = optionOf(answer, question);
  if (!option || !option->score) return std::nullopt;
  return question.weight ? base::Rational::multiply(*option->score, *question.weight) : option->score;
}

std::optional<base::Rational> scoreOf(const ResponseItem& question) {
  std::optional<base::Rational> sum;
  for (const auto& answer : question.occurrences) {
    if (!answer->value) continue;
    const auto score = scoreOf(*answer, *question.item);
    if (!score) return std::nullopt;
    sum = sum ? base::Rational::add(*sum, *score) : score;
    if (!sum) return std::nullopt;
  }
  return sum;
}

}  // namespace stile::answers
