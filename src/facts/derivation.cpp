#include "facts/derivation.h"

#include <algorithm>

#include "facts/reading.h"

namespace stile::facts {
namespace {

using base::Rational;
using expression::Truth;
using expression::truthAnd;
using expression::truthImplies;
using expression::truthOr;
using expression::Value;
using expression::ValueKind;

bool isOfReadings(DerivedKind kind) {
  return kind == DerivedKind::Mean || kind == DerivedKind::Worst || kind == DerivedKind::Last;
}

FactSlots slotsOf(const FactSet& facts, const Definition& definition, int repetition) {
  return FactSlots::inGroup(facts, definition.groupIndex, repetition);
}

}  // namespace

Derived Derivations::derive(const Definition& definition, int repetition,
                            const std::optional<base::Period>& age) const {
  const Derivation& derivation = definition.derived;
  if (isOfReadings(derivation.kind) && derivation.of >= 0) {
    auto allowed = age ? age : definition.freshFor;
    if (!allowed) allowed = facts_.dictionary().at(derivation.of).freshFor;
    return deriveFromReadings(facts_, derivation, allowed, today_);
  }
  Derived derived{Value::unknown(definition.valueType.kind), UnknownReason::None, {}};
  switch (derivation.kind) {
    case DerivedKind::Expression:
      if (derivation.program)
        derived.value = derivation.program->evaluate(slotsOf(facts_, definition, repetition));
      break;
    case DerivedKind::Elapsed:
      derived.value = elapsed(derivation, repetition);
      break;
    case DerivedKind::Summary:
      derived.value = summary(definition);
      break;
    case DerivedKind::Norm:
      derived.value = norm(derivation, repetition);
      break;
    case DerivedKind::Score:
      derived.value = score(derivation, repetition);
      break;
    case DerivedKind::ClassMember:
      derived.value = classMember(definition, repetition);
      break;
    default:
      break;
  }
  if (derived.value.notApplicable) {
    derived.reason = UnknownReason::NotApplicable;
  } else if (derived.value.isUnknown()) {
    derived.reason = reasonFor(definition, repetition);
  }
  return derived;
}

Value Derivations::elapsed(const Derivation& derivation, int repetition) const {
  const Value unknown = Value::unknown(ValueKind::Number);
  if (derivation.of < 0) return unknown;
  const Value& since = facts_.at(derivation.of, repetition).value;
  if (since.notApplicable) return Value::ofNotApplicable(ValueKind::Number);
  // A day after today is no past event; reportDerived() says so.
  if (!since.date || since.date->first() > today_) return unknown;
  const base::Date last = std::min(since.date->last(), today_);
  return Value::between(Rational(base::completedUnits(last, today_, derivation.unit)),
                        Rational(base::completedUnits(since.date->first(), today_, derivation.unit)));
}

Truth Derivations::isMember(const Derivation& derivation, int repetition) const {
  Truth truth = Truth::True;
  if (derivation.where) {
    truth = derivation.where->evaluate(FactSlots::inGroup(facts_, derivation.groupIndex, repetition)).truth;
  }
  if (truth != Truth::True || !facts_.isOpenEnded(derivation.groupIndex)) return truth;
  const auto& members = facts_.dictionary().groupMembers(derivation.groupIndex);
  const bool anyGiven = std::any_of(members.begin(), members.end(),
                                    [&](int slot) { return facts_.at(slot, repetition).isGiven(); });
  return anyGiven ? Truth::True : Truth::Unknown;
}

Value Derivations::summary(const Definition& definition) const {
  const Derivation& derivation = definition.derived;
  const Value unknown = Value::unknown(definition.valueType.kind);
  if (derivation.groupIndex < 0) return unknown;
  if (derivation.summary == SummaryOf::Count) return count(derivation);
  if (!derivation.program) return unknown;
  const bool isTruth = derivation.summary == SummaryOf::Any || derivation.summary == SummaryOf::Every;
  return isTruth ? truthSummary(derivation) : extreme(derivation);
}

Value Derivations::truthSummary(const Derivation& derivation) const {
  const bool isAny = derivation.summary == SummaryOf::Any;
  Truth result = isAny ? Truth::False : Truth::True;
  // Repetitions nobody told of may hold anything.
  if (facts_.isOpenEnded(derivation.groupIndex)) result = Truth::Unknown;
  for (int i = 0; i < facts_.repetitions(derivation.groupIndex); ++i) {
    const Truth member = isMember(derivation, i);
    const Truth truth =
        derivation.program->evaluate(FactSlots::inGroup(facts_, derivation.groupIndex, i)).truth;
    result = isAny ? truthOr(result, truthAnd(member, truth)) : truthAnd(result, truthImplies(member, truth));
  }
  return Value::boolean(result);
}

Value Derivations::count(const Derivation& derivation) const {
  std::int64_t least = 0;
  std::int64_t most = 0;
  for (int i = 0; i < facts_.repetitions(derivation.groupIndex); ++i) {
    const Truth member = isMember(derivation, i);
    if (member == Truth::True) ++least;
    if (member != Truth::False) ++most;
  }
  if (facts_.isOpenEnded(derivation.groupIndex)) return Value::between(Rational(least), std::nullopt);
  return Value::between(Rational(least), Rational(most));
}

Value Derivations::extreme(const Derivation& derivation) const {
  const bool isSmallest = derivation.summary == SummaryOf::Smallest;
  // Near: the bound that certain members give (the smallest is at most each of them). Far: the
  // bound that every member and every possible one must give.
  const auto near = isSmallest ? &Value::high : &Value::low;
  const auto far = isSmallest ? &Value::low : &Value::high;
  const auto isBeyond = [&](const Rational& a, const Rational& b) { return isSmallest ? a < b : a > b; };
  bool anyCertain = false;
  bool anyPossible = facts_.isOpenEnded(derivation.groupIndex);
  bool hasFar = !anyPossible;
  Value result = Value::unknown(ValueKind::Number);
  for (int i = 0; i < facts_.repetitions(derivation.groupIndex); ++i) {
    const Truth member = isMember(derivation, i);
    if (member == Truth::False) continue;
    const Value value = derivation.program->evaluate(FactSlots::inGroup(facts_, derivation.groupIndex, i));
    if (value.notApplicable) continue;
    // A value of which nothing is known may turn out not to apply, so it makes no certain member.
    const bool isCertain = member == Truth::True && !value.isUnknown();
    anyCertain = anyCertain || isCertain;
    anyPossible = true;
    const auto& nearBound = value.*near;
    const auto& farBound = value.*far;
    if (isCertain && nearBound && (!(result.*near) || isBeyond(*nearBound, *(result.*near))))
      result.*near = nearBound;
    hasFar = hasFar && farBound.has_value();
    if (hasFar && (!(result.*far) || isBeyond(*farBound, *(result.*far)))) result.*far = farBound;
  }
  // Of nothing there is no smallest: then it does not apply. Where that is possible, no bound is
  // certain, because a comparison would be false without one.
  if (!anyPossible) return Value::ofNotApplicable(ValueKind::Number);
  if (!anyCertain) return Value::unknown(ValueKind::Number);
  if (!hasFar) (result.*far).reset();
  return result;
}

Value Derivations::norm(const Derivation& derivation, int repetition) const {
  const NormTable* table = facts_.dictionary().norm(derivation.table);
  if (!table || derivation.inputs.size() != 3) return Value::unknown(ValueKind::Code);
  const Definition& measured = facts_.dictionary().at(derivation.inputs[0]);
  const auto value = [&](std::size_t i) -> const Value& {
    return facts_.at(derivation.inputs[i], repetition).value;
  };
  return normOutcome(*table, value(0), measured.valueType.unit, value(1), value(2),
                     measured.valueType.analyte);
}

Value Derivations::score(const Derivation& derivation, int repetition) const {
  std::int64_t least = 0;
  std::int64_t most = 0;
  for (const int slot : derivation.inputs) {
    const Truth truth = facts_.at(slot, repetition).value.truth;
    if (truth == Truth::True) ++least;
    if (truth != Truth::False) ++most;
  }
  return Value::between(Rational(least), Rational(most));
}

const std::vector<std::optional<MedicineMatch>>& Derivations::medicines(const Derivation& derivation) const {
  if (!medicines_) {
    medicines_.emplace();
    for (int i = 0; i < facts_.repetitions(derivation.groupIndex); ++i)
      medicines_->push_back(medicineAt(derivation, i));
  }
  return *medicines_;
}

std::optional<MedicineMatch> Derivations::medicineAt(const Derivation& derivation, int repetition) const {
  const MedicineClasses& known = facts_.dictionary().medicines();
  const auto& name = facts_.at(derivation.of, repetition).value.text;
  if (!name) return std::nullopt;
  MedicineMatch match = known.match(*name);
  // A name that is known needs no one's word, and a medicine without a name cannot be looked up.
  if (match.isResolved || derivation.lookedUp < 0) return match;
  const Fact& lookedUp = facts_.at(derivation.lookedUp, repetition);
  if (!lookedUp.value.text || lookedUp.givenBy != kClinician) return match;
  const int found = known.findByOption(*lookedUp.value.text);
  if (found >= 0 && !std::binary_search(match.classes.begin(), match.classes.end(), found))
    match.classes.insert(std::upper_bound(match.classes.begin(), match.classes.end(), found), found);
  match.isResolved = true;
  return match;
}

Truth Derivations::isOfClass(const Derivation& derivation, const std::optional<MedicineMatch>& match) const {
  const auto isIn = [&](const std::vector<int>& classes) {
    return std::any_of(derivation.classIndices.begin(), derivation.classIndices.end(),
                       [&](int one) { return std::binary_search(classes.begin(), classes.end(), one); });
  };
  if (!match) return Truth::Unknown;
  if (isIn(match->classes)) return Truth::True;
  return match->isResolved && !isIn(match->possible) ? Truth::False : Truth::Unknown;
}

Value Derivations::classMember(const Definition& definition, int repetition) const {
  const Derivation& derivation = definition.derived;
  if (derivation.of < 0 || derivation.classIndices.empty()) return Value::unknown(ValueKind::Boolean);
  const auto& matches = medicines(derivation);
  if (definition.groupIndex >= 0) {
    const bool isThere = repetition >= 0 && repetition < static_cast<int>(matches.size());
    return Value::boolean(isThere ? isOfClass(derivation, matches[static_cast<std::size_t>(repetition)])
                                  : Truth::Unknown);
  }
  Truth result = facts_.isOpenEnded(derivation.groupIndex) ? Truth::Unknown : Truth::False;
  for (const auto& match : matches) result = truthOr(result, isOfClass(derivation, match));
  return Value::boolean(result);
}

UnknownReason Derivations::reasonFor(const Definition& definition, int repetition) const {
  UnknownReason reason = UnknownReason::None;
  for (const FactRef& read : openReads(definition, repetition)) {
    const Fact& fact = facts_.at(read.slot, read.repetition);
    const Definition& input = facts_.dictionary().at(read.slot);
    const bool isUnmatched = definition.derived.kind == DerivedKind::ClassMember && fact.value.text;
    // What is derived and known in part has no reason of its own.
    const bool isInPart = fact.reason == UnknownReason::None && input.isDerived();
    reason = graver(reason, isUnmatched ? UnknownReason::Unresolved
                            : isInPart  ? reasonFor(input, read.repetition)
                                        : fact.reason);
  }
  if (reason != UnknownReason::None && reason != UnknownReason::NotApplicable) return reason;
  // Nothing read is missing: an event after today, a date known in part, or a table that says
  // nothing about this client.
  const int since = definition.derived.kind == DerivedKind::Elapsed ? definition.derived.of : -1;
  const bool isFuture = since >= 0 && facts_.at(since, repetition).value.date &&
                        facts_.at(since, repetition).value.date->first() > today_;
  return isFuture ? UnknownReason::Contradictory : UnknownReason::Unresolved;
}

std::vector<FactRef> Derivations::openReads(const Definition& definition, int repetition) const {
  const Derivation& derivation = definition.derived;
  std::vector<FactRef> open;
  const auto addUnsettled = [&](int slot, int at) {
    const bool isMember = facts_.dictionary().at(slot).groupIndex >= 0;
    const FactRef read{slot, isMember ? at : -1};
    if (!facts_.at(slot, at).value.isSettled() && std::find(open.begin(), open.end(), read) == open.end()) {
      open.push_back(read);
    }
  };
  switch (derivation.kind) {
    case DerivedKind::Expression:
      if (!derivation.program) break;
      for (const int slot : derivation.program->decidedBy(slotsOf(facts_, definition, repetition))) {
        addUnsettled(slot, repetition);
      }
      break;
    case DerivedKind::Elapsed:
      if (derivation.of >= 0) addUnsettled(derivation.of, repetition);
      break;
    case DerivedKind::Norm:
    case DerivedKind::Score:
      for (const int slot : derivation.inputs) addUnsettled(slot, repetition);
      break;
    case DerivedKind::Summary:
      openReadsOfSummary(derivation, open);
      break;
    case DerivedKind::Mean:
    case DerivedKind::Worst:
    case DerivedKind::Last:
      if (derivation.of < 0) break;
      for (int i = 0; i < facts_.repetitions(derivation.groupIndex); ++i) open.push_back({derivation.of, i});
      break;
    case DerivedKind::ClassMember:
      if (derivation.of < 0) break;
      for (int i = 0; i < static_cast<int>(medicines(derivation).size()); ++i) {
        if (definition.groupIndex >= 0 && i != repetition) continue;
        const auto& match = medicines(derivation)[static_cast<std::size_t>(i)];
        if (isOfClass(derivation, match) != Truth::Unknown) continue;
        open.push_back({derivation.of, i});
        if (match && !match->isResolved && derivation.lookedUp >= 0) open.push_back({derivation.lookedUp, i});
      }
      break;
    default:
      break;
  }
  return open;
}

void Derivations::openReadsOfSummary(const Derivation& derivation, std::vector<FactRef>& open) const {
  const auto add = [&](const expression::Program& program, int repetition, const FactSlots& slots) {
    if (program.evaluate(slots).isSettled()) return;
    for (const int slot : program.decidedBy(slots)) {
      const bool isMember = facts_.dictionary().at(slot).groupIndex >= 0;
      const FactRef read{slot, isMember ? repetition : -1};
      if (std::find(open.begin(), open.end(), read) == open.end()) open.push_back(read);
    }
  };
  for (int i = 0; i < facts_.repetitions(derivation.groupIndex); ++i) {
    const FactSlots slots = FactSlots::inGroup(facts_, derivation.groupIndex, i);
    const Truth member = isMember(derivation, i);
    if (member == Truth::False) continue;
    if (derivation.where) add(*derivation.where, i, slots);
    if (derivation.program) add(*derivation.program, i, slots);
  }
}

}  // namespace stile::facts
