// What needs the whole content: names that must exist, ranges, doses whose numbers, words and
// ceiling must agree.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "base/issue.h"
#include "facts/dictionary.h"
#include "plan/doses.h"
#include "plan/library.h"
#include "rules/rule_set.h"

namespace stile::plan {

void checkExercises(const Library& library, const facts::Dictionary& dictionary, const rules::RuleSet& rules,
                    base::Issues& issues);
/// `place` is where the whole file stands, for what is missing.
void checkDoses(const Library& library, const rules::RuleSet& rules,
                const std::vector<std::pair<std::string, base::Place>>& sources, const base::Place& place,
                base::Issues& issues);

}  // namespace stile::plan
