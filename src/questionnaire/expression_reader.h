// Expressions of a form: variables, constraints, conditions, calculated and initial values. For
// src/questionnaire only.
#pragma once

#include <string>
#include <vector>

#include "json/reader.h"
#include "questionnaire/extension.h"
#include "questionnaire/item.h"

namespace stile::questionnaire {

/// enableWhenExpression, calculatedExpression, initialExpression, toggled options, variables and
/// constraints. A condition or calculation in a language other than FHIRPath is an issue: it could not be
/// followed.
void readExpressions(json::ObjectReader& reader, Extensions& extensions, Item& item, base::Issues& issues);

std::vector<Expression> readVariables(Extensions& extensions, const std::string& subject,
                                      base::Issues& issues);
std::vector<Constraint> readConstraints(Extensions& extensions, const std::string& subject,
                                        base::Issues& issues);

/// The names of sdc-questionnaire-launchContext.
std::vector<std::string> readLaunchContext(Extensions& extensions);

}  // namespace stile::questionnaire
