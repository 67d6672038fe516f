// Where an interview stands: the facts, how each rule stands on them, and both ends of the
// decision. Answers can be tried out and taken back, each in microseconds.
//
// It says the same as screening::screen() does of the same facts, without words.
#pragma once

#include <array>
#include <memory>
#include <vector>

#include "facts/ripple.h"
#include "interview/ground.h"

namespace stile::interview {

/// How one rule stands on one repetition (or on none).
struct RuleState {
  rules::Judgement judgement;
  std::shared_ptr<const Demands> floor, reach;  ///< null when the rule is false
  Decision granted;                             ///< as if its clearance were granted
  std::vector<screening::Coverage> coverage;    ///< by replies, if any names the rule

  bool isOut() const { return judgement.truth == expression::Truth::False; }
  bool isOpen() const { return judgement.truth == expression::Truth::Unknown; }
  bool isCertain() const { return judgement.truth == expression::Truth::True; }
};

/// What all rules, or the repetitions of one, make of the decision.
struct DecisionTotals {
  Decision floor, reach, granted;
  /// The reach with the open findings that count in full: the decision is settled when it equals
  /// the reach.
  Decision openInFull;
  limits::Action couldBecome = limits::Action::None;
};

/// All rules merged.
struct Totals : DecisionTotals {
  unsigned differingParts = 0;  ///< a bit for each limits::Part whose ends differ, the decision left out

  bool isSettled() const { return openInFull == reach; }
};

class Position {
 public:
  /// `facts` must be settled with the plan that `ground` was made with. `ground` must outlive it.
  Position(const Ground& ground, facts::FactSet facts);
  Position(const Position&) = delete;
  Position& operator=(const Position&) = delete;

  /// Goes over to other facts, settled as those before; nothing may be tried at the moment. As if made anew of
  /// them, but only rules are judged for which something changed.
  void restart(facts::FactSet facts);

  const Ground& ground() const { return ground_; }
  const facts::FactSet& facts() const { return facts_; }
  /// By rule, then by repetition.
  const std::vector<std::vector<RuleState>>& states() const { return states_; }
  const LimitKeys& keys() const { return keys_; }
  Totals totals() const;
  /// Of that the decision alone, in a fraction of the time.
  DecisionTotals decisionTotals() const;
  /// And the rest: a bit for each limits::Part whose ends differ.
  unsigned differingParts() const;
  /// The strictest of all demands at one end.
  void addTo(Strictest& strictest, screening::EndKind end) const;

  /// Tries an answer on top of those tried before. Answers to questions that it disables fall away.
  void push(const QuestionRef& question, const PossibleAnswer& answer);
  /// Tries what it would be if the group had exactly so many repetitions.
  void pushRepetitions(int group, int count);
  /// Takes back the last one.
  void pop();

  /// Whether the question certainly applies, so that a form shows it.
  bool isEnabled(const QuestionRef& question) const;

 private:
  /// What one rule makes of the decision.
  struct Weight {
    bool isOut = true;  ///< nothing
    DecisionTotals totals;  ///< but `granted`, which waits for the wanted intensity
    std::array<Decision, 4> granted;  ///< by the wanted intensity
  };
  struct Tried {
    facts::Ripple ripple;
    struct Before {
      std::size_t rule;
      std::vector<RuleState> states;
      Weight weight;
    };
    std::vector<Before> before;
  };

  RuleState stateOf(std::size_t rule, int repetition) const;
  void cover(RuleState& state, const rules::Rule& rule, int repetition, const rules::Contribution& contribution) const;
  std::vector<RuleState> statesOf(std::size_t rule) const;
  Weight weightOf(std::size_t rule) const;
  void judgeAgain(std::size_t rule);
  Demands demandsOfReplies() const;
  void follow();

  const Ground& ground_;
  facts::FactSet facts_;
  mutable LimitKeys keys_;  ///< those of the ground, and those met since
  std::vector<std::vector<RuleState>> states_;
  std::vector<Weight> weights_;  ///< by rule, of its states
  std::vector<Tried> tried_;
  mutable Strictest strictest_;
};

/// An answer that is tried for as long as this lives.
class Trial {
 public:
  Trial(Position& position, const QuestionRef& question, const PossibleAnswer& answer) : position_(position) {
    position_.push(question, answer);
  }
  ~Trial() { position_.pop(); }
  Trial(const Trial&) = delete;
  Trial& operator=(const Trial&) = delete;

 private:
  Position& position_;
};

}  // namespace stile::interview
