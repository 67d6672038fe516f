// A finding: what one rule concluded about one person, and why.
//
// Findings are results, not errors. They are made only by evaluateRules(), kept as they were
// when issued, and never edited; a clinician's view is added as an override.
#pragma once

#include <string>
#include <vector>

#include "facts/fact_set.h"
#include "limits/limits.h"
#include "rules/rule_set.h"

namespace stile::rules {

/// How far a rule's condition is decided by what is known.
enum class Standing {
  Certain,  ///< the condition is true
  Open,     ///< unknown facts leave it undecided; its holds count in the floor
};

/// One fact a finding rests on, as it was.
struct Reason {
  int slot = -1;
  std::string factId;
  std::string label;    ///< the dictionary's words
  std::string value;    ///< in words, or why it is unknown
  std::string source;   ///< form and item it came from
  bool isUnknown = false;
  facts::UnknownReason why = facts::UnknownReason::None;
};

/// The outcome of one rule on one set of facts.
///
/// Always true: `reasons` is not empty unless the rule reads no fact, and names only facts the
/// condition reads; an Open finding lists the unknown facts that keep it open.
struct Finding {
  const Rule* rule = nullptr;
  int repetition = -1;                     ///< of the rule's group
  std::string where;                       ///< the repetition in words: "hip, left"; or ""
  Standing standing = Standing::Open;
  IfUnknown counted = IfUnknown::Cautious; ///< how an Open finding counts; Cautious for Certain ones
  limits::Limits full;                     ///< what the rule asks for when its condition is true
  limits::Limits floor;                    ///< what it contributes to the cautious end
  limits::Limits reach;                    ///< what it contributes to the other end
  limits::Action unsureCall = limits::Action::None;  ///< whenUnsure, if it took effect
  std::vector<Reason> reasons;
  std::string basis;                       ///< the deciding facts and values, for a clearance to name
  Sentence say;                            ///< slots filled in
};

/// Whether a finding is for reading or only for its limits.
enum class Words {
  Full,  ///< everything
  None,  ///< `where`, `reasons` and `say` stay empty
};

/// Evaluates every rule of `ruleSet` on `facts`, in file order.
///
/// Pure: same input, same findings. A rule that is false yields none; a rule with forEach yields
/// at most one per repetition (an unanswered group is one repetition of unknowns).
std::vector<Finding> evaluateRules(const RuleSet& ruleSet, const facts::FactSet& facts, base::Date today,
                                   Words words = Words::Full);
/// The findings of one rule.
std::vector<Finding> evaluateRule(const Rule& rule, const facts::FactSet& facts, base::Date today,
                                  Words words = Words::Full);

}  // namespace stile::rules
