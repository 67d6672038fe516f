#include "rules/judgement.h"

#include <algorithm>

#include "rules/instantiate.h"

namespace stile::rules {
namespace {

using expression::Truth;
using facts::UnknownAs;
using facts::UnknownReason;
using limits::Limits;

bool isOptionalNow(const facts::Definition& fact, const facts::FactSlots& slots) {
  if (fact.optionalWhen) return fact.optionalWhen->evaluate(slots).truth == Truth::True;
  return fact.unknownAs == UnknownAs::Optional;
}

/// The rule's mode, if every fact that keeps the rule open is of that class; otherwise Cautious. A rule of
/// another mode that also lets the unknown pass does so while an optional fact is among them.
IfUnknown modeThatApplies(const Rule& rule, const std::vector<int>& deciding, const facts::FactSet& facts,
                          const facts::FactSlots& slots) {
  const bool alsoPasses = rule.ifUnknown != IfUnknown::Pass && !rule.passReason.empty();
  if (alsoPasses && std::any_of(deciding.begin(), deciding.end(),
                                [&](int slot) { return isOptionalNow(facts.dictionary().at(slot), slots); }))
    return IfUnknown::Pass;
  const bool all = std::all_of(deciding.begin(), deciding.end(), [&](int slot) {
    const facts::Definition& fact = facts.dictionary().at(slot);
    switch (rule.ifUnknown) {
      case IfUnknown::Cautious:
        return false;
      case IfUnknown::Gate:
        return fact.unknownAs == UnknownAs::Gate;
      case IfUnknown::Lowest:
        return fact.unknownAs == UnknownAs::Lowest;
      case IfUnknown::Pass:
        return isOptionalNow(fact, slots);
    }
    return false;
  });
  return all ? rule.ifUnknown : IfUnknown::Cautious;
}

bool wasAskedInVain(const std::vector<int>& deciding, const facts::FactSlots& slots) {
  return std::any_of(deciding.begin(), deciding.end(), [&](int slot) {
    const UnknownReason reason = slots.factOf(slot).reason;
    return reason == UnknownReason::NotSure || reason == UnknownReason::Declined;
  });
}

Limits lowestPartOf(const Limits& full) {
  Limits part;
  part.doseCaps = full.doseCaps;
  part.supervision = full.supervision;
  for (const auto& ban : full.bans)
    if (ban.ban == "unsupportedBalance") part.bans.insert(ban);
  return part;
}

Limits floorOfOpen(const Rule& rule, const Judgement& judgement, const Limits& full,
                   const facts::FactSlots& slots) {
  const auto meanwhile = [&] { return rule.meanwhile ? instantiate(*rule.meanwhile, slots) : Limits{}; };
  Limits floor;
  switch (judgement.counted) {
    case IfUnknown::Cautious:
      floor = full;
      floor.referrals.clear();  // a referral is a call: it waits for certainty
      // A mode that does not apply must not be milder than the one that would.
      if (rule.meanwhile) tighten(floor, meanwhile());
      if (rule.gate) floor.gates[rule.gate->measure] = *rule.gate;
      break;
    case IfUnknown::Gate:
      floor = meanwhile();
      if (rule.gate) floor.gates[rule.gate->measure] = *rule.gate;
      break;
    case IfUnknown::Lowest:
      floor = lowestPartOf(full);
      break;
    case IfUnknown::Pass:
      // In a rule of another mode, what holds meanwhile belongs to that mode.
      if (rule.ifUnknown == IfUnknown::Pass) floor = meanwhile();
      break;
  }
  return floor;
}

}  // namespace

facts::FactSlots slotsOf(const Rule& rule, const facts::FactSet& facts, int repetition, base::Date today) {
  return facts::FactSlots(facts, rule.forEach, repetition, rule.maxAge.empty() ? nullptr : &rule.maxAge,
                          today);
}

Judgement judge(const Rule& rule, const facts::FactSet& facts, const facts::FactSlots& slots) {
  Judgement judgement;
  judgement.truth = rule.when.evaluate(slots).truth;
  if (judgement.truth == Truth::False) return judgement;
  judgement.deciding = rule.when.decidedBy(slots);
  if (judgement.truth == Truth::True) return judgement;
  judgement.counted = modeThatApplies(rule, judgement.deciding, facts, slots);
  if (rule.whenUnsure && wasAskedInVain(judgement.deciding, slots)) judgement.unsureCall = *rule.whenUnsure;
  return judgement;
}

Contribution contributionOf(const Rule& rule, const Judgement& judgement, const facts::FactSlots& slots) {
  Contribution contribution;
  contribution.full = instantiate(rule.then, slots);
  if (judgement.truth == Truth::True) {
    contribution.floor = contribution.reach = contribution.full;
    return contribution;
  }
  contribution.floor = floorOfOpen(rule, judgement, contribution.full, slots);
  contribution.floor.action = std::max(contribution.floor.action, judgement.unsureCall);
  contribution.reach.action = judgement.unsureCall;
  return contribution;
}

}  // namespace stile::rules
