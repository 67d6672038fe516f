// What hangs on each open question: which rules, rungs, actions and limits it can still change.
//
// Sound by construction: a question that could change something is never left out. What is left
// out is proven not to matter by bounds: no rule that its answer can move asks for more than is
// certain already. Relevance (relevance.h) can look closer.
#pragma once

#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "interview/position.h"

namespace stile::interview {

/// What can still change by the answer to one question, and the answers to others.
struct Stake {
  limits::Action couldBecome = limits::Action::None;  ///< the gravest call its rules could make
  /// It keeps the decision from being settled: an open rule that counts in full asks for more than is
  /// certain, and this question is among those that keep it open.
  bool holds = false;
  bool decides = false;           ///< action, clearance or a ceiling may change, at either end or as if granted
  unsigned parts = 0;             ///< a bit for each other limits::Part that may change
  limits::PerBay<unsigned> rungs{0, 0};  ///< a bit for each limits::Rung that may still open or shut
  std::vector<int> rules;         ///< indices of the rules it can move, ascending

  bool mattersForLimits() const { return decides || parts != 0; }
};

/// Looks at a position once; made anew after each answer.
class Stakes {
 public:
  explicit Stakes(const Position& position);

  /// Of every question of the form that can still change something; a question of a group stands
  /// under the repetition it would be asked in.
  const std::map<QuestionRef, Stake>& all() const { return all_; }
  const Stake* of(const QuestionRef& question) const;
  const Totals& totals() const { return totals_; }

 private:
  using Leaves = std::vector<QuestionRef>;

  void addRule(std::size_t rule, int repetition, const RuleState& state);
  Stake stakeOf(std::size_t rule, const RuleState& state) const;
  /// The questions that keep the decision unsettled through this rule.
  Leaves holders(const rules::Rule& rule, const RuleState& state, int repetition);
  void addLeaves(int slot, int repetition, std::vector<QuestionRef>& leaves);
  const Leaves& leavesOf(int slot, int repetition);
  void addConditions(int slot, int repetition, Leaves& leaves);
  void addInputs(int slot, int repetition, Leaves& leaves, int depth);
  void addWanted();
  Stake& stakeFor(const QuestionRef& question);

  const Position& position_;
  Totals totals_;
  Decision certainAtFloor_, certainAtReach_, certainGranted_;
  Strictest atFloor_, atReach_;
  std::vector<std::optional<Leaves>> memo_;             ///< by slot, outside groups
  std::map<std::pair<int, int>, Leaves> memoOfGroups_;  ///< by slot and repetition
  std::map<QuestionRef, Stake> all_;
  std::vector<Stake*> stakeAt_;                         ///< into all_ by place, outside groups; null = not there
};

}  // namespace stile::interview
