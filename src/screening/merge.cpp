#include "screening/merge.h"

#include <algorithm>
#include <tuple>

namespace stile::screening {
namespace {

using limits::Bay;
using limits::Clearance;
using limits::Limits;
using limits::Rung;

bool isAssessed(const rules::Finding& finding, const facts::FactSet& facts) {
  if (!finding.rule->assessable || finding.standing != rules::Standing::Certain) return false;
  const facts::FactSlots slots(facts, finding.rule->forEach, finding.repetition);
  return finding.rule->assessable->evaluate(slots).truth == expression::Truth::True;
}

End endOf(Limits limits) {
  End end;
  end.limits = std::move(limits);
  for (const Bay bay : limits::kBays) end.usable[bay] = usableRung(end.limits, bay);
  return end;
}

void add(Limits& all, const Limits& by, Merged what) { what == Merged::All ? tighten(all, by) : tightenDecision(all, by); }

/// Most findings are covered by nothing; theirs needs no copy.
bool isPlain(const rules::Finding& finding, const std::vector<Coverage>& coverage) {
  return coverage.empty() && !finding.rule->assessable;
}

void addContribution(Limits& all, const rules::Finding& finding, EndKind kind, const std::vector<Coverage>& coverage,
                     const facts::FactSet& facts, Merged what) {
  if (isPlain(finding, coverage))
    add(all, kind == EndKind::Floor ? finding.floor : finding.reach, what);
  else
    add(all, contributionOf(finding, kind, coverage, facts), what);
}

}  // namespace

Clearance remainingAbove(Rung upTo) {
  switch (upTo) {
    case Rung::None: return Clearance::BeforeAny;
    case Rung::Light: return Clearance::BeforeModerate;
    case Rung::Moderate: return Clearance::BeforeVigorous;
    case Rung::Vigorous: return Clearance::None;
  }
  return Clearance::BeforeAny;
}

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
    tighten(all, own);
  }
  return all;
}

Limits contributionOf(const rules::Finding& finding, EndKind kind, const std::vector<Coverage>& coverage,
                      const facts::FactSet& facts) {
  Limits limits = kind == EndKind::Floor ? finding.floor : finding.reach;
  if (isAssessed(finding, facts)) lift(limits, *finding.rule, {Rung::Vigorous, Rung::Vigorous});
  for (const Coverage& one : coverage)
    if (one.covers && one.ruleId == finding.rule->id && one.repetition == finding.repetition)
      lift(limits, *finding.rule, one.upTo);
  return limits;
}

Rung usableRung(limits::Action action, Clearance clearance, Rung ceiling) {
  if (action >= limits::Action::SameDay) return Rung::None;
  return std::min(ceiling, limits::leftOpenBy(clearance));
}

Rung wantedIntensity(const facts::FactSet& facts) {
  const facts::Definition* wanted = facts.dictionary().find("desiredIntensity");
  if (wanted == nullptr) return Rung::Light;
  const auto& value = facts.at(wanted->slot).value;
  return value.text ? limits::rungOf(*value.text).value_or(Rung::Light) : Rung::Light;
}

bool decisionIsSettled(const std::vector<rules::Finding>& findings, const Limits& reach) {
  const auto decision = [](const Limits& limits) {
    return std::tuple(limits.action, limits.clearance.aerobic, limits.clearance.strength, limits.ceiling.aerobic,
                      limits.ceiling.strength);
  };
  auto withOpen = decision(reach);
  auto& [action, clearanceAerobic, clearanceStrength, ceilingAerobic, ceilingStrength] = withOpen;
  for (const rules::Finding& finding : findings) {
    if (finding.standing != rules::Standing::Open || finding.counted != rules::IfUnknown::Cautious) continue;
    action = std::max(action, finding.floor.action);
    clearanceAerobic = std::max(clearanceAerobic, finding.floor.clearance.aerobic);
    clearanceStrength = std::max(clearanceStrength, finding.floor.clearance.strength);
    ceilingAerobic = std::min(ceilingAerobic, finding.floor.ceiling.aerobic);
    ceilingStrength = std::min(ceilingStrength, finding.floor.ceiling.strength);
  }
  return withOpen == decision(reach);
}

End mergeEnd(const std::vector<rules::Finding>& findings, EndKind kind, const std::vector<Coverage>& coverage,
             const std::vector<ClearanceReply>& replies, const facts::FactSet& facts, Merged what) {
  Limits all = limitsOfReplies(replies, coverage);
  for (const rules::Finding& finding : findings) addContribution(all, finding, kind, coverage, facts, what);
  return endOf(std::move(all));
}

End mergeIfGranted(const std::vector<rules::Finding>& findings, Rung wanted, const std::vector<Coverage>& coverage,
                   const std::vector<ClearanceReply>& replies, const facts::FactSet& facts, Merged what) {
  Limits all = limitsOfReplies(replies, coverage);
  for (const rules::Finding& finding : findings) {
    if (finding.standing != rules::Standing::Certain) {
      addContribution(all, finding, EndKind::Floor, coverage, facts, what);
      continue;
    }
    Limits limits;
    isPlain(finding, coverage) ? add(limits, finding.floor, what)
                               : add(limits, contributionOf(finding, EndKind::Floor, coverage, facts), what);
    lift(limits, *finding.rule, {wanted, wanted});
    add(all, limits, what);
  }
  return endOf(std::move(all));
}

}  // namespace stile::screening
