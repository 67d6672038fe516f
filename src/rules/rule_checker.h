// What needs the whole rule set: references, sentences, modes against the dictionary.
#pragma once

#include "facts/dictionary.h"
#include "rules/rule_set.h"

namespace stile::rules {

/// Checks every rule; all trouble is collected.
void checkRules(const RuleSet& ruleSet, const facts::Dictionary& dictionary, base::Issues& issues);

}  // namespace stile::rules
