// The findings on the summary: certain ones, those not yet known, and what each rung rests on.
#pragma once

#include "documents/document.h"
#include "documents/finding_numbers.h"
#include "documents/source_list.h"
#include "screening/screening.h"

namespace stile::documents {

/// Rows shown in full before the rest is set compact.
inline constexpr std::size_t kRowsInFull = 8;
/// More rows than this behind the summary are named by their titles only: a screening with little
/// known would fill a binder.
inline constexpr std::size_t kRowsBehind = 24;

/// The rows as blocks: the first `shown` in full, the rest compact.
std::vector<Block> rowsThenCompact(std::vector<Row> rows, std::size_t shown = kRowsInFull);

/// Certain findings, gravest first, with the facts they rest on and their sources. `ofMedicines`:
/// those of the rules on medicines, or all others. Each gets its number.
std::vector<Row> certainFindingRows(const screening::Screening& screening, SourceList& sources,
                                    FindingNumbers& numbers, bool ofMedicines);
/// Open findings, gravest first, with the answers that are missing.
std::vector<Row> openFindingRows(const screening::Screening& screening, SourceList& sources);
/// Rungs that are not open, those with the same reasons together.
std::vector<Row> rungRows(const screening::Screening& screening);

}  // namespace stile::documents
