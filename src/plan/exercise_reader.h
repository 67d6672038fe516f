// One file of rules/exercises/ read into exercises. Members and words only; what needs the other
// files (facts, bans, sources) is checked by library_checker.
#pragma once

#include <string>
#include <vector>

#include "base/issue.h"
#include "plan/exercise.h"

namespace stile::plan {

/// Appends the exercises of the file to `exercises`; all issues are collected.
void readExercises(const std::string& text, const std::string& file, std::vector<Exercise>& exercises,
                   base::Issues& issues);

}  // namespace stile::plan
