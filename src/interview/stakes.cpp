#include "interview/stakes.h"

#include <algorithm>

#include "facts/derivation_order.h"

namespace stile::interview {
namespace {

using limits::Bay;
using limits::Rung;
using screening::EndKind;

/// What a rule that is certain asks for whatever else becomes known.
Decision unmovable(const Decision& decision, const rules::Rule& rule, bool hasReply) {
  if (!hasReply && !rule.assessable) return decision;
  Decision least;
  least.action = decision.action;
  return least;
}

/// Whether an open rule rests on the fact no further than its own mode: then it would be gated, or be held
/// at the lowest, or pass, and the decision is settled all the same.
bool isOfRulesMode(const rules::Rule& rule, const facts::Definition& fact) {
  switch (rule.ifUnknown) {
    case rules::IfUnknown::Cautious: return false;
    case rules::IfUnknown::Gate: return fact.unknownAs == facts::UnknownAs::Gate;
    case rules::IfUnknown::Lowest: return fact.unknownAs == facts::UnknownAs::Lowest;
    case rules::IfUnknown::Pass: return fact.unknownAs == facts::UnknownAs::Optional || fact.optionalWhen;
  }
  return false;
}

bool asksSomething(const Decision& decision) { return decision != Decision{}; }

}  // namespace

Stakes::Stakes(const Position& position) : position_(position), totals_(position.totals()),
      memo_(static_cast<std::size_t>(position.ground().dictionary().size())), stakeAt_(position.ground().questions().all().size(), nullptr) {
  const Ground& ground = position.ground();
  // While the wanted intensity is not known, a granted clearance may lift everything.
  const int wanted = ground.wantedSlot();
  const bool isWantedKnown = wanted < 0 || position.facts().at(wanted).value.isSettled();
  const Rung upTo = isWantedKnown ? ground.wantedIntensity(position.facts()) : Rung::Vigorous;
  for (std::size_t i = 0; i < position.states().size(); ++i) {
    const rules::Rule& rule = ground.rules().rules[i];
    for (const RuleState& state : position.states()[i]) {
      if (!state.isCertain()) continue;
      certainAtFloor_.tighten(unmovable(state.floor->decision, rule, ground.hasReply(i)));
      certainAtReach_.tighten(unmovable(state.reach->decision, rule, ground.hasReply(i)));
      Decision granted = unmovable(state.floor->decision, rule, ground.hasReply(i));
      screening::lift(granted, rule, {upTo, upTo});
      certainGranted_.tighten(granted);
      if (!ground.shape(i).isFixed) continue;
      atFloor_.add(state.floor->atoms);
      atReach_.add(state.reach->atoms);
    }
  }
  for (std::size_t i = 0; i < position.states().size(); ++i)
    for (std::size_t repetition = 0; repetition < position.states()[i].size(); ++repetition) {
      const bool isGrouped = !ground.rules().rules[i].forEach.empty();
      addRule(i, isGrouped ? static_cast<int>(repetition) : -1, position.states()[i][repetition]);
    }
  addWanted();
}

const Stake* Stakes::of(const QuestionRef& question) const {
  const auto at = all_.find(question);
  return at == all_.end() ? nullptr : &at->second;
}

Stake Stakes::stakeOf(std::size_t index, const RuleState& state) const {
  const RuleShape& shape = position_.ground().shape(index);
  Stake stake;
  const Decision& floor = shape.mostAtFloor.decision;
  const Decision& reach = shape.mostAtReach.decision;
  if (state.isCertain()) {
    // Only a reply or an assessment still moves the decision of a certain rule.
    const bool isMovable = position_.ground().hasReply(index) || position_.ground().rules().rules[index].assessable;
    stake.decides = isMovable && asksSomething(floor);
  } else {
    stake.decides = !floor.isAtMost(certainAtFloor_) || !reach.isAtMost(certainAtReach_) || !floor.isAtMost(certainGranted_);
    if (state.judgement.counted != rules::IfUnknown::Pass && shape.fullAction > certainAtReach_.action)
      stake.couldBecome = shape.fullAction;
  }
  const auto addParts = [&](const Demands& demands, const Strictest& certain) {
    for (const LimitAtom& atom : demands.atoms)
      if (!shape.isFixed || !certain.covers(atom, position_.keys()))
        stake.parts |= 1u << static_cast<unsigned>(position_.keys().partOf(atom.key));
  };
  addParts(shape.mostAtFloor, atFloor_);
  addParts(shape.mostAtReach, atReach_);
  if (!stake.decides) return stake;
  for (const Bay bay : limits::kBays)
    for (const auto* certain : {&certainAtFloor_, &certainAtReach_}) {
      Decision gravest = *certain;
      gravest.tighten(certain == &certainAtFloor_ ? floor : reach);
      for (const Rung rung : {Rung::Light, Rung::Moderate, Rung::Vigorous})
        if (rung > gravest.usable(bay) && rung <= certain->usable(bay)) stake.rungs[bay] |= 1u << static_cast<unsigned>(rung);
    }
  return stake;
}

Stakes::Leaves Stakes::holders(const rules::Rule& rule, const RuleState& state, int repetition) {
  Leaves leaves;
  const bool holds = state.isOpen() && state.judgement.counted == rules::IfUnknown::Cautious &&
                     !state.floor->decision.isAtMost(totals_.reach);
  if (!holds) return leaves;
  for (const int slot : state.judgement.deciding)
    if (!isOfRulesMode(rule, position_.ground().dictionary().at(slot))) addLeaves(slot, repetition, leaves);
  return leaves;
}

void Stakes::addRule(std::size_t index, int repetition, const RuleState& state) {
  if (state.isOut()) return;
  const Ground& ground = position_.ground();
  const RuleShape& shape = ground.shape(index);
  const rules::Rule& rule = ground.rules().rules[index];
  if (state.isCertain() && shape.isFixed && !ground.hasReply(index)) return;
  const Stake own = stakeOf(index, state);
  if (!own.mattersForLimits()) return;
  Leaves leaves;
  if (state.isOpen()) {
    for (const int slot : state.judgement.deciding) addLeaves(slot, repetition, leaves);
    const auto& condition = rule.when.slotsRead();
    for (const int slot : shape.reads)
      if (std::find(condition.begin(), condition.end(), slot) == condition.end()) addLeaves(slot, repetition, leaves);
    // With an age of the rule's own a fact may be too old here that counts elsewhere.
    for (const auto& [slot, age] : rule.maxAge) addInputs(slot, repetition, leaves, 0);
  } else {
    for (const int slot : shape.certainReads) addLeaves(slot, repetition, leaves);
  }
  std::sort(leaves.begin(), leaves.end());
  leaves.erase(std::unique(leaves.begin(), leaves.end()), leaves.end());
  for (const QuestionRef& leaf : leaves) {
    Stake& stake = stakeFor(leaf);
    stake.couldBecome = std::max(stake.couldBecome, own.couldBecome);
    stake.decides = stake.decides || own.decides;
    stake.parts |= own.parts;
    for (const Bay bay : limits::kBays) stake.rungs[bay] |= own.rungs[bay];
    if (stake.rules.empty() || stake.rules.back() != static_cast<int>(index)) stake.rules.push_back(static_cast<int>(index));
  }
  for (const QuestionRef& leaf : holders(rule, state, repetition)) stakeFor(leaf).holds = true;
}

Stake& Stakes::stakeFor(const QuestionRef& question) {
  if (question.repetition >= 0) return all_[question];
  Stake*& at = stakeAt_[static_cast<std::size_t>(question.place)];
  if (at == nullptr) at = &all_[question];
  return *at;
}

void Stakes::addLeaves(int slot, int repetition, Leaves& leaves) {
  const Leaves& found = leavesOf(slot, repetition);
  leaves.insert(leaves.end(), found.begin(), found.end());
}

/// The questions behind an unsettled fact, and those behind the conditions under which they apply.
const Stakes::Leaves& Stakes::leavesOf(int slot, int repetition) {
  const facts::Dictionary& dictionary = position_.ground().dictionary();
  if (dictionary.at(slot).groupIndex < 0) repetition = -1;
  Leaves* known = nullptr;
  if (repetition < 0) {
    std::optional<Leaves>& at = memo_[static_cast<std::size_t>(slot)];
    if (at) return *at;
    known = &at.emplace();
  } else {
    const auto [at, isNew] = memoOfGroups_.emplace(std::pair(slot, repetition), Leaves{});
    if (!isNew) return at->second;
    known = &at->second;
  }
  Leaves leaves;
  const int group = dictionary.at(slot).groupIndex;
  if (group >= 0 && repetition >= position_.facts().repetitions(group)) return *known;
  for (const facts::FactRef& input : facts::openInputs(position_.facts(), slot, repetition)) {
    const int place = position_.ground().questions().placeOf(input.slot);
    if (place >= 0) leaves.push_back({place, input.repetition});
    addConditions(input.slot, input.repetition, leaves);
  }
  // A summary over a group that may not apply rests on what the group rests on.
  const int over = dictionary.at(slot).derived.groupIndex;
  if (over >= 0 && !position_.facts().at(slot, repetition).value.isSettled())
    for (const int member : dictionary.groupMembers(over)) addConditions(member, -1, leaves);
  std::sort(leaves.begin(), leaves.end());
  leaves.erase(std::unique(leaves.begin(), leaves.end()), leaves.end());
  return *known = std::move(leaves);
}

void Stakes::addConditions(int slot, int repetition, Leaves& leaves) {
  const facts::Dependents& dependents = position_.ground().dependents();
  const int group = position_.ground().dictionary().at(slot).groupIndex;
  for (const int entry : {dependents.entryOf(slot), group >= 0 ? dependents.entryOfGroup(group) : -1}) {
    if (entry < 0) continue;
    for (const int gate : dependents.plan().entries()[static_cast<std::size_t>(entry)].gates) addLeaves(gate, repetition, leaves);
  }
}

/// Every question a fact derives from, settled or not.
void Stakes::addInputs(int slot, int repetition, Leaves& leaves, int depth) {
  constexpr int kDeepest = 32;  // derivations have no circles; this only bounds the walk
  const facts::Definition& fact = position_.ground().dictionary().at(slot);
  if (!fact.isDerived()) {
    const int place = position_.ground().questions().placeOf(slot);
    if (place >= 0) leaves.push_back({place, fact.groupIndex >= 0 ? std::max(repetition, 0) : -1});
    addConditions(slot, repetition, leaves);
    return;
  }
  if (depth == kDeepest) return;
  for (const int read : facts::slotsReadBy(fact)) addInputs(read, repetition, leaves, depth + 1);
}

/// What would be open if clearances were granted rests on the intensity the client wants.
void Stakes::addWanted() {
  const int wanted = position_.ground().wantedSlot();
  if (wanted < 0 || position_.facts().at(wanted).value.isSettled()) return;
  const int place = position_.ground().questions().placeOf(wanted);
  if (place < 0) return;
  for (std::size_t i = 0; i < position_.states().size(); ++i) {
    Decision held = position_.ground().shape(i).mostAtFloor.decision;
    const Decision before = held;
    screening::lift(held, position_.ground().rules().rules[i], {Rung::Vigorous, Rung::Vigorous});
    if (held == before) continue;
    for (const RuleState& state : position_.states()[i]) {
      if (state.isOut() || before.isAtMost(certainGranted_)) continue;
      stakeFor({place, -1}).decides = true;
      return;
    }
  }
}

}  // namespace stile::interview
