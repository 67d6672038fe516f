// Findings and clearances merged into the two ends of a decision.
#pragma once

#include <algorithm>
#include <vector>

#include "screening/screening.h"

namespace stile::screening {

enum class EndKind { Floor, Reach };

/// What is merged: action, clearances and ceilings, or all limits.
enum class Merged { Decision, All };

/// What one finding contributes at one end after clearances and assessments.
limits::Limits contributionOf(const rules::Finding& finding, EndKind kind, const std::vector<Coverage>& coverage,
                              const facts::FactSet& facts);

/// The highest usable rung of a bay: the lower of the ceiling and what clearance leaves open; none
/// from same-day action upward. This function lives once.
limits::Rung usableRung(limits::Action action, limits::Clearance clearance, limits::Rung ceiling);
inline limits::Rung usableRung(const limits::Limits& limits, limits::Bay bay) {
  return usableRung(limits.action, limits.clearance[bay], limits.ceiling[bay]);
}

/// The mildest clearance that still leaves `upTo` open.
limits::Clearance remainingAbove(limits::Rung upTo);

/// Lifts the clearance, and the ceilings that wait for a clearance, up to `upTo`. Nothing else.
/// `Held` has `clearance` and `ceiling` per bay, as Limits has.
template <class Held>
void lift(Held& held, const rules::Rule& rule, const limits::PerBay<limits::Rung>& upTo) {
  for (const limits::Bay bay : limits::kBays) {
    if (upTo[bay] == limits::Rung::None) continue;
    held.clearance[bay] = std::min(held.clearance[bay], remainingAbove(upTo[bay]));
    if (rule.until.key == rules::KeyKind::Clearance || rule.until.key == rules::KeyKind::Assessment)
      held.ceiling[bay] = std::max(held.ceiling[bay], upTo[bay]);
  }
}

/// The physician's own limits, from every reply that covers something.
limits::Limits limitsOfReplies(const std::vector<ClearanceReply>& replies, const std::vector<Coverage>& coverage);

/// The intensity the client wants; while it is not known, the lowest.
limits::Rung wantedIntensity(const facts::FactSet& facts);

/// Settled: no open finding that counts in full changes the action, a clearance or a ceiling.
bool decisionIsSettled(const std::vector<rules::Finding>& findings, const limits::Limits& reach);

/// Merges every finding's contribution; the physician's own limits join as one more finding.
End mergeEnd(const std::vector<rules::Finding>& findings, EndKind kind, const std::vector<Coverage>& coverage,
             const std::vector<ClearanceReply>& replies, const facts::FactSet& facts, Merged what);

/// The floor as if every clearance that a certain finding asks for were granted up to `wanted`.
End mergeIfGranted(const std::vector<rules::Finding>& findings, limits::Rung wanted, const std::vector<Coverage>& coverage,
                   const std::vector<ClearanceReply>& replies, const facts::FactSet& facts, Merged what);

}  // namespace stile::screening
