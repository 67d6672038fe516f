#include "facts/derivation_reader.h"

#include <algorithm>
#include <array>
#include <utility>

#include "base/near_names.h"
#include "expression/json_origin.h"

namespace stile::facts {
namespace {

using expression::Type;
using expression::ValueKind;

constexpr std::array<std::pair<const char*, DerivedKind>, 9> kKinds{{
    {"expression", DerivedKind::Expression},
    {"elapsed", DerivedKind::Elapsed},
    {"summary", DerivedKind::Summary},
    {"norm", DerivedKind::Norm},
    {"mean", DerivedKind::Mean},
    {"worst", DerivedKind::Worst},
    {"last", DerivedKind::Last},
    {"score", DerivedKind::Score},
    {"class", DerivedKind::ClassMember},
}};

constexpr std::array<std::pair<const char*, SummaryOf>, 5> kSummaries{{
    {"any", SummaryOf::Any},
    {"every", SummaryOf::Every},
    {"smallest", SummaryOf::Smallest},
    {"largest", SummaryOf::Largest},
    {"count", SummaryOf::Count},
}};

bool isNumber(const Definition& definition) {
  return definition.valueType.kind == ValueKind::Number;
}

const char* unitCode(base::CalendarUnit unit) {
  switch (unit) {
    case base::CalendarUnit::Day:
      return "d";
    case base::CalendarUnit::Week:
      return "wk";
    case base::CalendarUnit::Month:
      return "mo";
    case base::CalendarUnit::Year:
      return "a";
  }
  return "";
}

Type booleanType() {
  return {};
}

}  // namespace

void DerivationReader::error(json::Node node, const std::string& subject, std::string message,
                             std::string remedy) {
  issues_.error(node.place(), subject, std::move(message), std::move(remedy));
}

std::optional<expression::Program> DerivationReader::compile(json::Node node, const std::string& within,
                                                             std::optional<Type> expected,
                                                             const std::string& subject) {
  if (!node.isString()) {
    error(node, subject, "an expression must be a string", "put it between double quotes");
    return std::nullopt;
  }
  const expression::JsonOrigin origin(node);
  if (within.empty()) {
    return expression::Program::compile(node.string(), dictionary_, expected, origin, subject, issues_);
  }
  const Dictionary::GroupView view(dictionary_, within);
  return expression::Program::compile(node.string(), view, expected, origin, subject, issues_);
}

const Definition* DerivationReader::reference(json::Node node, std::string_view within,
                                              const std::string& subject) {
  if (!node.isString()) {
    error(node, subject, "the id of a fact is wanted here", "write it as a string, without the percent sign");
    return nullptr;
  }
  const Definition* found = dictionary_.find(node.string());
  if (!found) {
    error(node, subject, "there is no fact \"" + node.string() + "\"",
          base::didYouMean(dictionary_.similar(node.string()), "name a fact of the dictionary"));
    return nullptr;
  }
  if (found->group != within && !found->group.empty()) {
    error(node, subject, "\"" + found->id + "\" belongs to each repetition of the group " + found->group,
          "read it through a summary, mean, worst or last");
    return nullptr;
  }
  if (!found->retiredFor.empty()) {
    error(node, subject, "\"" + found->id + "\" is retired", "use \"" + found->retiredFor + "\"");
  }
  return found;
}

Derivation DerivationReader::read(const Definition& definition, json::Node node) {
  Derivation derivation;
  if (!node.isObject() || node.size() != 1) {
    error(node, definition.id, "\"derived\" must be an object with one member",
          "name one kind of derivation");
    return derivation;
  }
  const std::string& word = node.keyAt(0);
  const auto kind =
      std::find_if(kKinds.begin(), kKinds.end(), [&](const auto& one) { return word == one.first; });
  if (kind == kKinds.end()) {
    std::vector<std::string_view> words;
    for (const auto& one : kKinds) words.emplace_back(one.first);
    issues_.error(
        node.keyPlaceAt(0), definition.id, "\"" + word + "\" is no kind of derivation",
        base::didYouMean(base::nearNames(word, words),
                   "write one of expression, elapsed, summary, mean, worst, last, norm, score, class"));
    return derivation;
  }
  derivation.kind = kind->second;
  const json::Node inner = node.at(0);
  switch (derivation.kind) {
    case DerivedKind::Expression:
      readExpression(definition, inner, derivation);
      break;
    case DerivedKind::Elapsed:
      readElapsed(definition, inner, derivation);
      break;
    case DerivedKind::Summary:
      readSummary(definition, inner, derivation);
      break;
    case DerivedKind::Norm:
      readNorm(definition, inner, derivation);
      break;
    case DerivedKind::Score:
      readScore(definition, inner, derivation);
      break;
    case DerivedKind::ClassMember:
      readClass(definition, inner, derivation);
      break;
    default:
      readReadings(definition, inner, derivation);
      break;
  }
  const bool isOfReadings = derivation.kind == DerivedKind::Mean || derivation.kind == DerivedKind::Worst ||
                            derivation.kind == DerivedKind::Last;
  if (definition.freshFor && !isOfReadings) {
    error(node, definition.id, "only an answer or a mean, worst or last of readings has an age of its own",
          "give the facts it reads a \"freshFor\"");
  }
  if (definition.isMultiple) {
    error(node, definition.id, "a choice with several answers cannot be derived", "derive booleans");
  }
  return derivation;
}

void DerivationReader::readOptional(Definition& definition, json::Node node) {
  Reader reader(node, definition.id, issues_);
  definition.optionalBecause = reader.requireString("because");
  if (const auto when = reader.find("when")) {
    definition.optionalWhen = compile(*when, definition.group, booleanType(), definition.id);
    if (definition.unknownAs == UnknownAs::Optional) {
      error(*when, definition.id, "this fact is always optional",
            "remove \"when\", or choose another \"unknownAs\"");
    }
  } else if (definition.unknownAs != UnknownAs::Optional) {
    error(node, definition.id, "the circumstance in which this fact is optional is missing",
          "add \"when\", or write \"unknownAs\": \"optional\"");
  }
  reader.finish();
}

void DerivationReader::readExpression(const Definition& definition, json::Node node, Derivation& derivation) {
  derivation.program = compile(node, definition.group, definition.valueType, definition.id);
}

void DerivationReader::readElapsed(const Definition& definition, json::Node node, Derivation& derivation) {
  Reader reader(node, definition.id, issues_);
  const auto since = reader.require("since");
  const auto in = reader.require("in");
  reader.finish();
  if (since) {
    const Definition* date = reference(*since, definition.group, definition.id);
    if (date && date->type != FactType::Date) {
      error(*since, definition.id, "\"" + date->id + "\" is no date", "name a fact of the type date");
    } else if (date && date->group != definition.group) {
      error(*since, definition.id, "\"" + date->id + "\" stands outside the group " + definition.group,
            "leave \"group\" out: it is the same in every repetition");
    } else if (date) {
      derivation.of = date->slot;
    }
  }
  if (!in) return;
  const auto unit = in->isString() ? base::calendarUnit(in->string()) : std::nullopt;
  if (!unit) {
    error(*in, definition.id, "time is counted in d, wk, mo or a", "write one of them");
    return;
  }
  derivation.unit = *unit;
  const bool fits =
      definition.type == FactType::Integer ||
      (definition.type == FactType::Quantity && definition.valueType.unit.text == unitCode(*unit));
  if (!fits) {
    error(*in, definition.id, "elapsed time is an integer, or a quantity in the unit it is counted in",
          "make the type \"integer\", or the unit \"" + std::string(unitCode(*unit)) + "\"");
  }
}

void DerivationReader::readSummary(const Definition& definition, json::Node node, Derivation& derivation) {
  Reader reader(node, definition.id, issues_);
  derivation.group = reader.requireString("group");
  derivation.groupIndex = dictionary_.groupIndex(derivation.group);
  if (!derivation.group.empty() && derivation.groupIndex < 0) {
    error(*reader.find("group"), definition.id, "there is no group \"" + derivation.group + "\"",
          "name a group of the dictionary");
    derivation.group.clear();
  }
  int kinds = 0;
  for (const auto& [word, summary] : kSummaries) {
    const auto what = reader.find(word);
    if (!what) continue;
    ++kinds;
    derivation.summary = summary;
    if (summary == SummaryOf::Count) {
      if (!reader.boolean(word).value_or(false))
        error(*what, definition.id, "\"count\" must be true", "write true");
      if (definition.type != FactType::Integer) {
        error(*what, definition.id, "a count is an integer", "make the type \"integer\"");
      }
      continue;
    }
    const bool isCondition = summary == SummaryOf::Any || summary == SummaryOf::Every;
    if (isCondition != (definition.type == FactType::Boolean) || (!isCondition && !isNumber(definition))) {
      error(*what, definition.id, "any and every give a boolean, smallest and largest a number",
            "change the type");
      continue;
    }
    if (derivation.groupIndex >= 0) {
      derivation.program = compile(*what, derivation.group, definition.valueType, definition.id);
    }
  }
  if (kinds != 1) {
    error(node, definition.id, "a summary says one of any, every, smallest, largest, count",
          "write exactly one");
  }
  const auto where = reader.find("where");
  if (where && derivation.groupIndex >= 0) {
    derivation.where = compile(*where, derivation.group, booleanType(), definition.id);
  }
  reader.finish();
  if (!definition.group.empty()) {
    error(node, definition.id, "a summary over a group stands outside groups",
          "remove \"group\" from the fact");
  }
}

}  // namespace stile::facts
