// Facts in words, for papers and tables.
#pragma once

#include <string>
#include <string_view>

#include "facts/dictionary.h"
#include "facts/fact.h"

namespace stile::facts {

/// `138 mmHg`, `between 3 and 5 months`, `at least 3`, `yes`, an option's words, `March 2025`; the
/// reason when it is unknown: `not asked`. What was written in another unit stands in brackets.
/// Numbers are rounded for reading; nothing is decided by these words.
std::string display(const Definition& definition, const Fact& fact);

/// A UCUM unit in everyday signs: `mm[Hg]` -> `mmHg`, `/min` -> `per min`, `Cel` -> `°C`; "" for
/// pure numbers and counts such as `{steps}`.
std::string unitWords(std::string_view ucum);

}  // namespace stile::facts
