#pragma once

#include <string>
#include <string_view>

#include "json/document.h"

namespace stile::answers {

/// The text of a member; empty if it is missing or no string.
inline std::string memberText(json::Node node, std::string_view member) {
  const auto found = node.find(member);
  return found && found->isString() ? found->string() : std::string();
}

}  // namespace stile::answers
