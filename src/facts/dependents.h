// What follows directly from each fact: derived facts, and the conditions of other questions.
//
// Worked out once for a dictionary and a set of forms, and shared by everything that changes facts
// one at a time.
#pragma once

#include <memory>
#include <vector>

#include "facts/dictionary.h"
#include "facts/enablement_plan.h"

namespace stile::facts {

class Dependents {
 public:
  Dependents(const Dictionary& dictionary, std::shared_ptr<const EnablementPlan> plan);

  const EnablementPlan& plan() const { return *plan_; }
  const std::shared_ptr<const EnablementPlan>& sharedPlan() const { return plan_; }
  /// True when changes can be followed one by one in the order of the forms; otherwise only
  /// settling everything again is exact.
  bool canFollow() const { return plan_->needsOneRound() && !plan_->readsDerived(); }

  /// Positions in Dictionary::derivedInOrder() of the derived facts that read this slot.
  const std::vector<int>& derivedFrom(int slot) const { return derivedFrom_[static_cast<std::size_t>(slot)]; }
  /// Positions of the derived facts that look at the repetitions of a group, or stand in it.
  const std::vector<int>& derivedFromGroup(int group) const { return fromGroup_[static_cast<std::size_t>(group)]; }
  /// Indices into plan().entries() of what applies only under conditions on this slot.
  const std::vector<int>& conditionalOn(int slot) const { return conditionalOn_[static_cast<std::size_t>(slot)]; }
  /// The entry of a conditional question or of one of its options; -1 for one that always applies.
  int entryOf(int slot) const { return entryOf_[static_cast<std::size_t>(slot)]; }
  int entryOfGroup(int group) const { return entryOfGroup_[static_cast<std::size_t>(group)]; }
  /// Every slot whose value may change when this one does, itself included, ascending.
  std::vector<int> allFrom(int slot) const;

 private:
  const Dictionary& dictionary_;
  std::shared_ptr<const EnablementPlan> plan_;
  std::vector<std::vector<int>> derivedFrom_, fromGroup_, conditionalOn_;
  std::vector<int> entryOf_, entryOfGroup_;
};

}  // namespace stile::facts
