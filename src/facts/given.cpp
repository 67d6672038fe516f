#include "facts/given.h"

#include <algorithm>

#include "facts/fact_display.h"
#include "facts/fact_name.h"

namespace stile::facts {
namespace {

using base::Rational;
using base::Severity;
using expression::Value;
using expression::ValueKind;

enum class Order { Earlier, Same, Later };

/// Where `given` stands to what the fact holds. Dates that overlap are one occasion.
Order orderOf(const Given& given, const Fact& fact) {
  if (given.date && fact.date) {
    if (given.date->first() > fact.date->last()) return Order::Later;
    if (given.date->last() < fact.date->first()) return Order::Earlier;
    return Order::Same;
  }
  if (given.occasion != fact.occasion) return given.occasion > fact.occasion ? Order::Later : Order::Earlier;
  return Order::Same;
}

void put(Fact& fact, const Given& given) {
  fact.asGiven = given.value;
  fact.givenReason = given.reason;
  fact.written = given.written;
  fact.date = given.date;
  fact.givenBy = given.givenBy;
  fact.source = given.source;
  fact.occasion = given.occasion;
  fact.place = given.place;
}

/// How a number was written, with the unit if it has one.
std::string rangeText(const Definition& definition, const Rational& low, const Rational& high) {
  const std::string unit = unitWords(definition.valueType.unit.text);
  return low.toText() + " to " + high.toText() + (unit.empty() ? "" : " " + unit);
}

}  // namespace

void take(FactSet& facts, int slot, int repetition, const Given& given, base::Issues& issues) {
  Fact& fact = facts.change(slot, repetition);
  if (given.reason == UnknownReason::NotAsked && fact.givenReason != UnknownReason::NotAsked) return;
  const Order order = fact.givenReason == UnknownReason::NotAsked ? Order::Later : orderOf(given, fact);
  if (order == Order::Earlier) return;
  if (order == Order::Later) {
    put(fact, given);
    return;
  }
  const bool isKnown = given.reason == UnknownReason::None;
  if (isKnown && fact.isGiven()) {
    if (given.value == fact.asGiven) return;
    const Definition& definition = facts.dictionary().at(slot);
    issues.add({Severity::AskBack, given.place ? *given.place : base::Place{}, nameOf(definition, repetition),
                "two different answers to \"" + definition.label + "\" for the same occasion",
                "keep the right one; until then it counts as unknown"});
    fact.asGiven = Value::unknown(given.value.kind);
    fact.givenReason = UnknownReason::Contradictory;
    fact.occasion = std::max(fact.occasion, given.occasion);
    return;
  }
  if (fact.givenReason == UnknownReason::Contradictory) return;
  // A blank beside an answer says nothing; "not sure" beside an answer leaves it unsettled.
  const bool isFactBlank = fact.givenReason == UnknownReason::NotAnswered;
  const bool isGivenBlank = given.reason == UnknownReason::NotAnswered;
  if (isKnown ? isFactBlank : !isGivenBlank && graver(given.reason, fact.givenReason) == given.reason)
    put(fact, given);
}

std::optional<Rational> checkedNumber(const Definition& definition, const Rational& number,
                                      std::string_view unit, const std::string& written,
                                      const base::Place& place, const std::string& subject,
                                      base::Issues& issues) {
  Rational value = number;
  if (definition.type == FactType::Quantity) {
    const std::string& wanted = definition.valueType.unit.text;
    if (unit.empty()) {
      issues.error(place, subject, "the unit of " + written + " is missing",
                   "write for example \"" + written + " " + wanted + "\"");
      return std::nullopt;
    }
    const auto parsed = base::parseUnit(unit);
    const auto converted =
        parsed ? base::convert(number, *parsed, definition.valueType.unit, definition.valueType.analyte)
               : std::nullopt;
    if (!converted) {
      issues.error(place, subject,
                   parsed ? "the unit \"" + std::string(unit) + "\" cannot be converted to " + wanted
                          : "\"" + std::string(unit) + "\" is no unit known here",
                   "give the value in " + wanted);
      return std::nullopt;
    }
    value = *converted;
  } else if (!unit.empty()) {
    issues.error(place, subject, "\"" + definition.label + "\" is a plain number without a unit",
                 "leave the unit out");
    return std::nullopt;
  }
  if (definition.type == FactType::Integer && !value.isWhole()) {
    issues.error(place, subject, "\"" + definition.label + "\" is a whole number",
                 "write it without decimals");
    return std::nullopt;
  }
  if (definition.possibleLow && (value < *definition.possibleLow || value > *definition.possibleHigh)) {
    issues.error(place, subject,
                 written + " is outside the possible range of \"" + definition.label + "\", " +
                     rangeText(definition, *definition.possibleLow, *definition.possibleHigh),
                 "check the value and its unit");
    return std::nullopt;
  }
  if (definition.plausibleLow && (value < *definition.plausibleLow || value > *definition.plausibleHigh)) {
    issues.add({Severity::AskBack, place, subject,
                written + " is unusual for \"" + definition.label + "\"; usual is " +
                    rangeText(definition, *definition.plausibleLow, *definition.plausibleHigh),
                "confirm the value or correct it"});
  }
  return value;
}

void takeChoice(FactSet& facts, const Definition& choice, int repetition, const ChosenOptions& chosen,
                Given given, base::Issues& issues) {
  const auto isIn = [](const std::vector<std::string>& codes, const std::string& code) {
    return std::find(codes.begin(), codes.end(), code) != codes.end();
  };
  bool choosesNone = false;
  for (const OptionDefinition& option : choice.options)
    choosesNone = choosesNone || (option.isNone && isIn(chosen.codes, option.code));
  const bool isContradictory = choosesNone && chosen.codes.size() > 1;
  if (isContradictory) {
    issues.add({Severity::AskBack, given.place ? *given.place : base::Place{}, nameOf(choice, repetition),
                "\"" + choice.label + "\" was answered with none of these and with one of these",
                "keep the right answer; until then it counts as unknown"});
  }
  for (const OptionDefinition& option : choice.options) {
    if (option.slot < 0) continue;
    Given one = given;
    const bool isChosen = isIn(chosen.codes, option.code);
    const bool isOffered = isChosen || chosen.offered.empty() || isIn(chosen.offered, option.code);
    if (isContradictory) {
      one.reason = UnknownReason::Contradictory;
    } else if (isChosen) {
      one.reason = UnknownReason::None;
    } else if (!isOffered) {
      one.reason = UnknownReason::NotAsked;
    } else {
      one.reason = chosen.othersUnknown;
    }
    one.value =
        one.reason == UnknownReason::None ? Value::boolean(isChosen) : Value::unknown(ValueKind::Boolean);
    one.written = one.reason == UnknownReason::None ? (isChosen ? "true" : "false") : "";
    take(facts, option.slot, repetition, one, issues);
  }
  std::string codes;
  for (const std::string& code : chosen.codes) codes += (codes.empty() ? "" : ", ") + code;
  given.reason = isContradictory ? UnknownReason::Contradictory
                 : codes.empty() ? chosen.othersUnknown
                                 : UnknownReason::None;
  given.value = given.reason == UnknownReason::None ? Value::code(codes) : Value::unknown(ValueKind::Code);
  if (!codes.empty()) given.written = codes + (given.written.empty() ? "" : ", " + given.written);
  take(facts, choice.slot, repetition, given, issues);
}

}  // namespace stile::facts
