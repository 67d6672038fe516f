// Does a response satisfy its form? Every problem with its place, its path and the reason.
//
// For responses and forms of any origin: FHIR R4 QuestionnaireResponse against R4 Questionnaire. What
// needs a terminology server is told as a note and never decided here. Pure; the clock is passed in.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/issue.h"
#include "json/document.h"
#include "questionnaire/form.h"

namespace stile::answers {

/// One problem. A Note does not stand in the way of accepting the response.
struct Problem {
  std::string path;  ///< QuestionnaireResponse.item[0].answer[1].valueInteger
  base::Issue issue;
};

struct Validation {
  const questionnaire::Form* form = nullptr;  ///< nullptr: the form is not among those given
  std::vector<Problem> problems;              ///< in the order of the response

  bool hasErrors() const;
  /// Held against its form, and nothing wrong.
  bool isAcceptable() const { return form && !hasErrors(); }
};

struct ValidationOptions {
  std::string now = "1970-01-01T00:00:00Z";  ///< for today() and now() in expressions
};

/// Checks structure, values, limits, options, occurrences, enablement, calculated values and constraints.
///
/// What must be there (`required`, occurrences below the least) counts once the status is completed
/// or amended. A stated reason for having no answer (data-absent-reason asked-unknown or
/// asked-declined) satisfies `required`. An item whose enablement cannot be decided keeps a completed
/// response from being accepted. A response to a form that is not there is not refused and not
/// acceptable either: `form` is nullptr, and a note says so.
Validation validateResponse(json::Node response, const questionnaire::FormSet& forms,
                            const ValidationOptions& options = {});

}  // namespace stile::answers
