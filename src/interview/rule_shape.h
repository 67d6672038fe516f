// What each rule can contribute, worked out once: for most rules nothing depends on the person but
// how far the rule is decided.
#pragma once

#include <array>
#include <memory>
#include <vector>

#include "interview/decision.h"
#include "interview/limit_atom.h"
#include "rules/judgement.h"
#include "rules/rule_set.h"

namespace stile::interview {

/// A rule's demands at one end.
struct Demands {
  Decision decision;
  std::vector<LimitAtom> atoms;

  static Demands of(const limits::Limits& limits, LimitKeys& keys) { return {Decision::of(limits), keys.atomsOf(limits)}; }
};

/// What a rule contributes when it stands in one way.
struct Contributed {
  std::shared_ptr<const Demands> floor, reach;
};

struct RuleShape {
  /// False where sides, amounts or a signed assessment depend on the person.
  bool isFixed = true;
  limits::Action fullAction = limits::Action::None;
  /// The most it can ask for at either end, however it comes to stand. Of a rule that is not fixed
  /// the atoms are those of the strictest amounts on both sides.
  Demands mostAtFloor, mostAtReach;
  std::vector<int> reads;         ///< rules::slotsReadBy
  std::vector<int> certainReads;  ///< rules::slotsReadWhenCertain

  /// Of a fixed rule that is not false.
  const Contributed& contributed(const rules::Judgement& judgement) const { return ways[wayOf(judgement)]; }
  static std::size_t wayOf(const rules::Judgement& judgement);

  std::array<Contributed, 9> ways;
};

/// The shapes of all rules, in their order; keys are numbered in `keys`.
std::vector<RuleShape> shapesOf(const rules::RuleSet& rules, const facts::Dictionary& dictionary, base::Date today,
                                LimitKeys& keys);

}  // namespace stile::interview
