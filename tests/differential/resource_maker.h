// Invented resources of FHIR R4 for generated expressions.
#pragma once

#include <string>

#include "random_source.h"

namespace stile::differential {

/// The kinds there are; the expression maker knows their paths.
enum class ResourceKind { Patient, Observation, Questionnaire, QuestionnaireResponse };

/// The JSON text of one.
std::string makeResource(ResourceKind kind, Random& random);

/// Written values, as they stand in resources and in literals.
std::string makeDate(Random& random);      ///< down to the day, the month or the year
std::string makeDateTime(Random& random);  ///< with a time and an offset, or less
std::string makeTime(Random& random);
std::string makeDecimal(Random& random);
std::string makeWord(Random& random);

}  // namespace stile::differential
