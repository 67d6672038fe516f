#pragma once

#include <string>

#include "questionnaire/item.h"

namespace stile::answers {

/// Where an item of a response belongs, in words: the item of the form that holds it, or the top.
inline std::string wantedPlace(const questionnaire::Item* parent) {
  if (!parent) return "at the top of the response";
  const char* kind = parent->type == questionnaire::ItemType::Group ? "in the group \"" : "in an answer of \"";
  return kind + parent->linkId + "\"";
}

}  // namespace stile::answers
