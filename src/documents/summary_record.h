// What was told, measured, given and asked: the record parts of the summary.
#pragma once

#include <cstdint>

#include "base/issue.h"
#include "documents/document.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// True when the fact has a value that counts today.
bool isKnown(const facts::Fact& fact);

/// Who is to act and by when, soonest first. `most`: so many sentences of why, of what to ask and of
/// what to do meanwhile; with one, the last is left out.
std::vector<Row> referralRows(const screening::Screening& screening, const rules::RuleSet& rules,
                              std::size_t most = SIZE_MAX);
/// Tests with published norms, each with a small plot.
std::vector<Row> testRows(const screening::Screening& screening);
/// Other readings and their published classes, medicines, and the acute questions and symptoms that
/// were answered no.
std::vector<Row> recordRows(const screening::Screening& screening, const facts::Reference& reference);
std::vector<Row> clearanceRows(const screening::Screening& screening, const rules::RuleSet& rules);
/// Policies that decided: title and choice, and with `isFull` what they decide.
std::vector<Row> policyRows(const screening::Screening& screening, bool isFull);
/// Every open question, those with the same stake in one row with their number. `most`: so many by name.
std::vector<Row> questionRows(const screening::Screening& screening, std::size_t most = SIZE_MAX);
/// Pieces run on under one term, in rows short enough to be broken between pages.
void addRunOn(std::vector<Row>& rows, const std::string& term, const std::vector<std::string>& pieces, const char* between);
std::vector<Row> askedBackRows(const base::Issues& askedBack);

}  // namespace stile::documents
