// What a letter asks, each question beside the reasons it follows from.
#pragma once

#include <string>
#include <vector>

#include "documents/letter_texts.h"
#include "screening/screening.h"

namespace stile::documents {

/// A paragraph for every set of questions with all reasons that lead to it: first the findings `toClear`,
/// which wait for the answer to the letter's one question, then what else certain findings ask of the
/// service. Nothing that the screening asks of it is left out.
std::vector<std::string> asksOf(const screening::Screening& screening, const LetterTexts& texts,
                                const std::string& service, const std::vector<std::size_t>& toClear);

}  // namespace stile::documents
