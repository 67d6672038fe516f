#include "facts/reference.h"

#include <algorithm>

#include "expression/json_origin.h"
#include "json/reader.h"

namespace stile::facts {
namespace {

using expression::Program;
using expression::Value;

/// The inputs of one entry, as the expression checker sees them.
class InputSymbols : public expression::SymbolTable {
 public:
  explicit InputSymbols(const Reference::Entry& entry) : entry_(entry) {}
  std::optional<expression::Symbol> lookup(std::string_view name) const override {
    const auto at = std::find(entry_.inputNames.begin(), entry_.inputNames.end(), name);
    if (at == entry_.inputNames.end()) return std::nullopt;
    const auto index = static_cast<std::size_t>(at - entry_.inputNames.begin());
    return expression::Symbol{static_cast<int>(index), entry_.inputTypes[index], {}, {}};
  }
  std::vector<std::string> similar(std::string_view) const override { return entry_.inputNames; }

 private:
  const Reference::Entry& entry_;
};

class InputSlots : public expression::Slots {
 public:
  InputSlots(const Reference::Entry& entry, const Reference::Inputs& inputs) {
    for (const std::string& name : entry.inputNames) {
      const auto at = inputs.find(name);
      values_.push_back(at == inputs.end() ? Value::unknown(expression::ValueKind::Number) : Value::number(at->second));
    }
  }
  const Value& valueOf(int slot) const override { return values_[static_cast<std::size_t>(slot)]; }

 private:
  std::vector<Value> values_;
};

class EntryReader {
 public:
  EntryReader(json::Node node, const Dictionary& dictionary, base::Issues& issues)
      : reader_(node, "reference", issues), dictionary_(dictionary), issues_(issues) {}

  Reference::Entry read() {
    entry_.id = reader_.requireString("id");
    reader_.setSubject(entry_.id);
    entry_.title = reader_.requireString("title");
    for (const json::Node& node : reader_.array("inputs")) readInput(node);
    const InputSymbols symbols(entry_);
    if (const auto value = reader_.find("value")) entry_.value = compile(*value, symbols, std::nullopt);
    entry_.unitText = reader_.string("unit");
    for (const json::Node& node : reader_.array("classes")) readRow(node, symbols);
    if (entry_.value.has_value() != entry_.rows.empty())
      reader_.issue(reader_.node(), "an entry is a formula or a list of classes", "give either \"value\" or \"classes\"");
    entry_.sources = reader_.strings("sources");
    if (entry_.sources.empty()) reader_.issue(reader_.node(), "an entry names its source", "add \"sources\"");
    reader_.finish();
    return std::move(entry_);
  }

 private:
  void readInput(json::Node node) {
    json::ObjectReader input(node, entry_.id, issues_);
    const std::string name = input.requireString("name");
    const std::string unitText = input.string("unit", "1");
    expression::Type type;
    type.kind = expression::ValueKind::Number;
    if (const auto unit = base::parseUnit(unitText))
      type.unit = *unit;
    else
      input.issue(node, "\"" + unitText + "\" is no known unit", "write a UCUM unit");
    if (const std::string fact = input.string("fact"); !fact.empty()) {
      const Definition* definition = dictionary_.find(fact);
      if (definition == nullptr || !base::comparable(definition->valueType.unit, type.unit))
        input.issue(node, "the fact \"" + fact + "\" is not there or has another kind of unit", "name a fact of the dictionary");
      entry_.of[name] = fact;
    }
    input.finish();
    entry_.inputNames.push_back(name);
    entry_.inputTypes.push_back(type);
  }

  void readRow(json::Node node, const InputSymbols& symbols) {
    json::ObjectReader row(node, entry_.id, issues_);
    const std::string code = row.requireString("code");
    const std::string display = row.requireString("display");
    if (const auto when = row.require("when"))
      if (auto program = compile(*when, symbols, expression::Type{})) entry_.rows.push_back({code, display, *program});
    row.finish();
  }

  std::optional<Program> compile(json::Node node, const InputSymbols& symbols, std::optional<expression::Type> expected) {
    if (!node.isString()) {
      reader_.issue(node, "this must be an expression in quotes");
      return std::nullopt;
    }
    const expression::JsonOrigin origin(node);
    return Program::compile(node.string(), symbols, expected, origin, entry_.id, issues_);
  }

  json::ObjectReader reader_;
  const Dictionary& dictionary_;
  base::Issues& issues_;
  Reference::Entry entry_;
};

}  // namespace

Reference Reference::load(const std::string& text, const std::string& file, const Dictionary& dictionary,
                          base::Issues& issues) {
  Reference reference;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return reference;
  json::ObjectReader reader(document->root(), file, issues);
  for (const json::Node& node : reader.array("entries")) {
    Entry entry = EntryReader(node, dictionary, issues).read();
    if (reference.find(entry.id) != nullptr)
      issues.error(node.place(), entry.id, "two entries have this id", "remove one of the two");
    reference.entries_.push_back(std::move(entry));
  }
  reader.finish();
  return reference;
}

const Reference::Entry* Reference::find(std::string_view id) const {
  for (const Entry& entry : entries_)
    if (entry.id == id) return &entry;
  return nullptr;
}

std::optional<base::Rational> Reference::evaluate(std::string_view id, const Inputs& inputs) const {
  const Entry* entry = find(id);
  if (entry == nullptr || !entry->value) return std::nullopt;
  const Value value = entry->value->evaluate(InputSlots(*entry, inputs));
  return value.low && value.isSettled() ? value.low : std::nullopt;
}

const Reference::Row* Reference::classOf(std::string_view id, const Inputs& inputs) const {
  const Entry* entry = find(id);
  if (entry == nullptr) return nullptr;
  const InputSlots slots(*entry, inputs);
  for (const Row& row : entry->rows) {
    const auto truth = row.when.evaluate(slots).truth;
    if (truth == expression::Truth::True) return &row;
    if (truth == expression::Truth::Unknown) return nullptr;  // an earlier class is not ruled out
  }
  return nullptr;
}

std::optional<Reference::Inputs> Reference::inputsFrom(const Entry& entry, const FactSet& facts) {
  if (entry.of.size() != entry.inputNames.size()) return std::nullopt;
  Inputs inputs;
  for (std::size_t i = 0; i < entry.inputNames.size(); ++i) {
    const Definition& definition = *facts.dictionary().find(entry.of.at(entry.inputNames[i]));
    const Value& value = facts.at(definition.slot).value;
    if (!value.low || !value.isSettled()) return std::nullopt;
    const auto converted = base::convert(*value.low, definition.valueType.unit, entry.inputTypes[i].unit);
    if (!converted) return std::nullopt;
    inputs[entry.inputNames[i]] = *converted;
  }
  return inputs;
}

}  // namespace stile::facts
