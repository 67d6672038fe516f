// From check-ins to the week of the plan a client stands in: the doses go on, are repeated, go back, or wait.
//
// The plan's own weeks are never changed; what moves is which of them is done now. What was not told
// never moves a client on.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/rational.h"
#include "json/reader.h"

namespace stile::records {

/// One week of a filed plan, as far as progression needs it.
struct PlannedWeek {
  base::Rational sessions = 0;          ///< the more of aerobic and strength days
  base::Rational aerobicMinutes = 0;    ///< of the whole week
  std::string words;
};

/// The plan of a filed screening; no weeks when none was made.
struct PlanOutline {
  std::vector<PlannedWeek> weeks;
  base::Rational effortHigh = 0;  ///< of all lines, on the scale of 0 to 10

  static PlanOutline of(json::Node result);  ///< member "result" of a screening's entry
};

struct CheckIn {
  base::Date date;
  std::optional<long long> sessionsDone, effort, painNextMorning, usualPain, weeksMissed;
  bool hasSymptoms = false, wasIll = false;
};

enum class Move { On, Again, Back, Half, Start };

/// The first rule whose every condition holds decides. A condition on a number that was not told does
/// not hold; `untold` holds when sessions, effort or pain were not.
struct ProgressionRule {
  std::string id;
  std::optional<long long> painFrom, effortAboveBy, weeksMissedFrom, sessionsBelowPercent;
  bool isAboveUsual = false, isIllness = false, isUntold = false;
  Move move = Move::On;
  std::string clinician, client;
};
/// Unknown members, and a rule without a condition before the last, are issues.
std::vector<ProgressionRule> readProgression(json::ObjectReader& parent, base::Issues& issues);

/// Where a client stands in the plan.
struct PlanStand {
  int week = 1;             ///< counted from 1
  base::Date since;         ///< the first day of that week
  const ProgressionRule* because = nullptr;  ///< of the last check-in; null while there was none
};

/// `begun`: the day the client started. Check-ins before it count for nothing. The weeks go on by
/// themselves between check-ins, up to the last.
PlanStand standIn(const PlanOutline& plan, base::Date begun, const std::vector<CheckIn>& checkIns, const std::vector<ProgressionRule>& rules, base::Date today);

}  // namespace stile::records
