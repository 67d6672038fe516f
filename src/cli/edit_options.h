// The options by which a clinician changes a plan, shared by every command that makes one.
#pragma once

#include <string>

#include "base/issue.h"
#include "base/result.h"
#include "plan/edit.h"

namespace CLI {
class App;
}

namespace stile::cli {

class EditOptions {
 public:
  void addEditsTo(CLI::App& command);  ///< --swap, --pin, --drop, --add, --override, --by, --edits
  /// Those of the file, then those of the command line.
  base::Result<plan::Edits> edits(base::Issues& issues) const;

 private:
  plan::Edits given_;
  std::string file_, reason_;
};

}  // namespace stile::cli
