// The contact sheet: every exercise of a content folder as its figure, to be looked at by those who
// answer for the library.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/issue.h"
#include "movement/body.h"

namespace stile::application {

struct FigureSheetOptions {
  std::vector<std::string> exercises;  ///< ids; empty = all
  movement::Build build = movement::Build::Sturdy;
  bool isMirrored = false;
  bool hasEased = false;    ///< eased forms as well
  int smallerPercent = 0;   ///< each figure also that much smaller, in percent of the full movement; 0 = no
  bool hasTitles = true;    ///< false: numbers only, for a reader who is to guess
  bool hasDemands = false;  ///< the computed demands under each picture
};

/// One self-contained HTML page. Trouble in the figure files is added to `issues`; what can be drawn is.
std::string figureSheet(const std::map<std::string, std::string>& files, const FigureSheetOptions& options,
                        base::Issues& issues);

}  // namespace stile::application
