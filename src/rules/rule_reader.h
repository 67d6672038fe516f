// One rule, one check or one source out of JSON. Used by RuleSet::load().
#pragma once

#include <optional>
#include <string>

#include "facts/dictionary.h"
#include "json/document.h"
#include "rules/rule_set.h"

namespace stile::rules {

/// nullopt when the rule cannot be used (its condition does not compile); issues say why.
std::optional<Rule> readRule(json::Node node, const std::string& topic, const std::string& file,
                             const facts::Dictionary& dictionary, const Vocabulary& vocabulary, base::Issues& issues);
Check readCheck(json::Node node, const Vocabulary& vocabulary, base::Issues& issues);
Source readSource(json::Node node, base::Issues& issues);
Policy readPolicy(json::Node node, base::Issues& issues);

}  // namespace stile::rules
