// What was told, measured, given and asked: the record parts of the summary.
#pragma once

#include "base/issue.h"
#include "documents/document.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// True when the fact has a value that counts today.
bool isKnown(const facts::Fact& fact);

std::vector<Row> referralRows(const screening::Screening& screening, const rules::RuleSet& rules);
/// Tests with published norms, each with a small plot.
std::vector<Row> testRows(const screening::Screening& screening);
/// Other readings and their published classes, medicines, and the acute questions and symptoms that
/// were answered no.
std::vector<Row> recordRows(const screening::Screening& screening, const facts::Reference& reference);
std::vector<Row> clearanceRows(const screening::Screening& screening, const rules::RuleSet& rules);
std::vector<Row> policyRows(const screening::Screening& screening);
/// Questions `from` up to `to` of the list, those with the same stake in one row.
std::vector<Row> questionRows(const screening::Screening& screening, std::size_t from, std::size_t to);
std::vector<Row> askedBackRows(const base::Issues& askedBack);

}  // namespace stile::documents
