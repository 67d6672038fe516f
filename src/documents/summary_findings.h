// The findings on the summary: certain ones, those not yet known, and what each rung rests on.
#pragma once

#include "documents/document.h"
#include "documents/finding_numbers.h"
#include "documents/source_list.h"
#include "documents/summary_brief.h"
#include "records/decision_notes.h"
#include "screening/screening.h"

namespace stile::documents {

/// Gives every certain finding its number: by weight, those of the rules on medicines last.
FindingNumbers numbersOf(const screening::Screening& screening);

/// The gravest certain findings with what they say and the facts they rest on; the next by title, the
/// others counted. `ofMedicines`: those of the rules on medicines, or all others. A finding that a clinician
/// decided otherwise carries that beside it, and is never among those named by title only.
std::vector<Row> briefFindingRows(const screening::Screening& screening, const FindingNumbers& numbers,
                                  const records::DecisionNotes& notes, const Brief& brief, bool ofMedicines);
/// Every certain finding by number, with all facts it rests on and its sources.
std::vector<Row> fullFindingRows(const screening::Screening& screening, SourceList& sources,
                                 const FindingNumbers& numbers, const records::DecisionNotes& notes);
/// Open findings, gravest first, with the answers that are missing.
std::vector<Row> openFindingRows(const screening::Screening& screening, SourceList& sources);
/// How many findings wait for an answer.
std::size_t openFindings(const screening::Screening& screening);
/// Rungs that are not open, those with the same reasons together, each reason with its key.
std::vector<Row> rungRows(const screening::Screening& screening, const FindingNumbers& numbers);

}  // namespace stile::documents
