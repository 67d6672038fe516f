// Which facts certainly do not apply: the forms' enablement, three-valued and apart from what a
// form shows.
#pragma once

#include <vector>

#include "facts/enablement_plan.h"
#include "facts/fact_set.h"
#include "questionnaire/enablement.h"

namespace stile::facts {

/// Whether a conditional question (in that repetition, -1 outside groups) or group applies, in any
/// of the forms that ask it.
expression::Truth enablementOf(const FactSet& facts, const EnablementPlan::Entry& entry, int repetition);

/// Runs enablement over the forms that count for a fact set.
///
/// A fact does not apply only if its item is certainly disabled in every one of those forms that
/// asks it; it then takes its whenNotApplicable, and a repeating group has no repetitions. A value
/// given for such a fact makes it contradictory, unless it comes from an older response than the
/// answers that disable the item: then it is superseded, and while enablement is unknown it waits
/// to be confirmed.
class EnablementClosure {
 public:
  EnablementClosure(FactSet& facts, const EnablementPlan& plan, base::Date today)
      : facts_(facts), plan_(plan), today_(today) {}

  /// One round over all items in form order; true when some fact or group changed.
  bool run();
  /// One entry alone; of a question in that repetition (-1 outside groups). True when it changed.
  bool apply(const EnablementPlan::Entry& entry, int repetition) {
    return entry.group >= 0 ? applyToGroup(entry) : applyToQuestion(entry, repetition);
  }
  expression::Truth enablementOf(const EnablementPlan::Entry& entry, int repetition) const {
    return facts::enablementOf(facts_, entry, repetition);
  }
  /// The values given for items that do not apply, as the last round found them.
  void report(base::Issues& issues) const;

 private:
  using Entry = EnablementPlan::Entry;
  struct Conflict {
    const Entry* entry;
    int repetition;
    bool isHarmless;  ///< what was given is what the fact is when it does not apply
  };
  using GroupState = FactSet::GroupState;

  int occasionOf(const Entry& entry, int repetition) const;
  bool applyToGroup(const Entry& entry);
  bool applyToQuestion(const Entry& entry, int repetition);
  bool set(int slot, int repetition, expression::Value value, UnknownReason reason);

  FactSet& facts_;
  const EnablementPlan& plan_;
  base::Date today_;
  std::vector<Conflict> conflicts_;
};

}  // namespace stile::facts
