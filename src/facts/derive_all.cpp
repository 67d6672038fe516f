// Every derived fact in its order, joined with what was given for it directly.
#include <algorithm>
#include <functional>
#include <utility>

#include "base/near_names.h"
#include "facts/derivation.h"
#include "facts/fact_name.h"
#include "facts/freshness.h"

namespace stile::facts {
namespace {

using base::Rational;
using expression::Truth;
using expression::Value;
using expression::ValueKind;

/// Calls `action` for each repetition a definition is in, with -1 outside groups.
void forEachPlace(const FactSet& facts, const Definition& definition,
                  const std::function<void(int)>& action) {
  if (definition.groupIndex < 0) {
    action(-1);
    return;
  }
  for (int i = 0; i < facts.repetitions(definition.groupIndex); ++i) action(i);
}

/// Half a unit of the last decimal place someone wrote: 27.5 agrees with 27.46.
Rational roundingOf(const Rational& given) {
  constexpr std::int64_t kMostPlaces = 6;
  std::int64_t scale = 1;
  for (std::int64_t places = 0; places <= kMostPlaces; ++places, scale *= 10) {
    const auto scaled = Rational::multiply(given, Rational(scale));
    if (scaled && scaled->isWhole()) return Rational::fraction(1, 2 * scale).value_or(Rational());
  }
  return {};
}

/// Both taken together, or nullopt when they cannot both be so.
std::optional<Value> joined(const Value& given, const Value& derived) {
  if (derived.isUnknown()) return given;
  if (given.isUnknown()) return derived;
  if (given.notApplicable || derived.notApplicable) {
    return given.notApplicable == derived.notApplicable ? std::optional(given) : std::nullopt;
  }
  switch (given.kind) {
    case ValueKind::Boolean:
    case ValueKind::Text:
    case ValueKind::Code:
      return given == derived ? std::optional(given) : std::nullopt;
    case ValueKind::Date:
      if (given.date->last() < derived.date->first() || derived.date->last() < given.date->first())
        return std::nullopt;
      return given.date->isExact() ? given : derived;
    case ValueKind::Number:
      break;
  }
  if (!given.isSettled()) return std::nullopt;  // what is given is one number
  const Rational rounding = roundingOf(*given.low);
  const auto least = Rational::subtract(*given.low, rounding);
  const auto most = Rational::add(*given.low, rounding);
  if (!least || !most) return std::nullopt;
  if ((derived.low && *most < *derived.low) || (derived.high && *derived.high < *least)) return std::nullopt;
  if (!derived.isSettled()) return given;
  // Where the one was rounded, the truth may be either: no threshold between them is decided.
  return Value::between(std::min(*given.low, *derived.low), std::max(*given.low, *derived.low));
}

void settleDerived(const Definition& definition, Fact& fact, const Derived& derived, base::Date today) {
  if (!fact.isGiven()) {
    fact.value = derived.value;
    fact.reason = derived.reason;
    if (derived.reason != UnknownReason::None && fact.givenReason != UnknownReason::NotAsked &&
        derived.reason != UnknownReason::NotApplicable) {
      fact.reason = graver(fact.givenReason, derived.reason);
    }
    fact.date = derived.date;
    fact.source = "derived";
    return;
  }
  Counted counted = joinWithGiven(definition, fact, derived, definition.freshFor, today);
  fact.value = std::move(counted.value);
  fact.reason = counted.reason;
}

void reportDisagreement(const Definition& definition, int repetition, const Fact& fact,
                        const Derived& derived, base::Issues& issues) {
  if (!fact.isGiven() || fact.reason != UnknownReason::Contradictory || derived.value.isUnknown()) return;
  issues.add({base::Severity::AskBack, placeOf(fact), nameOf(definition, repetition),
              "what was given for \"" + definition.label + "\" disagrees with the facts it follows from",
              "correct one of them; until then it counts as unknown"});
}

void reportFuture(const FactSet& facts, const Definition& definition, int repetition, base::Date today,
                  std::vector<FactRef>& reported, base::Issues& issues) {
  const int slot = definition.derived.of;
  const FactRef since{slot, repetition};
  if (slot < 0 || std::find(reported.begin(), reported.end(), since) != reported.end()) return;
  const Fact& fact = facts.at(slot, repetition);
  if (!fact.value.date || fact.value.date->first() <= today) return;
  reported.push_back(since);
  const Definition& date = facts.dictionary().at(slot);
  issues.error(placeOf(fact), nameOf(date, repetition),
               "\"" + date.label + "\" is " + fact.value.date->toText() + ", after the screening date " +
                   today.toText(),
               "correct the date");
}

void reportMedicines(const FactSet& facts, const Derivations& derivations, const Derivation& derivation,
                     base::Issues& issues) {
  const auto& matches = derivations.medicines(derivation);
  for (std::size_t i = 0; i < matches.size(); ++i) {
    if (!matches[i] || matches[i]->isResolved) continue;
    const int repetition = static_cast<int>(i);
    const Fact& fact = facts.at(derivation.of, repetition);
    const std::string name = nameOf(facts.dictionary().at(derivation.of), repetition);
    issues.add({base::Severity::AskBack, placeOf(fact), name,
                "the medicine \"" + *fact.value.text + "\" matches no known name",
                base::didYouMean(facts.dictionary().medicines().near(*fact.value.text),
                                 "write the generic name; until a clinician resolves it, medicine classes "
                                 "are not known")});
    if (derivation.lookedUp < 0) continue;
    const Fact& lookedUp = facts.at(derivation.lookedUp, repetition);
    if (!lookedUp.value.text) continue;
    issues.add({base::Severity::AskBack, placeOf(lookedUp),
                nameOf(facts.dictionary().at(derivation.lookedUp), repetition),
                "only a clinician may say what this medicine is; this was given by " +
                    (lookedUp.givenBy.empty() ? std::string("someone not named") : lookedUp.givenBy),
                "let a clinician look it up and enter it as their own"});
  }
}

}  // namespace

Counted joinWithGiven(const Definition& definition, const Fact& fact, const Derived& derived,
                      const std::optional<base::Period>& age, base::Date today) {
  Counted counted = countedToday(fact, age, today);
  if (counted.reason != UnknownReason::None && derived.value.isUnknown()) return counted;
  const auto both = joined(counted.value, derived.value);
  if (!both) return {Value::unknown(definition.valueType.kind), UnknownReason::Contradictory};
  return {*both, both->notApplicable ? UnknownReason::NotApplicable : UnknownReason::None};
}

void deriveOne(FactSet& facts, const Derivations& derivations, const Definition& definition, int repetition,
               base::Date today) {
  const Derived derived = derivations.derive(definition, repetition, std::nullopt);
  settleDerived(definition, facts.change(definition.slot, repetition), derived, today);
}

void deriveAll(FactSet& facts, base::Date today) {
  const Dictionary& dictionary = facts.dictionary();
  const Derivations derivations(facts, today);
  for (const int slot : dictionary.derivedInOrder()) {
    const Definition& definition = dictionary.at(slot);
    forEachPlace(facts, definition,
                 [&](int repetition) { deriveOne(facts, derivations, definition, repetition, today); });
  }
}

void reportDerived(const FactSet& facts, base::Date today, base::Issues& issues) {
  const Dictionary& dictionary = facts.dictionary();
  const Derivations derivations(facts, today);
  std::vector<FactRef> reported;
  bool medicinesReported = false;
  for (const int slot : dictionary.derivedInOrder()) {
    const Definition& definition = dictionary.at(slot);
    const DerivedKind kind = definition.derived.kind;
    forEachPlace(facts, definition, [&](int repetition) {
      if (kind == DerivedKind::Elapsed) reportFuture(facts, definition, repetition, today, reported, issues);
      const Fact& fact = facts.at(slot, repetition);
      if (fact.isGiven() && fact.reason == UnknownReason::Contradictory) {
        reportDisagreement(definition, repetition, fact,
                           derivations.derive(definition, repetition, std::nullopt), issues);
      }
    });
    if (kind == DerivedKind::ClassMember && definition.derived.of >= 0 && !medicinesReported) {
      reportMedicines(facts, derivations, definition.derived, issues);
      medicinesReported = true;
    }
  }
}

}  // namespace stile::facts
