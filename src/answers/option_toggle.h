// Options that may be chosen only while a condition of the form holds (answerOptionsToggleExpression).
// For src/answers only.
#pragma once

#include <vector>

#include "answers/expression_scope.h"

namespace stile::answers {

/// Whether the option may be chosen as the answers stand. True where no condition speaks of it, Unknown
/// where its condition ends in an error.
expression::Truth mayChoose(const questionnaire::Option& option, const ExpressionPlace& place,
                            ExpressionScope& scope, base::Issues& issues);

/// The options of the question that may not be chosen as the answers stand.
std::vector<const questionnaire::Option*> shutOptions(const ExpressionPlace& place, ExpressionScope& scope);

}  // namespace stile::answers
