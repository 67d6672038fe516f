// One answer of any type held against its question: format, limits, options. For src/answers only.
#pragma once

#include "answers/response_tree.h"
#include "base/issue.h"

namespace stile::answers {

/// Issues, with the place of the value: a type that does not fit, a value that is no proper FHIR value,
/// outside the limits, too long, with too many decimals, not offered, in a unit that is not offered.
/// A note where the form does not hold the list of options.
void checkAnswer(const Occurrence& answer, const questionnaire::Item& question, base::Issues& issues);

}  // namespace stile::answers
