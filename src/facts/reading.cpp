#include "facts/reading.h"

#include <algorithm>
#include <utility>

#include "facts/freshness.h"

namespace stile::facts {
namespace {

using base::Rational;
using expression::Value;
using expression::ValueKind;

struct Reading {
  Value value;
  std::optional<base::PartialDate> date;
  int index = 0;
  bool isCertain = true;  ///< certainly recent enough
};

struct Readings {
  std::vector<Reading> list;
  bool isOpenEnded = false;
  UnknownReason reason = UnknownReason::None;  ///< gravest of those that are unknown or too old
};

/// The value a reading had when it was taken; its own age does not count here.
Value takenValue(const Definition& definition, const Fact& fact) {
  const bool isAsGiven = fact.isGiven() && !definition.isDerived() &&
                         (fact.reason == UnknownReason::None || fact.reason == UnknownReason::OutOfDate);
  return isAsGiven ? fact.asGiven : fact.value;
}

Readings collect(const FactSet& facts, const Derivation& derivation, const std::optional<base::Period>& age,
                 base::Date today) {
  Readings readings;
  readings.isOpenEnded = facts.isOpenEnded(derivation.groupIndex);
  const Definition& definition = facts.dictionary().at(derivation.of);
  for (int i = 0; i < facts.repetitions(derivation.groupIndex); ++i) {
    const Fact& fact = facts.at(derivation.of, i);
    Reading reading{takenValue(definition, fact), fact.date, i, true};
    if (reading.value.notApplicable) continue;
    if (reading.value.isUnknown()) {
      readings.reason = graver(readings.reason, fact.reason);
    } else {
      const Freshness fresh = freshness(reading.date, age, today);
      if (fresh != Freshness::Fresh) readings.reason = graver(readings.reason, UnknownReason::OutOfDate);
      if (fresh == Freshness::Stale) continue;
      reading.isCertain = fresh == Freshness::Fresh;
    }
    readings.list.push_back(std::move(reading));
  }
  return readings;
}

bool isCertainlyLater(const Reading& a, const Reading& b) {
  if (!a.date || !b.date) return false;
  if (a.date->first() > b.date->last()) return true;
  return a.date->isExact() && b.date->isExact() && a.date->first() == b.date->first() && a.index > b.index;
}

/// The readings that count, and whether it is certain that exactly these do.
struct Choice {
  std::vector<const Reading*> readings;
  bool isExact = true;
};

/// The newest `count` readings (0 = all); where the order is not certain, all that may be among them.
Choice newest(const std::vector<Reading>& list, int count) {
  Choice choice;
  for (const Reading& reading : list) {
    int certainlyLater = 0;
    int perhapsLater = 0;
    for (const Reading& other : list) {
      if (&other == &reading) continue;
      if (other.isCertain && isCertainlyLater(other, reading)) ++certainlyLater;
      if (!isCertainlyLater(reading, other)) ++perhapsLater;
    }
    if (count > 0 && certainlyLater >= count) continue;
    const bool isIn = reading.isCertain && (count == 0 || perhapsLater < count);
    choice.isExact = choice.isExact && isIn;
    choice.readings.push_back(&reading);
  }
  return choice;
}

/// The smallest interval (or the one value) that holds every reading's value.
Value hull(const std::vector<const Reading*>& readings) {
  Value result = readings.front()->value;
  for (const Reading* reading : readings) {
    const Value& value = reading->value;
    if (result.kind != ValueKind::Number) {
      if (value != result) return Value::unknown(result.kind);
      continue;
    }
    result.low = result.low && value.low ? std::optional(std::min(*result.low, *value.low)) : std::nullopt;
    result.high =
        result.high && value.high ? std::optional(std::max(*result.high, *value.high)) : std::nullopt;
  }
  return result;
}

std::optional<Rational> meanOf(const std::vector<const Reading*>& readings,
                               std::optional<Rational> Value::*bound) {
  Rational sum;
  for (const Reading* reading : readings) {
    const auto& part = reading->value.*bound;
    const auto next = part ? Rational::add(sum, *part) : std::nullopt;
    if (!next) return std::nullopt;
    sum = *next;
  }
  return Rational::divide(sum, Rational(static_cast<std::int64_t>(readings.size())));
}

Value mean(const Choice& choice) {
  // How many count is not certain: any mean of some of them lies between their extremes.
  if (!choice.isExact) return hull(choice.readings);
  return Value::between(meanOf(choice.readings, &Value::low), meanOf(choice.readings, &Value::high));
}

/// The gravest of all readings; one that is unknown or may not count leaves the graver side open.
Value worst(const Readings& readings, bool takeLargest) {
  const auto near = takeLargest ? &Value::low : &Value::high;  // the bound that certain readings give
  const auto far = takeLargest ? &Value::high : &Value::low;
  const auto isGraver = [&](const Rational& a, const Rational& b) { return takeLargest ? a > b : a < b; };
  Value result = Value::unknown(ValueKind::Number);
  bool hasFar = !readings.isOpenEnded;
  for (const Reading& reading : readings.list) {
    const auto& nearBound = reading.value.*near;
    const auto& farBound = reading.value.*far;
    if (reading.isCertain && nearBound && (!(result.*near) || isGraver(*nearBound, *(result.*near)))) {
      result.*near = nearBound;
    }
    hasFar = hasFar && farBound.has_value();
    if (hasFar && (!(result.*far) || isGraver(*farBound, *(result.*far)))) result.*far = farBound;
  }
  if (!hasFar) (result.*far).reset();
  return result;
}

std::optional<base::PartialDate> newestDate(const std::vector<const Reading*>& readings) {
  const Reading* newest = nullptr;
  for (const Reading* reading : readings) {
    if (reading->date && (!newest || reading->date->last() >= newest->date->last())) newest = reading;
  }
  return newest ? newest->date : std::nullopt;
}

}  // namespace

Derived deriveFromReadings(const FactSet& facts, const Derivation& derivation,
                           const std::optional<base::Period>& age, base::Date today) {
  const Readings readings = collect(facts, derivation, age, today);
  Derived result{
      Value::unknown(facts.dictionary().at(derivation.of).valueType.kind), UnknownReason::None, {}};
  const bool anyCertain = std::any_of(readings.list.begin(), readings.list.end(),
                                      [](const Reading& reading) { return reading.isCertain; });
  if (anyCertain) {
    const bool isWorst = derivation.kind == DerivedKind::Worst;
    const Choice choice = newest(readings.list, isWorst ? 0 : derivation.newest);
    if (isWorst) {
      result.value = worst(readings, derivation.takeLargest);
    } else if (!readings.isOpenEnded) {
      result.value = derivation.kind == DerivedKind::Mean ? mean(choice) : hull(choice.readings);
    }
    result.date = newestDate(choice.readings);
  }
  if (result.value.isUnknown()) {
    result.reason = readings.reason == UnknownReason::None ? UnknownReason::NotAsked : readings.reason;
  }
  return result;
}

}  // namespace stile::facts
