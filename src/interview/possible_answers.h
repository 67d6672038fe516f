// Which answers a question can have, as far as rules and forms can tell them apart.
#pragma once

#include "base/date.h"
#include "interview/question.h"
#include "rules/rule_set.h"

namespace stile::interview {

/// Choices with more options than this are tried with each option alone and with all together.
inline constexpr std::size_t kMostOptionsCombined = 3;

/// Fills in `answers` and `isComplete` of every question.
void fillInPossibleAnswers(Questions& questions, const facts::Dictionary& dictionary, const rules::RuleSet& rules,
                           const questionnaire::Form& form, base::Date today);

}  // namespace stile::interview
