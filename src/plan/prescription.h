// How much of what: the starting level and the doses of each section under the limits, before any
// exercise is chosen. Every amount is the level's, lowered by dose caps and raised by dose floors;
// it does not depend on which exercises are chosen, so tightening a cap never raises a dose.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "plan/doses.h"
#include "plan/holders.h"
#include "plan/starter_plan.h"

namespace stile::plan {

/// What the lines of one section are given.
struct SectionDose {
  bool isOpen = false;
  std::string shutBecause;             ///< for the clinician; empty when open
  std::vector<std::string> shutBy;     ///< rule ids
  limits::Rung rung = limits::Rung::None;  ///< highest intensity of an exercise
  Dose dose;                           ///< numbers of a line; words are written per exercise
  std::string effortWords, effortClient;
  int linesAtMost = 0;
  std::vector<std::string> shapedBy;   ///< rules whose limits changed the level's amounts
};

struct Prescription {
  const Level* level = nullptr;
  std::string levelBecause;
  std::map<Section, SectionDose> sections;
  std::optional<int> sessionMinutes;       ///< the session cap
  base::Rational minutesPerSessionAtMost;  ///< ceiling of aerobic growth; the goal when nothing caps it
  base::Rational hoursBetweenStrength;
  bool mainPartShrank = false;             ///< warm-up and cool-down left less than the level's aerobic time
  bool floorsDoNotFit = false;             ///< not even they fit into the session cap
};

Prescription prescribe(const Library::Doses& doses, const Request& request, const Holders& holders);

/// A cap of the limits on a dose, in whole units.
std::optional<base::Rational> doseCap(const limits::Limits& limits, const std::string& name);
base::Rational roundedUp(const base::Rational& value);

}  // namespace stile::plan
