// What a response says about the questions of its form, for enablement as the faces show it.
#pragma once

#include <map>

#include "answers/response.h"
#include "questionnaire/enablement.h"

namespace stile::answers {

/// Answers for questionnaire::isEnabled(). A question that is absent from the response, or has a
/// stated absence, is incomplete; so is one answered by words instead of an option. A question
/// that is certainly disabled does not apply, whatever was answered.
///
/// `repetition` says which repetition of a group its members are looked up in; with -1 members of
/// repeating groups are not known. Nothing of the response is kept;
/// its form must outlive the lookup.
class ResponseLookup : public questionnaire::AnswerLookup {
 public:
  explicit ResponseLookup(const Response& response, int repetition = -1);
  questionnaire::KnownAnswers answersOf(const questionnaire::Item& question) const override;

 private:
  std::map<const questionnaire::Item*, questionnaire::KnownAnswers> known_;
};

}  // namespace stile::answers
