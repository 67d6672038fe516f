// All facts of one client on one date: every dictionary entry has a value, known or not.
//
// What was given is kept beside what counts today. Base facts are changed through give() and
// forget(); settle() then works out everything that follows from them.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "answers/response.h"
#include "facts/dictionary.h"
#include "facts/fact.h"
#include "json/document.h"
#include "questionnaire/form.h"

namespace stile::facts {

class EnablementPlan;

/// Facts by slot; members of a repeating group are kept per repetition. An unanswered group is
/// one repetition of unknowns; a group known to be empty has none.
class FactSet {
 public:
  explicit FactSet(const Dictionary& dictionary);
  const Dictionary& dictionary() const { return *dictionary_; }
  const Fact& at(int slot) const { return facts_[static_cast<std::size_t>(slot)]; }
  /// The group member in that repetition; a fact outside any group is the same in all of them.
  const Fact& at(int slot, int repetition) const;
  /// To write a fact's members directly. What settle() keeps is `asGiven` and `givenReason`.
  Fact& change(int slot, int repetition = -1);
  /// Sets what is known of a base fact and when it was so; call settle() afterwards.
  void give(int slot, int repetition, expression::Value value, base::PartialDate date);
  /// Takes away what is known of a base fact; call settle() afterwards.
  void forget(int slot, int repetition, UnknownReason reason);

  int repetitions(std::string_view group) const { return repetitions(dictionary_->groupIndex(group)); }
  int repetitions(int groupIndex) const;
  void setRepetitions(std::string_view group, int count);
  /// True when more repetitions than the known ones are possible (the group was not answered).
  bool isOpenEnded(std::string_view group) const { return isOpenEnded(dictionary_->groupIndex(group)); }
  bool isOpenEnded(int groupIndex) const;
  void setOpenEnded(std::string_view group, bool open);
  /// Which response the repetitions come from, as Fact::occasion.
  void setOccasion(std::string_view group, int occasion);

  /// The date of the last settle(); nullopt before it.
  const std::optional<base::Date>& settledOn() const { return settledOn_; }
  /// Names of the forms that were answered; empty = plain facts, every form counts.
  const std::vector<std::string>& formsAnswered() const { return formsAnswered_; }
  void setFormsAnswered(std::vector<std::string> names) { formsAnswered_ = std::move(names); }
  /// The conditions of the forms of the last settle(); null before it.
  const std::shared_ptr<const EnablementPlan>& plan() const { return plan_; }
  /// Conditions worked out before; settle() uses them if they are of the forms that count.
  void setPlan(std::shared_ptr<const EnablementPlan> plan) { plan_ = std::move(plan); }

 private:
  friend class EnablementClosure;
  friend class Ripple;
  friend void settleWith(FactSet&, std::shared_ptr<const EnablementPlan>, base::Date, base::Issues&);
  /// How enablement changes what was given of a group.
  enum class GroupState { AsGiven, Empty, Unconfirmed, Contradictory };
  struct Group {
    std::vector<std::vector<Fact>> repetitions;  ///< by repetition and member index
    bool isOpenEnded = true;
    int occasion = 0;  ///< as of a fact
    GroupState state = GroupState::AsGiven;
  };
  std::vector<Fact> blankRepetition(int groupIndex) const;

  const Dictionary* dictionary_;
  std::vector<Fact> facts_;
  std::vector<Group> groups_;
  std::optional<base::Date> settledOn_;
  std::vector<std::string> formsAnswered_;
  std::shared_ptr<const EnablementPlan> plan_;  ///< of the forms of the last settle()
};

/// Slots of one repetition (or of none), for running programs.
class FactSlots : public expression::Slots {
 public:
  explicit FactSlots(const FactSet& facts, std::string_view group = {}, int repetition = -1);
  static FactSlots inGroup(const FactSet& facts, int groupIndex, int repetition);
  /// The same with another age allowed for some slots, looser or stricter than the dictionary's
  /// freshFor: a base fact counts as given when it is that recent, a mean, worst or last is worked
  /// out again from the readings that are, an expression from inputs that are.
  /// `maxAge` may be null; it is read now and not kept.
  FactSlots(const FactSet& facts, std::string_view group, int repetition,
            const std::map<int, base::Period>* maxAge, base::Date today);

  const expression::Value& valueOf(int slot) const override;
  /// Why the slot is unknown, with its age as allowed here.
  UnknownReason reasonOf(int slot) const;
  /// The fact behind the slot, as the dictionary's own age leaves it.
  const Fact& factOf(int slot) const;

 private:
  struct Aged {
    int slot;
    expression::Value value;
    UnknownReason reason;
  };
  const Aged* aged(int slot) const;
  bool isInGroup(int slot) const;

  const FactSet& facts_;
  int groupIndex_ = -1;
  int repetition_ = -1;
  std::vector<Aged> aged_;
};

/// A fact at its place.
struct FactRef {
  int slot = -1;
  int repetition = -1;
  bool operator==(const FactRef&) const = default;
};

/// The base facts and options whose being unknown leaves this fact unknown, each once, in reading
/// order: what to ask. Empty when the fact is settled. A group that was not answered stands for
/// itself through its members in the repetition of unknowns.
std::vector<FactRef> openInputs(const FactSet& facts, int slot, int repetition = -1);

/// Whether unknown counts as "optional" for this fact now: it always does, or the circumstance in
/// which it does is certainly true.
bool isOptionalNow(const FactSet& facts, int slot, int repetition = -1);

/// Answers become facts: option facts, "none of these", two values for one occasion become
/// contradictory, values out of date become unknown, disabled items take whenNotApplicable;
/// then the derived facts. Implausible values are kept and asked back in `issues`.
///
/// Several responses: the newest answer to a question counts. A series of readings takes the
/// repetitions of all of them; of any other group the newest list counts. `plan`: the conditions of
/// the same forms if they were worked out before.
FactSet factsFromResponses(const Dictionary& dictionary, const questionnaire::FormSet& forms,
                           const std::vector<answers::Response>& responses, base::Date today,
                           base::Issues& issues, std::shared_ptr<const EnablementPlan> plan = nullptr);

/// Whether plain facts may choose a policy's value: for trying rules out, never for a client.
enum class PolicyChoice { Refused, Allowed };

/// The same from a plain JSON object of fact names and values (see DEVELOPERS.md, "Plain facts").
/// A member "date" says when all of it was so; without it, today.
FactSet factsFromPlain(const Dictionary& dictionary, const questionnaire::FormSet& forms, json::Node object,
                       base::Date today, base::Issues& issues, PolicyChoice policies = PolicyChoice::Refused);

/// Runs enablement closure, freshness and the derived facts again after base facts changed.
void settle(FactSet& facts, const questionnaire::FormSet& forms, base::Date today, base::Issues& issues);
/// The same with conditions that were worked out before.
void settleWith(FactSet& facts, std::shared_ptr<const EnablementPlan> plan, base::Date today, base::Issues& issues);

}  // namespace stile::facts
