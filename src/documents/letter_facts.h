// What a letter tells of a client: symptoms, conditions, medicines, readings, what was answered no.
// Only what is known for certain; what is not is said to be so.
#pragma once

#include <vector>

#include "documents/document.h"
#include "documents/letter_texts.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// One row each, in the order of the letter; empty ones are left out. What this kind of letter does without
/// is counted, so that its reader can ask for it.
std::vector<Row> letterFactRows(const screening::Screening& screening, const screening::Content& content,
                                const LetterTexts& texts, const LetterKind& kind);

/// Test results and facts that this kind of letter names by itself; what was not answered says so.
std::vector<Row> letterTestRows(const screening::Screening& screening, const LetterTexts& texts, const LetterKind& kind);

}  // namespace stile::documents
