// The annex of the summary: every finding, answer, limit, source and open question in full.
#pragma once

#include "base/issue.h"
#include "documents/document.h"
#include "documents/finding_numbers.h"
#include "records/decision_notes.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// One section that starts a page, its parts folded on a screen.
Section annexOf(const screening::Screening& screening, const screening::Content& content, const FindingNumbers& numbers,
                const base::Issues& askedBack, const records::DecisionNotes& notes);

}  // namespace stile::documents
