// One item of a Questionnaire, read from JSON without the items within it.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/issue.h"
#include "json/document.h"
#include "questionnaire/form.h"

namespace stile::questionnaire {

struct ReadItem {
  std::unique_ptr<Item> item;        ///< nullptr when it could not be read at all
  std::vector<json::Node> children;  ///< the items within it, still to be read
  std::string module;                ///< canonical of the module to take in instead of it, or ""
  bool isHelp = false;               ///< says why its parent is asked
};

/// Reads and checks what one item says about itself; what needs the whole form is checked by
/// checkForm().
ReadItem readItem(json::Node node, base::Issues& issues);

}  // namespace stile::questionnaire
