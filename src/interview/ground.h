// What an interview stands on and does not change while it lasts: form, dictionary, rules, date,
// and what was worked out of them beforehand.
#pragma once

#include <memory>
#include <set>
#include <string>
#include <vector>

#include "facts/dependents.h"
#include "interview/question.h"
#include "interview/rule_shape.h"
#include "rules/finding_reads.h"
#include "rules/rule_set.h"
#include "screening/clearance.h"

namespace stile::interview {

class Ground {
 public:
  /// `plan`: of the facts the interview will work on. `planSlots`: facts that the starter plan
  /// reads besides the limits. Everything passed by reference must outlive the ground.
  Ground(const facts::Dictionary& dictionary, const rules::RuleSet& rules, const questionnaire::Form& form,
         std::shared_ptr<const facts::EnablementPlan> plan, base::Date today,
         std::vector<screening::ClearanceReply> replies = {}, const std::set<int>& planSlots = {});

  const facts::Dictionary& dictionary() const { return dictionary_; }
  const rules::RuleSet& rules() const { return rules_; }
  const questionnaire::Form& form() const { return form_; }
  const facts::Dependents& dependents() const { return dependents_; }
  base::Date today() const { return today_; }
  const std::vector<screening::ClearanceReply>& replies() const { return replies_; }
  const Questions& questions() const { return questions_; }
  const LimitKeys& keys() const { return keys_; }

  /// The intensity the client wants; while it is not known, the lowest.
  limits::Rung wantedIntensity(const facts::FactSet& facts) const;
  int wantedSlot() const { return wantedSlot_; }  ///< -1 when nobody asks

  /// On what the findings of the rules rest.
  const rules::FindingReads& findingReads() const { return findingReads_; }
  const RuleShape& shape(std::size_t rule) const { return shapes_[rule]; }
  bool hasReply(std::size_t rule) const { return hasReply_[rule]; }
  /// Indices of the rules that a slot, or the repetitions of a group, can change directly.
  const std::vector<int>& rulesReading(int slot) const { return rulesReading_[static_cast<std::size_t>(slot)]; }
  const std::vector<int>& rulesOver(int group) const { return rulesOver_[static_cast<std::size_t>(group)]; }
  /// The facts through which the starter plan reads the answer, directly or derived; empty when it does not.
  const std::vector<int>& planSlotsFrom(int place) const { return planSlotsFrom_[static_cast<std::size_t>(place)]; }

 private:
  const facts::Dictionary& dictionary_;
  const rules::RuleSet& rules_;
  const questionnaire::Form& form_;
  facts::Dependents dependents_;
  base::Date today_;
  int wantedSlot_ = -1;
  std::vector<screening::ClearanceReply> replies_;
  Questions questions_;
  LimitKeys keys_;
  rules::FindingReads findingReads_;
  std::vector<RuleShape> shapes_;
  std::vector<bool> hasReply_;
  std::vector<std::vector<int>> rulesReading_, rulesOver_, planSlotsFrom_;
};

}  // namespace stile::interview
