// The findings on the summary: certain ones, those not yet known, and what each rung rests on.
#pragma once

#include "documents/document.h"
#include "documents/source_list.h"
#include "screening/screening.h"

namespace stile::documents {

/// Rows shown before the rest folds.
inline constexpr std::size_t kRowsBeforeFold = 8;
/// More folded rows than this are not printed: a screening with little known would fill a binder.
inline constexpr std::size_t kRowsPrinted = 24;

/// The rows as blocks: the first `shown`, then "and N more" folded.
std::vector<Block> foldedRows(std::vector<Row> rows, std::size_t shown = kRowsBeforeFold);

/// Certain findings, gravest first, with the facts they rest on and their sources.
std::vector<Row> certainFindingRows(const screening::Screening& screening, SourceList& sources);
/// Open findings, gravest first, with the answers that are missing.
std::vector<Row> openFindingRows(const screening::Screening& screening, SourceList& sources);
/// Rungs that are not open, those with the same reasons together.
std::vector<Row> rungRows(const screening::Screening& screening);

}  // namespace stile::documents
