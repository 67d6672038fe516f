// The head of a response of any origin: which form, which status, when. For src/answers only.
#pragma once

#include <string>

#include "base/issue.h"
#include "json/document.h"
#include "questionnaire/form.h"

namespace stile::answers {

struct ResponseHead {
  const questionnaire::Form* form = nullptr;  ///< nullptr when it is not among the forms
  std::string status;
  std::string authored;  ///< as written

  /// Nothing more is to come: what is required must be there.
  bool isFinal() const { return status == "completed" || status == "amended"; }
};

/// Issues for what is no QuestionnaireResponse, unknown members and status, modifier extensions, an
/// impossible date; notes for a form that is not there, another version, and a date outside the time
/// in which the form may be answered. A response that names no form is held against the only form
/// given, if there is one.
ResponseHead readResponseHead(json::Node response, const questionnaire::FormSet& forms, base::Issues& issues);

}  // namespace stile::answers
