// How a value is taken: with a clock, with a counter, or read off an instrument (rules/measuring.json).
// It says which rules leave a test out; whether they hold is not its matter.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/issue.h"
#include "base/rational.h"
#include "facts/dictionary.h"
#include "rules/rule_set.h"

namespace stile::rules {

/// What the tool gives.
enum class Gives {
  Entry,      ///< no tool: the value is read off and typed
  Wait,       ///< a countdown before the value is read off
  Count,      ///< what was counted until the countdown ended
  PerMinute,  ///< the same, for a minute
  Laps,       ///< metres: laps counted until the countdown ended, and what is left of the last one
  Time,       ///< seconds
  Speed,      ///< metres a second over a course
};

struct Measuring {
  int slot = -1;  ///< of the fact
  Gives gives = Gives::Entry;
  int seconds = 0;                    ///< of the countdown
  std::optional<int> upTo;            ///< a time is taken no further than this
  std::optional<base::Rational> metres;  ///< usual length of the course or of a lap
  std::vector<std::string> leftOutBy;    ///< ids of rules
  std::vector<std::string> sources;
};

/// Every fact is there, is asked, is named once and can hold what its tool gives; every rule and source exists.
std::vector<Measuring> readMeasuring(const std::string& text, const std::string& file, const facts::Dictionary& dictionary,
                                     const RuleSet& rules, base::Issues& issues);

}  // namespace stile::rules
