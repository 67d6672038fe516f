// A decision that follows one person's answers: most of what one answer leaves as it was is not worked out
// again.
#pragma once

#include "rules/finding_reads.h"
#include "screening/screening.h"

namespace stile::screening {

/// The same as decide(), out of an earlier decision of the same content, replies and day: findings that rest
/// on nothing that has changed since are taken over from it. `reads` is of the content's rules.
Screening decideAgain(const Content& content, const rules::FindingReads& reads, Screening before,
                      const facts::FactSet& facts, const std::vector<ClearanceReply>& replies);

}  // namespace stile::screening
