// The exercise library, purposes, starting levels and doses, loaded and checked.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "expression/program.h"
#include "facts/dictionary.h"
#include "movement/figure.h"
#include "plan/exercise.h"
#include "plan/wishes.h"
#include "rules/rule_set.h"

namespace stile::plan {

/// What a plan should cover, from most to least important.
struct Purpose {
  std::string id;
  std::string title;
  Section section = Section::Strength;
  int priority = 0;             ///< higher is served first
  int perPlan = 1;              ///< how many exercises of it
  std::string turnTo;           ///< service to ask when limits leave no option
  std::vector<std::string> sources;
};

/// One row of a starting-level table: the first whose condition is certainly true applies.
struct DoseRow {
  std::string level;                              ///< "A" gentlest
  std::map<std::string, base::Rational> amounts;  ///< minutes, sets, repetitions, seconds, days, effort …
};

struct Library {
  std::vector<Exercise> exercises;  ///< sorted by id
  std::vector<Purpose> purposes;    ///< by priority
  movement::Figures figures;        ///< by exercise id
  Wishes wishes;                    ///< goals and likings, as advice to the choice
  /// What doses.json holds besides the purposes; see doses.h. Null when it could not be read.
  struct Doses;
  std::shared_ptr<const Doses> doses;

  const Exercise* find(std::string_view id) const;
  /// Loads rules/exercises/*.json, rules/movement/*.json, rules/doses.json, rules/easing.json and rules/wishes.json and checks the whole. All issues are
  /// collected; a library with errors must not be used to plan.
  static Library load(const std::map<std::string, std::string>& files, const facts::Dictionary& dictionary,
                      const rules::RuleSet& rules, base::Issues& issues);
};

}  // namespace stile::plan
