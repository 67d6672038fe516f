#include "screening/merge.h"

#include <algorithm>

namespace stile::screening {
namespace {

using limits::Bay;
using limits::Clearance;
using limits::Limits;
using limits::Rung;

/// The mildest clearance that still leaves `upTo` open.
Clearance remainingAbove(Rung upTo) {
  switch (upTo) {
    case Rung::None: return Clearance::BeforeAny;
    case Rung::Light: return Clearance::BeforeModerate;
    case Rung::Moderate: return Clearance::BeforeVigorous;
    case Rung::Vigorous: return Clearance::None;
  }
  return Clearance::BeforeAny;
}

/// Lifts the clearance, and the ceilings that wait for a clearance, up to `upTo`. Nothing else.
void lift(Limits& limits, const rules::Rule& rule, const limits::PerBay<Rung>& upTo) {
  for (const Bay bay : limits::kBays) {
    if (upTo[bay] == Rung::None) continue;
    limits.clearance[bay] = std::min(limits.clearance[bay], remainingAbove(upTo[bay]));
    if (rule.until.key == rules::KeyKind::Clearance || rule.until.key == rules::KeyKind::Assessment)
      limits.ceiling[bay] = std::max(limits.ceiling[bay], upTo[bay]);
  }
}

bool isAssessed(const rules::Finding& finding, const facts::FactSet& facts) {
  if (!finding.rule->assessable || finding.standing != rules::Standing::Certain) return false;
  const facts::FactSlots slots(facts, finding.rule->forEach, finding.repetition);
  return finding.rule->assessable->evaluate(slots).truth == expression::Truth::True;
}

/// The physician's own limits, from every reply that covers something.
Limits limitsOfReplies(const std::vector<ClearanceReply>& replies, const std::vector<Coverage>& coverage) {
  Limits all;
  for (const ClearanceReply& reply : replies) {
    const bool inForce = std::any_of(coverage.begin(), coverage.end(), [&](const Coverage& one) {
      return one.covers && one.ruleId == reply.ruleId && one.by == reply.by;
    });
    if (!inForce) continue;
    Limits own;
    own.heartRatePerMinute = reply.heartRatePerMinute;
    own.loadKilograms = reply.loadKilograms;
    if (reply.systolic) own.stopValues[{"restingBloodPressure", false, "mm[Hg]"}] = *reply.systolic;
    all = join(all, own);
  }
  return all;
}

End endOf(Limits limits) {
  End end;
  end.limits = std::move(limits);
  for (const Bay bay : limits::kBays) end.usable[bay] = usableRung(end.limits, bay);
  return end;
}

}  // namespace

Limits contributionOf(const rules::Finding& finding, EndKind kind, const std::vector<Coverage>& coverage,
                      const facts::FactSet& facts) {
  Limits limits = kind == EndKind::Floor ? finding.floor : finding.reach;
  if (isAssessed(finding, facts)) lift(limits, *finding.rule, {Rung::Vigorous, Rung::Vigorous});
  for (const Coverage& one : coverage)
    if (one.covers && one.ruleId == finding.rule->id && one.repetition == finding.repetition)
      lift(limits, *finding.rule, one.upTo);
  return limits;
}

Rung usableRung(const Limits& limits, Bay bay) {
  if (limits.action >= limits::Action::SameDay) return Rung::None;
  return std::min(limits.ceiling[bay], limits::leftOpenBy(limits.clearance[bay]));
}

End mergeEnd(const std::vector<rules::Finding>& findings, EndKind kind, const std::vector<Coverage>& coverage,
             const std::vector<ClearanceReply>& replies, const facts::FactSet& facts) {
  Limits all = limitsOfReplies(replies, coverage);
  for (const rules::Finding& finding : findings) all = join(all, contributionOf(finding, kind, coverage, facts));
  return endOf(std::move(all));
}

End mergeIfGranted(const std::vector<rules::Finding>& findings, Rung wanted, const std::vector<Coverage>& coverage,
                   const std::vector<ClearanceReply>& replies, const facts::FactSet& facts) {
  Limits all = limitsOfReplies(replies, coverage);
  for (const rules::Finding& finding : findings) {
    Limits limits = contributionOf(finding, EndKind::Floor, coverage, facts);
    if (finding.standing == rules::Standing::Certain) lift(limits, *finding.rule, {wanted, wanted});
    all = join(all, limits);
  }
  return endOf(std::move(all));
}

}  // namespace stile::screening
