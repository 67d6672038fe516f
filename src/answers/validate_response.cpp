#include "answers/validate_response.h"

#include <algorithm>
#include <utility>

#include "answers/response_head.h"
#include "answers/response_validator.h"
#include "json/node_path.h"

namespace stile::answers {

bool Validation::hasErrors() const {
  return std::any_of(problems.begin(), problems.end(),
                     [](const Problem& each) { return each.issue.severity == base::Severity::Error; });
}

Validation validateResponse(json::Node response, const questionnaire::FormSet& forms,
                            const ValidationOptions& options) {
  Validation result;
  base::Issues issues;
  const ResponseHead head = readResponseHead(response, forms, issues);
  result.form = head.form;
  if (head.form) ResponseValidator(response, head, options.now, issues).validate();
  for (const base::Issue& issue : issues.all()) {
    result.problems.push_back({json::pathAt(response, issue.place), issue});
  }
  std::stable_sort(result.problems.begin(), result.problems.end(), [](const Problem& a, const Problem& b) {
    return std::pair(a.issue.place.line, a.issue.place.column) <
           std::pair(b.issue.place.line, b.issue.place.column);
  });
  return result;
}

}  // namespace stile::answers
