// How far one rule is decided on one person, and the limits that follow: a finding without words.
//
// evaluateRules() makes findings of these; the interview, which tries out many answers, needs no
// more than this.
#pragma once

#include <vector>

#include "facts/fact_set.h"
#include "limits/limits.h"
#include "rules/rule.h"

namespace stile::rules {

struct Judgement {
  expression::Truth truth = expression::Truth::False;  ///< of the condition; True = certain, Unknown = open
  IfUnknown counted = IfUnknown::Cautious;             ///< how an open rule counts
  limits::Action unsureCall = limits::Action::None;    ///< whenUnsure, if it takes effect
  std::vector<int> deciding;                           ///< the slots that decided, or that keep it open
};

/// The facts of one repetition (or of none) as the rule reads them, with its own ages.
facts::FactSlots slotsOf(const Rule& rule, const facts::FactSet& facts, int repetition, base::Date today);

/// Judges `rule` on `slots`, which slotsOf() made for it. `deciding` stays empty when it is false.
Judgement judge(const Rule& rule, const facts::FactSet& facts, const facts::FactSlots& slots);

/// What a rule that is not false contributes; see Finding.
struct Contribution {
  limits::Limits full, floor, reach;
};
Contribution contributionOf(const Rule& rule, const Judgement& judgement, const facts::FactSlots& slots);

}  // namespace stile::rules
