// Facts as programs read them, with another age where a rule asks for one; and what keeps a fact open.
#include <algorithm>

#include "facts/derivation.h"
#include "facts/derivation_order.h"
#include "facts/fact_set.h"
#include "facts/freshness.h"

namespace stile::facts {
namespace {

using expression::Truth;

bool isOfReadings(const Definition& definition) {
  const DerivedKind kind = definition.derived.kind;
  return kind == DerivedKind::Mean || kind == DerivedKind::Worst || kind == DerivedKind::Last;
}

/// Whether another age can change what this fact says.
bool hasAge(const Dictionary& dictionary, int slot) {
  const Definition& definition = dictionary.at(slot);
  if (!definition.isDerived()) return definition.freshFor.has_value();
  if (isOfReadings(definition)) return true;
  if (definition.derived.kind != DerivedKind::Expression) return false;
  const std::vector<int> reads = slotsReadBy(definition);
  return std::any_of(reads.begin(), reads.end(), [&](int read) { return hasAge(dictionary, read); });
}

/// An expression over inputs that are each counted with `age`.
Derived expressionWithAge(const FactSet& facts, const Definition& definition, std::string_view group,
                          int repetition, base::Period age, base::Date today) {
  const expression::Program& program = *definition.derived.program;
  std::map<int, base::Period> ages;
  for (const int read : program.slotsRead()) {
    if (hasAge(facts.dictionary(), read)) ages.emplace(read, age);
  }
  const FactSlots slots(facts, group, repetition, &ages, today);
  Derived derived{program.evaluate(slots), UnknownReason::None, {}};
  if (derived.value.notApplicable) derived.reason = UnknownReason::NotApplicable;
  if (derived.value.isUnknown()) {
    for (const int read : program.decidedBy(slots))
      derived.reason = graver(derived.reason, slots.reasonOf(read));
    if (derived.reason == UnknownReason::None) derived.reason = UnknownReason::Unresolved;
  }
  return derived;
}

/// The fact counted with `age` instead of the dictionary's freshFor.
Counted withAge(const FactSet& facts, int slot, std::string_view group, int repetition, base::Period age,
                base::Date today) {
  const Definition& definition = facts.dictionary().at(slot);
  const Fact& fact = facts.at(slot, repetition);
  if (!definition.isDerived()) {
    const bool isAgeOnly = fact.reason == UnknownReason::None || fact.reason == UnknownReason::OutOfDate;
    return fact.isGiven() && isAgeOnly ? countedToday(fact, age, today) : Counted{fact.value, fact.reason};
  }
  const bool isExpression = definition.derived.kind == DerivedKind::Expression && definition.derived.program;
  if (!fact.isGiven() && !hasAge(facts.dictionary(), slot)) return {fact.value, fact.reason};
  Derived derived = isExpression ? expressionWithAge(facts, definition, group, repetition, age, today)
                                 : Derivations(facts, today).derive(definition, repetition, age);
  if (fact.isGiven()) return joinWithGiven(definition, fact, derived, age, today);
  return {std::move(derived.value), derived.reason};
}

void collectOpen(const Derivations& derivations, const FactSet& facts, FactRef at,
                 std::vector<FactRef>& open) {
  const Definition& definition = facts.dictionary().at(at.slot);
  if (!definition.isDerived()) {
    if (std::find(open.begin(), open.end(), at) == open.end()) open.push_back(at);
    return;
  }
  for (const FactRef& read : derivations.openReads(definition, at.repetition))
    collectOpen(derivations, facts, read, open);
}

}  // namespace

FactSlots::FactSlots(const FactSet& facts, std::string_view group, int repetition)
    : facts_(facts),
      groupIndex_(group.empty() ? -1 : facts.dictionary().groupIndex(group)),
      repetition_(repetition) {}

FactSlots FactSlots::inGroup(const FactSet& facts, int groupIndex, int repetition) {
  FactSlots slots(facts);
  slots.groupIndex_ = groupIndex;
  slots.repetition_ = repetition;
  return slots;
}

FactSlots::FactSlots(const FactSet& facts, std::string_view group, int repetition,
                     const std::map<int, base::Period>* maxAge, base::Date today)
    : FactSlots(facts, group, repetition) {
  if (!maxAge) return;
  for (const auto& [slot, age] : *maxAge) {
    Aged aged{slot, {}, UnknownReason::None};
    auto counted = withAge(facts, slot, group, isInGroup(slot) ? repetition : -1, age, today);
    aged.value = std::move(counted.value);
    aged.reason = counted.reason;
    aged_.push_back(std::move(aged));
  }
}

bool FactSlots::isInGroup(int slot) const {
  return groupIndex_ >= 0 && facts_.dictionary().at(slot).groupIndex == groupIndex_;
}

const FactSlots::Aged* FactSlots::aged(int slot) const {
  const auto found =
      std::find_if(aged_.begin(), aged_.end(), [&](const Aged& one) { return one.slot == slot; });
  return found == aged_.end() ? nullptr : &*found;
}

const Fact& FactSlots::factOf(int slot) const {
  return isInGroup(slot) ? facts_.at(slot, repetition_) : facts_.at(slot);
}

const expression::Value& FactSlots::valueOf(int slot) const {
  if (!aged_.empty()) {
    if (const Aged* found = aged(slot)) return found->value;
  }
  return factOf(slot).value;
}

UnknownReason FactSlots::reasonOf(int slot) const {
  const Aged* found = aged(slot);
  return found ? found->reason : factOf(slot).reason;
}

std::vector<FactRef> openInputs(const FactSet& facts, int slot, int repetition) {
  std::vector<FactRef> open;
  const Definition& definition = facts.dictionary().at(slot);
  if (facts.at(slot, repetition).value.isSettled() || !facts.settledOn()) return open;
  const FactRef at{slot, definition.groupIndex >= 0 ? repetition : -1};
  collectOpen(Derivations(facts, *facts.settledOn()), facts, at, open);
  return open;
}

bool isOptionalNow(const FactSet& facts, int slot, int repetition) {
  const Definition& definition = facts.dictionary().at(slot);
  if (definition.unknownAs == UnknownAs::Optional) return true;
  if (!definition.optionalWhen) return false;
  const FactSlots slots = FactSlots::inGroup(facts, definition.groupIndex, repetition);
  return definition.optionalWhen->evaluate(slots).truth == Truth::True;
}

}  // namespace stile::facts
