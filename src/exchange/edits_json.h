// A clinician's edits of a plan as JSON. What they do to the plan is told by plan/.
#pragma once

#include <string>

#include "base/issue.h"
#include "json/document.h"
#include "plan/edit.h"

namespace stile::exchange {

/// Reads `{"by": "…", "edits": [{"swap": "…", "with": "…", "override": "…"}, …]}`; `name` is the file, for
/// issues.
plan::Edits readEdits(const std::string& text, const std::string& name, base::Issues& issues);
/// Writes the object that readEdits() reads.
void writeEdits(json::Writer& writer, const plan::Edits& edits);
std::string editsAsJson(const plan::Edits& edits);

}  // namespace stile::exchange
