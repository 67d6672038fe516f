// A FHIR Quantity with a UCUM unit: the number as written and its unit.
#pragma once

#include <optional>
#include <string>

#include "base/issue.h"
#include "base/rational.h"
#include "json/document.h"

namespace stile::questionnaire {

struct Quantity {
  base::Rational value;
  std::string valueText;  ///< digits as written
  std::string unit;       ///< UCUM code
};

/// nullopt and issues when the value or the unit's code is missing, the system is not UCUM, the unit
/// is not known, or a comparator makes it a bound instead of a value.
std::optional<Quantity> readQuantity(json::Node node, const std::string& subject, base::Issues& issues);

}  // namespace stile::questionnaire
