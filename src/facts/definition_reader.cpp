#include "facts/definition_reader.h"

#include <algorithm>
#include <array>
#include <utility>

#include "base/near_names.h"
#include "json/reader.h"

namespace stile::facts {
namespace {

using base::Rational;
using expression::Value;
using expression::ValueKind;

constexpr std::array kTypes{FactType::Boolean, FactType::Integer, FactType::Decimal, FactType::Quantity,
                            FactType::Code,    FactType::Date,    FactType::Text};
constexpr std::array kConcerns{Concern::True,    Concern::False,        Concern::Rising,
                               Concern::Falling, Concern::OutsideRange, Concern::None};
constexpr std::array kUnknownAs{UnknownAs::Cautious, UnknownAs::Gate, UnknownAs::Lowest, UnknownAs::Optional};

/// The member `key` as one of a closed list of words; an issue when it is absent or another word.
template <class List>
std::optional<typename List::value_type> requireWord(json::ObjectReader& reader, std::string_view key,
                                                     const List& list) {
  const auto node = reader.require(key);
  if (!node) return std::nullopt;
  const std::string word = reader.string(key);
  std::string all;
  for (const auto value : list) {
    if (word == toText(value)) return value;
    all += (all.empty() ? "" : ", ") + std::string(toText(value));
  }
  if (node->isString()) {
    reader.issue(*node, "\"" + word + "\" is no " + std::string(key), "write one of " + all);
  }
  return std::nullopt;
}

std::optional<base::Analyte> analyteOf(std::string_view name) {
  if (name == "glucose") return base::Analyte::Glucose;
  if (name == "hba1c") return base::Analyte::HbA1c;
  if (name == "cholesterol") return base::Analyte::Cholesterol;
  if (name == "triglycerides") return base::Analyte::Triglycerides;
  return std::nullopt;
}

bool isNumber(FactType type) {
  return type == FactType::Integer || type == FactType::Decimal || type == FactType::Quantity;
}

void readValueType(json::ObjectReader& reader, Definition& definition) {
  expression::Type& type = definition.valueType;
  switch (definition.type) {
    case FactType::Boolean:
      type.kind = ValueKind::Boolean;
      break;
    case FactType::Integer:
    case FactType::Decimal:
    case FactType::Quantity:
      type.kind = ValueKind::Number;
      break;
    case FactType::Code:
      type.kind = ValueKind::Code;
      break;
    case FactType::Date:
      type.kind = ValueKind::Date;
      break;
    case FactType::Text:
      type.kind = ValueKind::Text;
      break;
  }
  type.isWhole = definition.type == FactType::Integer;
  const auto unitNode = definition.type == FactType::Quantity ? reader.require("unit") : reader.find("unit");
  const auto analyteNode = reader.find("analyte");
  if (definition.type != FactType::Quantity) {
    if (unitNode)
      reader.issue(*unitNode, "only a quantity has a unit", "remove it, or make the type \"quantity\"");
    if (analyteNode) reader.issue(*analyteNode, "only a quantity has an analyte", "remove it");
    return;
  }
  const std::string unitText = reader.string("unit");
  if (const auto unit = base::parseUnit(unitText)) {
    type.unit = *unit;
  } else if (unitNode && unitNode->isString()) {
    reader.issue(*unitNode, "\"" + unitText + "\" is no unit known here",
                 "write a UCUM unit such as \"mm[Hg]\"");
  }
  const std::string analyteText = reader.string("analyte");
  if (const auto analyte = analyteOf(analyteText)) {
    type.analyte = *analyte;
  } else if (analyteNode && analyteNode->isString()) {
    reader.issue(*analyteNode, "\"" + analyteText + "\" is no analyte",
                 "write one of glucose, hba1c, cholesterol, triglycerides");
  }
}

using Range = std::pair<std::optional<Rational>, std::optional<Rational>>;

Range readRange(json::ObjectReader& reader, std::string_view key, FactType type) {
  const auto node = reader.find(key);
  if (!node) return {};
  if (!isNumber(type)) {
    reader.issue(*node, "only numbers have a range", "remove \"" + std::string(key) + "\"");
    return {};
  }
  const bool isPair =
      node->isArray() && node->size() == 2 && node->at(0).isNumber() && node->at(1).isNumber();
  const auto low = isPair ? node->at(0).number() : std::nullopt;
  const auto high = isPair ? node->at(1).number() : std::nullopt;
  if (!low || !high || *high < *low) {
    reader.issue(*node, "\"" + std::string(key) + "\" must be two numbers, the lower first",
                 "write for example [40, 320]");
    return {};
  }
  return {low, high};
}

void readRanges(json::ObjectReader& reader, Definition& definition) {
  std::tie(definition.possibleLow, definition.possibleHigh) = readRange(reader, "possible", definition.type);
  std::tie(definition.plausibleLow, definition.plausibleHigh) =
      readRange(reader, "plausible", definition.type);
  if (definition.possibleLow && definition.plausibleLow &&
      (*definition.plausibleLow < *definition.possibleLow ||
       *definition.plausibleHigh > *definition.possibleHigh)) {
    reader.issue(*reader.find("plausible"), "the plausible range reaches beyond the possible range",
                 "narrow \"plausible\" or widen \"possible\"");
  }
}

void readSmallestChange(json::ObjectReader& reader, Definition& definition, base::Issues& issues) {
  const auto node = reader.find("smallestChange");
  if (!node) return;
  json::ObjectReader change(*node, definition.id, issues);
  const auto value = change.require("value") ? change.number("value") : std::nullopt;
  if (value && *value <= base::Rational(0))
    change.issue(*node, "the smallest change must be more than nothing", "write a positive number");
  definition.smallestChange = value;
  definition.smallestChangeSources = change.strings("sources");
  if (definition.smallestChangeSources.empty())
    change.issue(*node, "the smallest change names no source", "list source ids in \"sources\"");
  change.finish();
  if (definition.valueType.kind != ValueKind::Number)
    reader.issue(*node, "only a number has a smallest change", "remove it");
}

void readOptions(json::ObjectReader& reader, Definition& definition) {
  const auto node = reader.find("options");
  const auto multiple = reader.find("multiple");
  definition.isMultiple = reader.boolean("multiple").value_or(false);
  if (definition.type != FactType::Code) {
    if (node) reader.issue(*node, "only a code has options", "remove them, or make the type \"code\"");
    if (multiple) reader.issue(*multiple, "only a code may have several answers", "remove \"multiple\"");
    definition.isMultiple = false;
    return;
  }
  base::Issues found;
  int noneOptions = 0;
  for (const json::Node& one : reader.array("options")) {
    json::ObjectReader option(one, definition.id, found);
    OptionDefinition read;
    read.code = option.requireString("code");
    read.display = option.requireString("display");
    read.isNone = option.boolean("none").value_or(false);
    option.finish();
    if (!read.code.empty() && !isLowerCamelCase(read.code)) {
      option.issue(one, "the option code \"" + read.code + "\" is not lowerCamelCase",
                   "use letters and digits only");
    }
    if (definition.option(read.code)) {
      option.issue(one, "there is an option \"" + read.code + "\" already",
                   "give every option a code of its own");
      continue;
    }
    noneOptions += read.isNone ? 1 : 0;
    if (!read.code.empty()) definition.options.push_back(std::move(read));
  }
  for (const base::Issue& issue : found.all()) reader.issue(*node, issue.message, issue.remedy);
  if (noneOptions > 1) reader.issue(*node, "two options mean none of these", "mark only one option \"none\"");
  if (noneOptions > 0 && !definition.isMultiple) {
    reader.issue(*node, "an option means none of these, but only one answer may be given",
                 "remove \"none\", or add \"multiple\": true");
  }
}

void readFreshFor(json::ObjectReader& reader, Definition& definition, base::Issues& issues) {
  const auto node = reader.find("freshFor");
  if (!node) return;
  json::ObjectReader period(*node, definition.id, issues);
  const auto value = period.require("value") ? period.integer("value") : std::nullopt;
  const std::string unitText = period.requireString("unit");
  period.finish();
  const auto unit = base::calendarUnit(unitText);
  constexpr long long kMost = 100000;
  if (!value || *value < 0 || *value > kMost || !unit) {
    reader.issue(*node, "\"freshFor\" must be a whole number of d, wk, mo or a",
                 "write for example {\"value\": 3, \"unit\": \"mo\"}");
    return;
  }
  definition.freshFor = base::Period{static_cast<int>(*value), *unit};
}

void readWhenNotApplicable(json::ObjectReader& reader, Definition& definition) {
  const auto node = reader.find("whenNotApplicable");
  if (!node) return;
  if (definition.type == FactType::Boolean && node->isBoolean()) {
    definition.whenNotApplicable = Value::boolean(node->boolean());
  } else if (definition.type == FactType::Code && node->isString() &&
             (definition.option(node->string()) || definition.options.empty())) {
    definition.whenNotApplicable = Value::code(node->string());
  } else if (definition.type == FactType::Integer && node->isNumber() && node->integer()) {
    definition.whenNotApplicable = Value::number(*node->integer());
  } else if (definition.type == FactType::Boolean || definition.type == FactType::Code) {
    reader.issue(*node, "\"whenNotApplicable\" is no value of this fact",
                 definition.type == FactType::Boolean ? "write true or false" : "name one of its options");
  } else {
    reader.issue(*node, "only a boolean, a whole number or a code has a value when it does not apply",
                 "remove it: comparisons of this fact are then false");
  }
}

/// Which directions of concern a type can have.
void checkConcern(json::ObjectReader& reader, const Definition& definition) {
  const bool isDirection = definition.concern == Concern::Rising || definition.concern == Concern::Falling;
  bool fits = definition.concern == Concern::None;
  switch (definition.type) {
    case FactType::Boolean:
      fits = fits || definition.concern == Concern::True || definition.concern == Concern::False;
      break;
    case FactType::Code:
      fits = fits || definition.concern == Concern::True || definition.concern == Concern::False;
      break;
    case FactType::Date:
      fits = fits || isDirection;
      break;
    case FactType::Text:
      break;
    default:
      fits = fits || isDirection || definition.concern == Concern::OutsideRange;
      break;
  }
  if (!fits) {
    reader.issue(*reader.find("concern"),
                 "a " + std::string(toText(definition.type)) + " cannot have the concern \"" +
                     toText(definition.concern) + "\"",
                 "booleans and codes: true, false, none; numbers: rising, falling, outside-range, none; "
                 "dates: rising, falling, none; texts: none");
  }
}

void readSources(json::ObjectReader& reader, Definition& definition) {
  definition.sources = reader.strings("sources");
  if (reader.require("sources") && definition.sources.empty()) {
    reader.issue(*reader.find("sources"), "no source is named",
                 "list source ids, or the words \"common practice, no source\"");
  }
}

std::string requireId(json::ObjectReader& reader) {
  std::string id = reader.requireString("id");
  if (id.empty()) return id;
  reader.setSubject(id);
  if (!isLowerCamelCase(id)) {
    reader.issue(*reader.find("id"), "the id \"" + id + "\" is not lowerCamelCase",
                 "use letters and digits only, beginning with a small letter");
  }
  return id;
}

}  // namespace

bool isLowerCamelCase(std::string_view id) {
  if (id.empty() || id[0] < 'a' || id[0] > 'z') return false;
  return std::all_of(id.begin(), id.end(), [](char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') ||
           (letter >= '0' && letter <= '9');
  });
}

std::optional<DefinitionParts> readDefinition(json::Node node, const std::string& topic,
                                              base::Issues& issues) {
  json::ObjectReader reader(node, topic, issues);
  DefinitionParts parts;
  Definition& definition = parts.definition;
  definition.id = requireId(reader);
  definition.topic = topic;
  definition.place = node.place();
  definition.label = reader.requireString("label");
  const auto type = requireWord(reader, "type", kTypes);
  definition.type = type.value_or(FactType::Text);
  readValueType(reader, definition);
  parts.group = reader.find("group");
  definition.group = reader.string("group");
  parts.derived = reader.find("derived");
  parts.optional = reader.find("optional");
  readRanges(reader, definition);
  readSmallestChange(reader, definition, issues);
  readOptions(reader, definition);
  if (const auto concern = requireWord(reader, "concern", kConcerns)) {
    definition.concern = *concern;
    if (type) checkConcern(reader, definition);
  }
  readFreshFor(reader, definition, issues);
  if (const auto unknownAs = requireWord(reader, "unknownAs", kUnknownAs)) definition.unknownAs = *unknownAs;
  readWhenNotApplicable(reader, definition);
  readSources(reader, definition);
  parts.retiredFor = reader.find("retiredFor");
  definition.retiredFor = reader.string("retiredFor");
  definition.code = reader.string("code");
  if (!definition.code.empty() && definition.code.find('|') == std::string::npos) {
    reader.issue(*reader.find("code"), "a code needs its system", "write system|code");
  }
  if (definition.unknownAs == UnknownAs::Optional && !parts.optional) {
    reader.issue(node, "an optional fact needs a reason", "add \"optional\": {\"because\": \"…\"}");
  }
  reader.finish();
  if (definition.id.empty() || !type) return std::nullopt;
  return parts;
}

std::optional<Definition> readPolicy(json::Node node, base::Issues& issues) {
  json::ObjectReader reader(node, "policy", issues);
  Definition definition;
  definition.id = requireId(reader);
  definition.topic = "policy";
  definition.place = node.place();
  definition.type = FactType::Code;
  definition.valueType.kind = ValueKind::Code;
  definition.label = reader.requireString("title");
  reader.requireString("question");
  reader.requireString("decides");
  const std::string value = reader.requireString("value");
  for (const json::Node& one : reader.array("alternatives")) {
    json::ObjectReader alternative(one, definition.id, issues);
    OptionDefinition option;
    option.code = alternative.requireString("code");
    option.display = alternative.requireString("display");
    if (alternative.strings("sources").empty())
      alternative.issue(one, "the alternative names no source", "add \"sources\"");
    alternative.finish();
    if (definition.option(option.code)) {
      alternative.issue(one, "there is an alternative \"" + option.code + "\" already",
                        "give it a code of its own");
    } else if (!option.code.empty()) {
      definition.options.push_back(std::move(option));
    }
  }
  reader.require("alternatives");
  readSources(reader, definition);
  if (const auto at = reader.find("value"); at && at->isString() && !definition.option(value)) {
    std::vector<std::string_view> codes;
    for (const OptionDefinition& option : definition.options) codes.push_back(option.code);
    reader.issue(*at, "\"" + value + "\" is none of the alternatives",
                 base::didYouMean(base::nearNames(value, codes), "choose one of them"));
  }
  reader.finish();
  if (definition.id.empty() || value.empty()) return std::nullopt;
  definition.policy = Value::code(value);
  return definition;
}

}  // namespace stile::facts
