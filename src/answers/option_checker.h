// Whether an answer is among the options of its question, and the answers of one question together. For
// src/answers only.
#pragma once

#include "answers/response_tree.h"
#include "base/issue.h"

namespace stile::answers {

/// The option that the answer names, or nullptr.
const questionnaire::Option* optionOf(const Occurrence& answer, const questionnaire::Item& question);

/// An issue when the answer is not offered; a note when the form does not hold the whole list.
void checkOffered(const Occurrence& answer, const questionnaire::Item& question, base::Issues& issues);

/// An issue when an exclusive option stands beside others; a note when one answer stands twice.
void checkTogether(const ResponseItem& question, base::Issues& issues);

}  // namespace stile::answers
