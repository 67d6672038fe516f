// Where a value stands within its document, as a path a reader can follow.
#pragma once

#include <string>

#include "json/document.h"

namespace stile::json {

/// The path of the value (or of the member's name) that begins at `place`, below `root`:
/// `Patient.name[0].given[1]`. It begins with the root's resourceType, or `$` when it has none. A place
/// within a value gives the path of the innermost value around it; `root` for a place outside.
std::string pathAt(Node root, const base::Place& place);

}  // namespace stile::json
