// One given answer held against one condition (enableWhen). For src/answers only.
#pragma once

#include "answers/response_tree.h"
#include "expression/value.h"

namespace stile::answers {

/// Whether the answer satisfies `op` with the condition's value; never asked for Exists or NotEqual.
/// False where the two are of different kinds. Unknown where it cannot be told: quantities whose units
/// cannot be compared, dates known in part.
expression::Truth matches(const Occurrence& answer, const questionnaire::EnableWhen& condition,
                          questionnaire::EnableOperator op);

}  // namespace stile::answers
