// One item of a Questionnaire, read from JSON without the items within it.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/issue.h"
#include "json/document.h"
#include "questionnaire/item.h"
#include "questionnaire/value_set.h"

namespace stile::questionnaire {

struct ReadItem {
  std::unique_ptr<Item> item;        ///< nullptr when it could not be read at all
  std::vector<json::Node> children;  ///< the items within it, still to be read
  std::string module;                ///< canonical of the module to take in instead of it, or ""
  bool isHelp = false;               ///< says why its parent is asked
};

/// Reads and checks what one item says about itself, as the standard has it; what needs the whole form
/// is checked by checkForm(), what our own content asks for besides by checkOwnForm().
ReadItem readItem(json::Node node, const ContainedValueSets& valueSets, base::Issues& issues);

}  // namespace stile::questionnaire
