#include "questionnaire/quantity_reader.h"

#include "base/unit.h"
#include "questionnaire/extension.h"

namespace stile::questionnaire {
namespace {

/// The number; the unit is left to the caller.
std::optional<Quantity> valueOf(json::ObjectReader& reader) {
  reader.find("id");
  reader.find("extension");
  const auto valueNode = reader.require("value");
  const auto value = reader.number("value");
  if (valueNode && valueNode->isNumber() && !value) {
    reader.issue(*valueNode, "the number " + valueNode->numberText() + " is too long or too large",
                 "write it with fewer digits");
  }
  const auto comparator = reader.find("comparator");
  if (comparator) {
    reader.issue(*comparator, "a quantity with a comparator is a bound, not a value",
                 "give the value, or leave the answer out");
  }
  Quantity quantity;
  const std::string code = reader.string("code");
  quantity.system = reader.string("system");
  quantity.unitWords = reader.string("unit", code);
  acceptUnused(reader, {"value", "comparator", "unit", "system", "code"});
  reader.finish();
  if (!value || comparator) return std::nullopt;
  quantity.value = *value;
  quantity.valueText = valueNode->numberText();
  quantity.unit = code;
  return quantity;
}

}  // namespace

std::optional<Quantity> readOpenQuantity(json::Node node, const std::string& subject, base::Issues& issues) {
  json::ObjectReader reader(node, subject, issues);
  if (!reader.isObject()) return std::nullopt;
  auto quantity = valueOf(reader);
  const bool isUcum = quantity && quantity->system == kUcumSystem && base::parseUnit(quantity->unit);
  if (quantity && !isUcum) quantity->unit.clear();
  return quantity;
}

std::optional<Quantity> readQuantity(json::Node node, const std::string& subject, base::Issues& issues) {
  json::ObjectReader reader(node, subject, issues);
  if (!reader.isObject()) return std::nullopt;
  auto quantity = valueOf(reader);
  const std::string code = reader.string("code");
  const std::string remedy = "give the unit as \"system\": \"" + std::string(kUcumSystem) +
                             "\" and \"code\": a UCUM code such as mm[Hg]";
  if (code.empty()) {
    reader.issue(node, "the quantity has no unit code; units are never guessed", remedy);
  } else if (reader.string("system") != kUcumSystem) {
    const auto systemNode = reader.find("system");
    reader.issue(systemNode ? *systemNode : node, "the unit's system is not " + std::string(kUcumSystem),
                 remedy);
  } else if (!base::parseUnit(code)) {
    reader.issue(*reader.find("code"), "the unit \"" + code + "\" is not known",
                 "use a UCUM code such as mm[Hg] or kg");
  } else {
    return quantity;
  }
  return std::nullopt;
}

}  // namespace stile::questionnaire
