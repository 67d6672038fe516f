// One entry of the dictionary, read from JSON: everything but the expressions, which need every
// other entry to be known first.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "facts/dictionary.h"
#include "json/document.h"

namespace stile::facts {

/// An entry and the parts of it that are read in the second pass.
struct DefinitionParts {
  Definition definition;
  std::optional<json::Node> derived;
  std::optional<json::Node> optional;
  std::optional<json::Node> group;       ///< where the group is named
  std::optional<json::Node> retiredFor;  ///< where the replacement is named
};

/// nullopt when there is no usable id or type; whatever else is wrong is an issue and left out.
std::optional<DefinitionParts> readDefinition(json::Node node, const std::string& topic,
                                              base::Issues& issues);

/// A code fact from one entry of rules/policy.json; nullopt when it is unusable.
std::optional<Definition> readPolicy(json::Node node, base::Issues& issues);

/// Letters and digits, the first a small letter.
bool isLowerCamelCase(std::string_view id);

}  // namespace stile::facts
