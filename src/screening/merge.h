// Findings and clearances merged into the two ends of a decision.
#pragma once

#include <vector>

#include "screening/screening.h"

namespace stile::screening {

enum class EndKind { Floor, Reach };

/// What one finding contributes at one end after clearances and assessments.
limits::Limits contributionOf(const rules::Finding& finding, EndKind kind, const std::vector<Coverage>& coverage,
                              const facts::FactSet& facts);

/// The highest usable rung of a bay: the lower of the ceiling and what clearance leaves open; none
/// from same-day action upward. This function lives once.
limits::Rung usableRung(const limits::Limits& limits, limits::Bay bay);

/// Merges every finding's contribution; the physician's own limits join as one more finding.
End mergeEnd(const std::vector<rules::Finding>& findings, EndKind kind, const std::vector<Coverage>& coverage,
             const std::vector<ClearanceReply>& replies, const facts::FactSet& facts);

/// The floor as if every clearance that a certain finding asks for were granted up to `wanted`.
End mergeIfGranted(const std::vector<rules::Finding>& findings, limits::Rung wanted, const std::vector<Coverage>& coverage,
                   const std::vector<ClearanceReply>& replies, const facts::FactSet& facts);

}  // namespace stile::screening
