// Answers for questionnaire::isEnabled(), read from facts.
#pragma once

#include "facts/fact_set.h"
#include "questionnaire/enablement.h"

namespace stile::facts {

/// Looks questions up by their linkId, which is their fact id. Inside a repetition a member of the
/// same group is the one of that repetition; from outside, every repetition counts.
class FactLookup : public questionnaire::AnswerLookup {
 public:
  explicit FactLookup(const FactSet& facts, int groupIndex = -1, int repetition = -1)
      : facts_(facts), groupIndex_(groupIndex), repetition_(repetition) {}
  questionnaire::KnownAnswers answersOf(const questionnaire::Item& question) const override;

 private:
  void add(const Definition& definition, const questionnaire::Item& question, int repetition,
           questionnaire::KnownAnswers& known) const;
  void addOptions(const Definition& choice, const questionnaire::Item& question, int repetition,
                  questionnaire::KnownAnswers& known) const;

  const FactSet& facts_;
  int groupIndex_;
  int repetition_;
};

}  // namespace stile::facts
