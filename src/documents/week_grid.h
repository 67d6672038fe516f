// The week to tick: which exercise on which day, Monday to Sunday.
#pragma once

#include <array>
#include <vector>

#include "documents/document.h"
#include "documents/handout_texts.h"
#include "limits/limits.h"
#include "plan/starter_plan.h"

namespace stile::documents {

using Days = std::array<bool, 7>;

/// `count` days spread over the week, as far apart as they go; 0 to 7.
Days spreadOver(int count);

/// One set of days per line. Lines done at every session take every day on which another line is
/// done. With a limit on the whole session, strength keeps off the aerobic days where it can.
std::vector<Days> daysOf(const plan::StarterPlan& plan, const limits::Limits& limits);

/// What is done each week, without the sentence that a week is as the last one.
std::vector<std::string> weekWords(const plan::StarterPlan& plan);

/// The last week for which the days of the grid hold: those after it have more; 0 when they hold for all.
int lastWeekOfGrid(const plan::StarterPlan& plan);

Table weekGrid(const plan::StarterPlan& plan, const limits::Limits& limits, const HandoutTexts& texts);

}  // namespace stile::documents
