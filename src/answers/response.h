// One person's response to one form version: a FHIR R4 QuestionnaireResponse, loaded and checked.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/issue.h"
#include "base/rational.h"
#include "json/document.h"
#include "questionnaire/form.h"

namespace stile::answers {

/// Why an answer is missing, from the standard's data-absent-reason extension:
/// asked-unknown = NotSure, asked-declined = Declined, not-asked = NotAsked, unknown = NotAnswered.
enum class Absence { NotAsked, NotAnswered, NotSure, Declined };

/// One given answer. Exactly one of the members that carry a value is set.
struct Answer {
  std::optional<bool> boolean;
  std::optional<base::Rational> number;
  std::string numberText;  ///< digits as written
  std::string unit;        ///< UCUM code of a quantity; "" for plain numbers
  std::optional<std::string> code;   ///< of an offered option
  std::optional<std::string> text;   ///< free text, also uncoded text of an open choice
  std::optional<base::PartialDate> date;
  base::Place place;
};

/// Answers to one item at one place (in one repetition of its group).
struct Answered {
  std::string linkId;
  int repetition = -1;      ///< of the innermost repeating group; -1 outside any
  std::vector<Answer> answers;
  std::optional<Absence> absence;   ///< stated reason; answers are then partial or empty. An item
                                    ///< that stands there empty and gives no reason is NotAnswered
  std::optional<base::PartialDate> date;  ///< of this answer (Stile extension), else the response's
  std::string givenBy;      ///< client, carer, interpreter, record, clinician; "" = as the response
  base::Place place;
};

struct Response {
  const questionnaire::Form* form = nullptr;
  std::string formVersion;  ///< as the response names it; "" when it names none
  std::optional<base::Date> authored;
  std::string givenBy = "client";
  std::vector<Answered> answered;            ///< in document order
  std::map<std::string, int> repetitions;    ///< repeating group linkId -> how many were given
};

/// Reads one QuestionnaireResponse. nullopt and located issues when it is not acceptable: unknown
/// form or linkId, wrong value type, option not offered, unit not offered, value outside min/max,
/// several answers where one is allowed, a form version newer than ours, an impossible date.
std::optional<Response> loadResponse(json::Node node, const questionnaire::FormSet& forms, base::Issues& issues);

/// A response to `form` with every question present and marked not-asked, ready to fill in.
std::string blankResponse(const questionnaire::Form& form, base::Date authored);

}  // namespace stile::answers
