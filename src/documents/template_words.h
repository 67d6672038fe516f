// What a rule asks for, in words, before any client is known.
#pragma once

#include <string>
#include <vector>

#include "facts/dictionary.h"
#include "rules/rule.h"
#include "rules/rule_set.h"

namespace stile::documents {

/// One short phrase for each part that the template states.
std::vector<std::string> templateWords(const rules::LimitsTemplate& limits, const rules::RuleSet& rules,
                                       const facts::Dictionary& dictionary);

}  // namespace stile::documents
