// Which facts can change what a rule comes to.
#pragma once

#include <vector>

#include "facts/dictionary.h"
#include "rules/rule.h"

namespace stile::rules {

/// Every slot whose value or reason can change a rule's standing, how it counts or what it asks
/// for, ascending: of its condition, of the circumstances in which those facts are optional, of
/// sides and amounts, of what settles it; and for facts with an age of the rule's own, all that
/// they derive from.
std::vector<int> slotsReadBy(const Rule& rule, const facts::Dictionary& dictionary);

/// The slots that change only sides, amounts, assessments or confirmations: what may still move a
/// rule that is certain.
std::vector<int> slotsReadWhenCertain(const Rule& rule);

}  // namespace stile::rules
