// Which facts certainly do not apply: the forms' enablement, three-valued and apart from what a
// form shows.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "facts/fact_set.h"
#include "questionnaire/enablement.h"

namespace stile::facts {

/// Runs enablement over the forms that count for a fact set.
///
/// A fact does not apply only if its item is certainly disabled in every one of those forms that
/// asks it; it then takes its whenNotApplicable, and a repeating group has no repetitions. A value
/// given for such a fact makes it contradictory, unless it comes from an older response than the
/// answers that disable the item: then it is superseded, and while enablement is unknown it waits
/// to be confirmed.
class EnablementClosure {
 public:
  EnablementClosure(FactSet& facts, const questionnaire::FormSet& forms, base::Date today);

  /// One round over all items in form order; true when some fact or group changed.
  bool run();
  /// Whether one round is exact: every item stands in one form only, after all it depends on.
  bool needsOneRound() const { return needsOneRound_; }
  /// Whether some item depends on a derived fact.
  bool readsDerived() const { return readsDerived_; }
  /// The values given for items that do not apply, as the last round found them.
  void report(base::Issues& issues) const;

 private:
  struct Occurrence {
    const questionnaire::Item* item;
    const questionnaire::Form* form;
  };
  /// A conditional question or repeating group, wherever it stands.
  struct Entry {
    int slot = -1;   ///< of a question
    int group = -1;  ///< of a repeating group
    std::vector<Occurrence> occurrences;
    std::vector<int> gates;  ///< the facts its conditions look at
  };
  struct Conflict {
    const Entry* entry;
    int repetition;
    bool isHarmless;  ///< what was given is what the fact is when it does not apply
  };
  using GroupState = FactSet::GroupState;

  void addItem(const questionnaire::Item& item, const std::vector<const questionnaire::Form*>& forms);
  void addGates(const questionnaire::Item& item, Entry& entry);
  expression::Truth enablementOf(const Entry& entry, int repetition) const;
  int occasionOf(const Entry& entry, int repetition) const;
  bool applyToGroup(const Entry& entry);
  bool applyToQuestion(const Entry& entry, int repetition);
  /// The question's own fact and, of a choice with several answers, its option facts.
  std::vector<int> slotsOf(const Definition& question) const;
  bool set(int slot, int repetition, expression::Value value, UnknownReason reason);

  FactSet& facts_;
  base::Date today_;
  std::vector<Entry> entries_;
  std::vector<Conflict> conflicts_;
  bool needsOneRound_ = true;
  bool readsDerived_ = false;
};

}  // namespace stile::facts
