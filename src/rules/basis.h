// The facts a finding rests on, in a form that a clearance can carry: "angina=true; …".
#pragma once

#include <string>

#include "facts/fact_set.h"
#include "rules/rule.h"

namespace stile::rules {

/// The known facts that a rule's condition reads, sorted by id. A derived concern is told through
/// what it derives from, an elapsed time through its date (so that a passing week changes nothing),
/// anything else by its own value. Ids and values only: no dates of answering, no identity.
std::string basisOf(const Rule& rule, const facts::FactSet& facts, int repetition);

/// True while everything in `then` still has the value it had, and nothing that was not known or
/// not so then has become a concern.
bool stillHolds(const std::string& then, const std::string& now);

}  // namespace stile::rules
