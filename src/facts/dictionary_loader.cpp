#include "facts/dictionary_loader.h"

#include <utility>

#include "base/near_names.h"
#include "facts/derivation_order.h"
#include "facts/derivation_reader.h"
#include "json/reader.h"

namespace stile::facts {
namespace {

using expression::Value;
using expression::ValueKind;

bool isJsonIn(const std::string& path, std::string_view folder) {
  constexpr std::string_view kEnd = ".json";
  return path.starts_with(folder) && path.ends_with(kEnd);
}

std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

/// Norm codes need no words of their own in the dictionary.
std::vector<OptionDefinition> normOptions() {
  return {{kNormBelow, "below the usual range"},
          {kNormWithin, "within the usual range"},
          {kNormAbove, "above the usual range"}};
}

}  // namespace

Dictionary Dictionary::load(const std::map<std::string, std::string>& files, base::Issues& issues) {
  return DictionaryLoader(files, issues).load();
}

DictionaryLoader::DocumentPtr DictionaryLoader::open(const std::string& path) {
  DocumentPtr document = json::Document::parse(files_.at(path), path, issues_);
  if (document) documents_.push_back(document);
  return document;
}

Dictionary DictionaryLoader::load() {
  for (const auto& [path, text] : files_) {
    if (isJsonIn(path, "rules/facts/")) readFactFile(path);
    if (isJsonIn(path, "rules/norms/")) readNorm(path);
    if (path == "rules/policy.json") readPolicies(path);
    if (path == "rules/medicines/classes.json") {
      if (const auto document = open(path))
        dictionary_.medicines_ = MedicineClasses::read(document->root(), issues_);
    }
  }
  placeInGroups();
  checkRetired();
  readDerivations();
  dictionary_.derivedInOrder_ = orderDerived(dictionary_, issues_);
  markSeries();
  return std::move(dictionary_);
}

void DictionaryLoader::readFactFile(const std::string& path) {
  const auto document = open(path);
  if (!document) return;
  json::ObjectReader reader(document->root(), path, issues_);
  const std::string topic = reader.requireString("topic");
  for (const json::Node& node : reader.array("groups")) readGroup(node, topic);
  reader.require("facts");
  for (const json::Node& node : reader.array("facts")) {
    auto parts = readDefinition(node, topic, issues_);
    if (!parts) continue;
    // Now, not with the derivation: conditions over it are checked against its options.
    if (parts->derived && parts->derived->find("norm") && parts->definition.options.empty()) {
      parts->definition.options = normOptions();
    }
    const int slot = add(parts->definition);
    if (slot < 0) continue;
    if (parts->definition.isMultiple) addOptionFacts(slot);
    parts_.emplace_back(slot, std::move(*parts));
  }
  reader.finish();
}

void DictionaryLoader::readGroup(json::Node node, const std::string& topic) {
  json::ObjectReader reader(node, topic, issues_);
  const std::string id = reader.requireString("id");
  const std::string title = reader.requireString("title");
  reader.finish();
  if (id.empty()) return;
  if (!isLowerCamelCase(id)) {
    reader.issue(node, "the group id \"" + id + "\" is not lowerCamelCase", "use letters and digits only");
  }
  if (!dictionary_.groupTitles_.emplace(id, title).second) {
    reader.issue(node, "there is a group \"" + id + "\" already",
                 "define it once; facts of other files may name it");
    return;
  }
  dictionary_.groups_.push_back(id);
}

void DictionaryLoader::readPolicies(const std::string& path) {
  const auto document = open(path);
  if (!document) return;
  json::ObjectReader reader(document->root(), path, issues_);
  reader.require("policies");
  for (const json::Node& node : reader.array("policies")) {
    if (auto definition = readPolicy(node, issues_)) add(std::move(*definition));
  }
  reader.finish();
}

void DictionaryLoader::readNorm(const std::string& path) {
  const auto document = open(path);
  if (!document) return;
  auto table = readNormTable(document->root(), issues_);
  if (!table) return;
  if (dictionary_.norm(table->id)) {
    issues_.error(document->root().place(), table->id, "there is a norm table \"" + table->id + "\" already",
                  "give it an id of its own");
    return;
  }
  dictionary_.norms_.push_back(std::move(*table));
}

int DictionaryLoader::add(Definition definition) {
  const int slot = dictionary_.size();
  const auto [at, isNew] = dictionary_.bySlot_.emplace(definition.id, slot);
  if (!isNew) {
    const base::Place& first = dictionary_.at(at->second).place;
    issues_.error(definition.place, definition.id,
                  "there is a fact \"" + definition.id + "\" already, in " + first.file + ", line " +
                      std::to_string(first.line),
                  "give it an id of its own; the facts of a choice's options are made by themselves");
    return -1;
  }
  definition.slot = slot;
  dictionary_.definitions_.push_back(std::move(definition));
  return slot;
}

void DictionaryLoader::addOptionFacts(int choice) {
  // By index: adding entries moves the definitions.
  const std::size_t count = dictionary_.at(choice).options.size();
  for (std::size_t i = 0; i < count; ++i) {
    const Definition& of = dictionary_.at(choice);
    const OptionDefinition& option = of.options[i];
    Definition fact;
    fact.id = of.id + capitalised(option.code);
    fact.type = FactType::Boolean;
    fact.label = of.label + ": " + option.display;
    fact.topic = of.topic;
    fact.group = of.group;
    // "None of these" is the one option whose absence is the concern.
    fact.concern = of.concern == Concern::None ? Concern::None
                   : option.isNone             ? Concern::False
                                               : Concern::True;
    fact.freshFor = of.freshFor;
    fact.unknownAs = of.unknownAs;
    const bool isNamed = of.whenNotApplicable && of.whenNotApplicable->text == option.code;
    fact.whenNotApplicable = Value::boolean(isNamed || (!of.whenNotApplicable && option.isNone));
    fact.derived.kind = DerivedKind::Option;
    fact.derived.of = choice;
    fact.derived.codes = {option.code};
    fact.sources = of.sources;
    fact.retiredFor = of.retiredFor;
    fact.place = of.place;
    const int slot = add(std::move(fact));
    dictionary_.definitions_[static_cast<std::size_t>(choice)].options[i].slot = slot;
  }
}

void DictionaryLoader::placeInGroups() {
  dictionary_.groupMembers_.resize(dictionary_.groups_.size());
  for (Definition& definition : dictionary_.definitions_) {
    if (definition.group.empty()) continue;
    definition.groupIndex = dictionary_.groupIndex(definition.group);
    if (definition.groupIndex < 0) {
      if (!definition.isOption()) {
        std::vector<std::string_view> names(dictionary_.groups_.begin(), dictionary_.groups_.end());
        issues_.error(definition.place, definition.id, "there is no group \"" + definition.group + "\"",
                      base::didYouMean(base::nearNames(definition.group, names), "define it in \"groups\""));
      }
      definition.group.clear();
      continue;
    }
    auto& members = dictionary_.groupMembers_[static_cast<std::size_t>(definition.groupIndex)];
    definition.memberIndex = static_cast<int>(members.size());
    members.push_back(definition.slot);
  }
  for (const std::string& group : dictionary_.groups_) {
    const Definition* fact = dictionary_.find(group);
    if (fact)
      issues_.error(fact->place, group, "a fact and a group share the id \"" + group + "\"", "rename one");
  }
}

void DictionaryLoader::checkRetired() {
  for (const auto& [slot, parts] : parts_) {
    const Definition& definition = dictionary_.at(slot);
    if (!parts.retiredFor || definition.retiredFor.empty()) continue;
    const Definition* replacement = dictionary_.find(definition.retiredFor);
    if (!replacement || replacement == &definition || !replacement->retiredFor.empty()) {
      issues_.error(parts.retiredFor->place(), definition.id,
                    "\"" + definition.retiredFor + "\" is no fact that could replace this one",
                    base::didYouMean(dictionary_.similar(definition.retiredFor), "name a fact that is in use"));
    }
  }
}

void DictionaryLoader::readDerivations() {
  DerivationReader reader(dictionary_, issues_);
  for (const auto& [slot, parts] : parts_) {
    Definition& definition = dictionary_.definitions_[static_cast<std::size_t>(slot)];
    if (parts.derived) {
      definition.derived = reader.read(definition, *parts.derived);
    }
    if (parts.optional) reader.readOptional(definition, *parts.optional);
    if (definition.type == FactType::Code && definition.options.empty()) {
      issues_.error(definition.place, definition.id, "a code needs options", "list them in \"options\"");
    }
  }
  // Options inherit the circumstance in which their choice is optional.
  for (Definition& definition : dictionary_.definitions_) {
    if (!definition.isOption()) continue;
    const Definition& choice = dictionary_.at(definition.derived.of);
    definition.optionalWhen = choice.optionalWhen;
    definition.optionalBecause = choice.optionalBecause;
  }
}

void DictionaryLoader::markSeries() {
  dictionary_.isSeries_.assign(dictionary_.groups_.size(), false);
  for (const Definition& definition : dictionary_.definitions_) {
    const DerivedKind kind = definition.derived.kind;
    const bool isOfReadings =
        kind == DerivedKind::Mean || kind == DerivedKind::Worst || kind == DerivedKind::Last;
    if (isOfReadings && definition.derived.groupIndex >= 0) {
      dictionary_.isSeries_[static_cast<std::size_t>(definition.derived.groupIndex)] = true;
    }
  }
}

}  // namespace stile::facts
