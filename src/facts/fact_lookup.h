// Answers for questionnaire::isEnabled(), read from facts.
#pragma once

#include <vector>

#include "facts/enablement_plan.h"
#include "facts/fact_set.h"
#include "questionnaire/enablement.h"

namespace stile::facts {

/// Looks up the questions that the conditions of one item look at. Inside a repetition a member of the
/// same group is the one of that repetition; from outside, every repetition counts.
class FactLookup : public questionnaire::AnswerLookup {
 public:
  FactLookup(const FactSet& facts, const std::vector<EnablementPlan::Asked>& asked, int groupIndex, int repetition)
      : facts_(facts), asked_(asked), groupIndex_(groupIndex), repetition_(repetition) {}
  questionnaire::KnownAnswers answersOf(const questionnaire::Item& question) const override;

 private:
  void add(const Definition& definition, const questionnaire::Item& question, int repetition,
           questionnaire::KnownAnswers& known) const;
  void addOptions(const Definition& choice, const questionnaire::Item& question, int repetition,
                  questionnaire::KnownAnswers& known) const;

  const FactSet& facts_;
  const std::vector<EnablementPlan::Asked>& asked_;
  int groupIndex_;
  int repetition_;
};

}  // namespace stile::facts
