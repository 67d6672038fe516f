// Conformance cases for FHIRPath: an expression, its input, and what it must give. The form is that
// of the official suite as JSON: an array of objects with group, name, inputfile, mode, predicate,
// invalid, expression and outputs.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/issue.h"
#include "expression/clock.h"
#include "expression/type_model.h"
#include "json/document.h"

namespace stile::expression {

/// One value a case must give. `type` may be empty: any.
struct SuiteOutput {
  std::string type;
  std::string value;  ///< dates with a leading @, times with @T
};

struct SuiteCase {
  std::string group;
  std::string name;
  std::string inputFile;     ///< empty: no input
  std::string text;          ///< the expression
  bool isStrict = false;     ///< members the model does not know are errors
  bool isPredicate = false;  ///< only whether the result holds counts
  std::string invalid;       ///< not empty: the case must end in an error
  std::vector<SuiteOutput> outputs;
};

/// All cases, or nullopt and located issues when the document has another form.
std::optional<std::vector<SuiteCase>> readSuite(json::Node root, base::Issues& issues);

/// How a case came out.
struct Verdict {
  bool agrees = false;
  std::string given;   ///< the result in words, or the error
  std::string wanted;  ///< what the case asks for, in words
};

/// Evaluates a case on its input (none for cases without one). Pure.
Verdict judge(const SuiteCase& suiteCase, const std::optional<json::Node>& input, const Clock& clock,
              const TypeModel& model);

}  // namespace stile::expression
