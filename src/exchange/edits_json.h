// A clinician's edits of a plan, read from JSON. What they do to the plan is told by plan/.
#pragma once

#include <string>

#include "base/issue.h"
#include "plan/edit.h"

namespace stile::exchange {

/// Reads `{"by": "…", "edits": [{"swap": "…", "with": "…", "override": "…"}, …]}`; `name` is the file, for
/// issues.
plan::Edits readEdits(const std::string& text, const std::string& name, base::Issues& issues);

}  // namespace stile::exchange
