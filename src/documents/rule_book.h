// The rule book: every rule as a table row, in words: if, then, if unknown, source, reviewed; then policies,
// doses, wishes, exercises, norms and checks. For the clinical lead who answers for them.
#pragma once

#include "documents/document.h"
#include "records/clinic_settings.h"
#include "screening/content.h"

namespace stile::documents {

/// All rules by topic, the policies, what rule_book_doses.h adds, and the bibliography.
Document ruleBookOf(const screening::Content& content, const records::ClinicSettings& settings);

/// One rule in the words of the book: if, then, if unknown, what it says, sources, reviewed.
std::vector<Row> ruleRows(const rules::Rule& rule, const screening::Content& content);

/// A condition with facts by their labels and units in everyday signs.
std::string conditionInWords(const std::string& condition, const facts::Dictionary& dictionary);

}  // namespace stile::documents
