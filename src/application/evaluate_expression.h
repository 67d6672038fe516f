// The use case "evaluate an expression": FHIRPath on a resource, for authors of forms.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/issue.h"
#include "base/result.h"
#include "expression/clock.h"

namespace stile::application {

/// A variable. `text` is an expression without focus (`42`, `'abc'`), or a JSON resource when
/// `isResource`; `name` comes without the percent sign.
struct GivenVariable {
  std::string name;
  std::string text;
  bool isResource = false;
  std::string file;  ///< for issues, of a resource
};

struct EvaluationRequest {
  std::string expression;
  std::optional<std::string> resource;  ///< JSON text
  std::string file;                     ///< its name, for issues
  std::vector<GivenVariable> variables;
  expression::Clock clock;
  bool isStrict = false;  ///< elements the type model does not know are errors
};

/// The result as JSON: an array with type, value and, for what was found in the resource, file, line
/// and column. What trace() told goes to `traces`, one line each. On trouble (all of it located, in
/// `issues`) a failure.
base::Result<std::string> evaluateExpression(const EvaluationRequest& request,
                                             std::vector<std::string>& traces, base::Issues& issues);

}  // namespace stile::application
