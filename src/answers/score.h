// Scores of answers: the ordinal value of the chosen option, times the weight of its question.
#pragma once

#include <optional>

#include "answers/response_tree.h"
#include "base/rational.h"

namespace stile::answers {

/// The score of one answer. nullopt when its option has none, or it is no option.
std::optional<base::Rational> scoreOf(const Occurrence& answer, const questionnaire::Item& question);

/// The sum over the answers of one question. nullopt when it has no answer or one of them no score:
/// a missing score is not nought.
std::optional<base::Rational> scoreOf(const ResponseItem& question);

}  // namespace stile::answers
