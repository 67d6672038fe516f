// Whether an answer can be taken: the same checks as when a response is read, with words for the
// person at the keyboard.
#pragma once

#include <vector>

#include "answers/response.h"
#include "base/issue.h"
#include "interview/question.h"

namespace stile::interview {

/// An error for what is impossible (outside the possible range, an option not offered, a date after
/// today, two answers where one is allowed), an ask-back for what is implausible.
void checkAnswer(const FormQuestion& question, const std::vector<answers::Answer>& answers, base::Date today,
                 base::Issues& issues);

}  // namespace stile::interview
