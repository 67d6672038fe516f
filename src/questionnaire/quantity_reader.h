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
  std::string unit;       ///< UCUM code; "" when there is none (readOpenQuantity only)
  std::string system;     ///< of the unit's code as written
  std::string unitWords;  ///< the unit as shown: its words, else its code
};

/// nullopt and issues when the value or the unit's code is missing, the system is not UCUM, the unit
/// is not known, or a comparator makes it a bound instead of a value.
std::optional<Quantity> readQuantity(json::Node node, const std::string& subject, base::Issues& issues);

/// The same where a quantity may come without a unit or with one of another system; `unit` is then
/// empty, and the quantity can be compared with nothing.
std::optional<Quantity> readOpenQuantity(json::Node node, const std::string& subject, base::Issues& issues);

}  // namespace stile::questionnaire
