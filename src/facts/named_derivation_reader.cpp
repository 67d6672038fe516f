// Derivations that name the facts they read: mean, worst, last, norm, score and medicine class.
#include <algorithm>
#include <array>
#include <string_view>

#include "base/near_names.h"
#include "facts/derivation_reader.h"

namespace stile::facts {
namespace {

using expression::ValueKind;

// The format's own names: medicines are members of this group under this name, and what a clinician
// found a name to be that is not known stands under the other.
constexpr const char* kMedicineGroup = "medicine";
constexpr const char* kMedicineName = "medicineName";
constexpr const char* kMedicineLookedUp = "medicineLookedUp";

bool isNumber(const Definition& definition) {
  return definition.valueType.kind == ValueKind::Number;
}

}  // namespace

void DerivationReader::readReadings(const Definition& definition, json::Node node, Derivation& derivation) {
  Reader reader(node, definition.id, issues_);
  const auto of = reader.require("of");
  if (derivation.kind == DerivedKind::Mean) {
    if (const auto newest = reader.find("last")) {
      const auto count = reader.integer("last");
      if (count && *count > 0 && *count <= 1000) {
        derivation.newest = static_cast<int>(*count);
      } else {
        error(*newest, definition.id, "\"last\" must be a number of readings", "write for example 2");
      }
    }
  }
  if (derivation.kind == DerivedKind::Last) derivation.newest = 1;
  if (derivation.kind == DerivedKind::Worst) {
    const std::string take = reader.requireString("take");
    derivation.takeLargest = take == "largest";
    if (!take.empty() && take != "largest" && take != "smallest") {
      error(*reader.find("take"), definition.id, "\"" + take + "\" is not known here",
            "write largest or smallest");
    }
  }
  reader.finish();
  if (!definition.group.empty()) {
    error(node, definition.id,
          "a " + std::string(toText(derivation.kind)) + " of readings stands outside groups",
          "remove \"group\" from the fact");
  }
  const Definition* reading = of && of->isString() ? dictionary_.find(of->string()) : nullptr;
  if (of && !reading) {
    reference(*of, {}, definition.id);
    return;
  }
  if (!reading) return;
  if (reading->groupIndex < 0) {
    error(*of, definition.id, "\"" + reading->id + "\" is in no group", "name a member of a repeating group");
    return;
  }
  const bool isAverage = derivation.kind == DerivedKind::Mean;
  const bool needsNumber = derivation.kind != DerivedKind::Last;
  const bool wholeToDecimal =
      isAverage && reading->type == FactType::Integer && definition.type == FactType::Decimal;
  if ((needsNumber && !isNumber(*reading)) || (reading->type != definition.type && !wholeToDecimal) ||
      (isAverage && definition.type == FactType::Integer) ||
      reading->valueType.unit.text != definition.valueType.unit.text ||
      reading->valueType.analyte != definition.valueType.analyte) {
    error(*of, definition.id, "\"" + reading->id + "\" has another type, unit or analyte",
          isAverage && definition.type == FactType::Integer ? "a mean is a decimal or a quantity"
                                                            : "give both the same type, unit and analyte");
    return;
  }
  derivation.of = reading->slot;
  derivation.group = reading->group;
  derivation.groupIndex = reading->groupIndex;
}

void DerivationReader::readNorm(const Definition& definition, json::Node node, Derivation& derivation) {
  Reader reader(node, definition.id, issues_);
  derivation.table = reader.requireString("table");
  const NormTable* table = dictionary_.norm(derivation.table);
  if (!derivation.table.empty() && !table) {
    error(*reader.find("table"), definition.id, "there is no norm table \"" + derivation.table + "\"",
          "name a table of rules/norms");
  }
  constexpr std::array<const char*, 3> kInputs{"of", "sex", "age"};
  for (const char* key : kInputs) {
    const auto input = reader.require(key);
    const Definition* fact = input ? reference(*input, definition.group, definition.id) : nullptr;
    if (fact && (std::string_view(key) == "sex" ? fact->type != FactType::Code || fact->isMultiple
                                                : !isNumber(*fact))) {
      error(*input, definition.id, "\"" + fact->id + "\" has the wrong type",
            "sex is a code, the others are numbers");
      fact = nullptr;
    }
    if (fact && table && std::string_view(key) == "of" &&
        !base::comparable(fact->valueType.unit, table->unit, fact->valueType.analyte)) {
      error(*input, definition.id, "the unit of \"" + fact->id + "\" cannot be compared with the table's",
            "use a table in a unit of the same kind");
      fact = nullptr;
    }
    if (fact) derivation.inputs.push_back(fact->slot);
  }
  reader.finish();
  if (derivation.inputs.size() != kInputs.size() || !table) derivation.inputs.clear();
  if (definition.type != FactType::Code) {
    error(node, definition.id, "where a result lies is a code", "make the type \"code\"");
  }
}

void DerivationReader::readScore(const Definition& definition, json::Node node, Derivation& derivation) {
  if (!node.isArray() || node.size() == 0) {
    error(node, definition.id, "a score is a list of boolean facts", "write their ids in an array");
    return;
  }
  for (std::size_t i = 0; i < node.size(); ++i) {
    const Definition* fact = reference(node.at(i), definition.group, definition.id);
    if (!fact) continue;
    if (fact->type != FactType::Boolean) {
      error(node.at(i), definition.id, "\"" + fact->id + "\" is no boolean",
            "a score counts booleans that are true");
    } else if (std::count(derivation.inputs.begin(), derivation.inputs.end(), fact->slot) > 0) {
      error(node.at(i), definition.id, "\"" + fact->id + "\" is counted twice", "name it once");
    } else {
      derivation.inputs.push_back(fact->slot);
    }
  }
  if (definition.type != FactType::Integer) {
    error(node, definition.id, "a score is an integer", "make the type \"integer\"");
  }
}

void DerivationReader::readClass(const Definition& definition, json::Node node, Derivation& derivation) {
  const std::size_t count = node.isArray() ? node.size() : 1;
  for (std::size_t i = 0; i < count; ++i)
    readClassId(definition, node.isArray() ? node.at(i) : node, derivation);
  if (count == 0)
    error(node, definition.id, "no medicine class is named", "name one, or several in an array");
  const Definition* name = dictionary_.find(kMedicineName);
  if (!name || name->group != kMedicineGroup || name->type != FactType::Text) {
    error(node, definition.id, "medicine classes need a text \"medicineName\" in a group \"medicine\"",
          "define both in the dictionary");
  } else {
    derivation.of = name->slot;
    derivation.group = name->group;
    derivation.groupIndex = name->groupIndex;
  }
  const Definition* lookedUp = dictionary_.find(kMedicineLookedUp);
  if (lookedUp && lookedUp->group == kMedicineGroup && lookedUp->type == FactType::Code &&
      !lookedUp->isMultiple)
    derivation.lookedUp = lookedUp->slot;
  if (definition.type != FactType::Boolean ||
      (!definition.group.empty() && definition.group != kMedicineGroup)) {
    error(node, definition.id, "belonging to a class is a boolean, of one medicine or of all of them",
          "make the type \"boolean\", and the group \"medicine\" or none");
  }
}

void DerivationReader::readClassId(const Definition& definition, json::Node node, Derivation& derivation) {
  if (!node.isString()) {
    error(node, definition.id, "a medicine class is named by its id", "write a string");
    return;
  }
  derivation.codes.push_back(node.string());
  const int found = dictionary_.medicines().find(node.string());
  if (found >= 0) {
    derivation.classIndices.push_back(found);
    return;
  }
  std::vector<std::string_view> ids;
  for (const MedicineClass& one : dictionary_.medicines().all()) ids.emplace_back(one.id);
  error(
      node, definition.id, "there is no medicine class \"" + node.string() + "\"",
      base::didYouMean(base::nearNames(node.string(), ids), "name a class of rules/medicines/classes.json"));
}

}  // namespace stile::facts
