// Sentences with slots: `{factId}` puts in the value of a fact.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "facts/fact_set.h"
#include "rules/rule.h"

namespace stile::rules {

/// Ids between braces, in order of appearance.
std::vector<std::string> slotsIn(const std::string& sentence);

/// The sentence with every slot filled in from one repetition (or none) of the facts. A slot
/// without a known value reads "not known"; the checker sees to it that this does not happen.
std::string fillIn(const std::string& sentence, const facts::FactSet& facts, const std::string& group, int repetition);

}  // namespace stile::rules
