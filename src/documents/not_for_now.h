// What the client leaves out for now, gravest first, each with what to do instead.
#pragma once

#include <vector>

#include "documents/document.h"
#include "documents/handout_texts.h"
#include "rules/vocabulary.h"
#include "screening/screening.h"

namespace stile::documents {

/// Lines in the box on the first page; the rest stands on the last.
inline constexpr std::size_t kNotForNowLines = 5;

/// Effort above what is open, then bans (those with the same instead in one line), movement caps and
/// settings. Every ban, cap and setting of the limits stands in some line.
std::vector<Row> notForNowRows(const screening::Screening& screening, const rules::Vocabulary& vocabulary,
                               const HandoutTexts& texts);

/// The bans and movement caps of `limits`, a sentence each, for a client who does no exercise yet.
std::vector<std::string> movementsToLeaveOut(const screening::Screening& screening, const limits::Limits& limits,
                                             const rules::Vocabulary& vocabulary, const HandoutTexts& texts);

/// The rows in boxes of a size that no page splits.
void addNotForNow(Section& section, std::vector<Row> rows);

}  // namespace stile::documents
