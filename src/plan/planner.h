// One plan in the making: offers in, a choice, lines with their reasons out.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/choice.h"
#include "plan/offer.h"
#include "plan/week_plan.h"

namespace stile::plan {

class Planner {
 public:
  Planner(const Library& library, const Fitting& fitting)
      : library_(library),
        fitting_(fitting),
        wishes_(library.wishes.of(fitting.request.facts)),
        offers_(offersOf(library, fitting)),
        sessionMinutes_(fitting.prescription.sessionMinutes) {}

  /// Puts the edits onto the offers; gives those that cannot be followed.
  std::vector<RefusedEdit> take(const Edits& edits, const StarterPlan& unedited);
  StarterPlan run();

 private:
  ChoiceProblem problem();
  int distanceFromLevel(const Exercise& exercise) const;
  Option optionOf(const Candidate& candidate, const Dose& dose);
  void takeChoice(const Selection& selection);
  std::string editorInWords() const { return edits_.by.empty() ? "the clinician" : edits_.by; }
  std::string saidBy(const char* what, std::size_t edit) const;
  void writeLines(StarterPlan& plan) const;
  Line lineOf(const Offer& offer, const Candidate& candidate, const Dose& dose) const;
  Line lineOf(const Offer& offer, const FixedLine& fixed) const;
  /// What a line can move on to when it has become easy; what is in the plan already is nothing new.
  void writeNext(StarterPlan& plan) const;
  void writeLeftOut(StarterPlan& plan) const;
  void writeDropped(const Offer& offer, const std::string& instead, StarterPlan& plan) const;
  LeftOut uncovered(const Offer& offer) const;
  void writeAlsoOpen(StarterPlan& plan);
  void writeSentences(StarterPlan& plan) const;
  void writeFirstSteps(StarterPlan& plan) const;
  void writeWeeks(StarterPlan& plan, const PlanParts& parts) const;
  int weightOf(const Purpose& purpose) const;
  void sayWishes(Line& line) const;

  const Library& library_;
  const Fitting& fitting_;
  std::vector<const Wish*> wishes_;  ///< of this client
  std::vector<Offer> offers_;
  Edits edits_;
  std::optional<int> sessionMinutes_;
  std::vector<std::string> positions_, equipment_;
  int allMinutes_ = 0;  ///< of all lines together
};

}  // namespace stile::plan
