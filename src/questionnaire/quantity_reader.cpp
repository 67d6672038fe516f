#include "questionnaire/quantity_reader.h"

#include "base/unit.h"
#include "questionnaire/extension.h"

namespace stile::questionnaire {

std::optional<Quantity> readQuantity(json::Node node, const std::string& subject, base::Issues& issues) {
  json::ObjectReader reader(node, subject, issues);
  if (!reader.isObject()) return std::nullopt;
  reader.find("id");
  reader.find("extension");
  const auto valueNode = reader.require("value");
  const auto value = reader.number("value");
  if (valueNode && valueNode->isNumber() && !value) {
    reader.issue(*valueNode, "the number " + valueNode->numberText() + " is too long or too large",
                 "write it with fewer digits");
  }
  if (const auto comparator = reader.find("comparator")) {
    reader.issue(*comparator, "a quantity with a comparator is a bound, not a value",
                 "give the value, or leave the answer out");
  }
  const std::string code = reader.string("code");
  const std::string system = reader.string("system");
  const std::string remedy = "give the unit as \"system\": \"" + std::string(kUcumSystem) +
                             "\" and \"code\": a UCUM code such as mm[Hg]";
  bool hasUnit = false;
  if (code.empty()) {
    reader.issue(node, "the quantity has no unit code; units are never guessed", remedy);
  } else if (system != kUcumSystem) {
    const auto systemNode = reader.find("system");
    reader.issue(systemNode ? *systemNode : node, "the unit's system is not " + std::string(kUcumSystem),
                 remedy);
  } else if (!base::parseUnit(code)) {
    reader.issue(*reader.find("code"), "the unit \"" + code + "\" is not known",
                 "use a UCUM code such as mm[Hg] or kg");
  } else {
    hasUnit = true;
  }
  acceptUnused(reader, {"value", "comparator", "unit", "system", "code"});
  reader.finish();
  if (!value || !hasUnit || reader.find("comparator")) return std::nullopt;
  return Quantity{*value, valueNode->numberText(), code};
}

}  // namespace stile::questionnaire
