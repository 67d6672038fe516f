// What stands beside the lines of a plan: how long a session takes, what is at hand, and the weeks as a
// picture. No window in it.
#pragma once

#include <string>

#include "drawing/shape.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::desktop {

/// "Everything in one session takes about 34 minutes. A session has at most 40."
std::string timeWords(const plan::StarterPlan& plan, const screening::Screening& screening, const screening::Content& content);
/// The pieces that exercises can need and that are certainly there; and whether something was not asked.
std::string atHandWords(const screening::Screening& screening, const screening::Content& content);

/// Why a line is as it is or left out, in words: the planner names rules by their ids, in brackets.
struct PlainReason {
  std::string sentence;  ///< without the ids
  std::string findings;  ///< what the rules found, by title, or ""
};
PlainReason plainReasonOf(const std::string& because, const std::vector<rules::Finding>& findings);

/// A bar for the aerobic minutes of each week, and below it on how many days of the week there is aerobic
/// work and strength work.
drawing::Drawing weekCurveOf(const plan::StarterPlan& plan);

}  // namespace stile::desktop
