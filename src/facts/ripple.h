// One change to settled facts and everything that follows from it, and all of it undone again.
//
// Settling all facts afresh takes a thousand times as long as most answers deserve. A ripple gives
// the same values as settle() would, and touches only what the change reaches.
#pragma once

#include <memory>
#include <set>
#include <string>
#include <vector>

#include "facts/dependents.h"
#include "facts/fact_set.h"

namespace stile::facts {

class Derivations;

/// What becomes of an answer whose question no longer certainly applies.
enum class Stale {
  Kept,     ///< as settle() has it: a value that is given all the same is a contradiction
  Dropped,  ///< it is in no fact, as on a form that hides it
};

/// Always true: the set was settled with the forms of `dependents`, and ripples over one set are
/// undone in the reverse of their order.
class Ripple {
 public:
  Ripple(FactSet& facts, const Dependents& dependents, Stale stale = Stale::Kept)
      : facts_(facts), dependents_(dependents), stale_(stale) {}

  /// Says what is known of a base fact as of the day of settling; of a choice with several answers
  /// see choose(). Follow up with run().
  void give(FactRef at, expression::Value value);
  /// The same for a choice with several answers: these options are true, the others false.
  void choose(FactRef at, const std::vector<std::string>& codes);
  /// Takes away what is known of a base fact; of a choice also what is known of its options.
  void forget(FactRef at, UnknownReason reason);
  /// Puts another value in the place of a policy's.
  void decree(int policySlot, expression::Value value);
  /// Says how many repetitions a group has, and that there are no more.
  void close(int group, int repetitions);

  /// Works out what follows.
  void run();
  /// Slots that changed in value or reason, each at least once.
  const std::vector<int>& changedSlots() const { return changedSlots_; }
  /// Groups whose number of repetitions, or whether there may be more, changed.
  const std::vector<int>& changedGroups() const { return changedGroups_; }
  void undo();

 private:
  /// What stood somewhere before: one fact, one group, or everything.
  struct Saved {
    FactRef at;
    Fact fact;
    int groupIndex = -1;
    std::unique_ptr<FactSet::Group> group;
    std::unique_ptr<FactSet> everything;
  };

  void save(FactRef at);
  void saveGroup(int groupIndex);
  void start(FactRef at);
  void follow();
  void settleAgain();
  bool dropStale();
  void dropStale(int entry, int repetition);
  void apply(int entry);
  void applyToGroup(int entry);
  void groupChanged(int groupIndex);
  void derive(int position, const Derivations& derivations);
  void changed(int slot);
  void noteChanges(std::size_t savedBefore);
  std::vector<int> placesOf(int groupIndex) const;

  FactSet& facts_;
  const Dependents& dependents_;
  Stale stale_;
  std::vector<Saved> saved_;
  std::vector<int> changedSlots_, changedGroups_;
  std::set<int> entries_, derived_;  ///< still to be worked out, in their order
};

}  // namespace stile::facts
