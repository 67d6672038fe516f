// What rules/doses.json holds: the effort scale, starting levels, doses, growth and the sentences
// of a plan. Plain data; every number a plan prints comes from here, from facts or from limits.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "expression/program.h"
#include "facts/fact_set.h"
#include "limits/limits.h"
#include "plan/easing_words.h"
#include "plan/library.h"
#include "rules/finding.h"
#include "rules/vocabulary.h"

namespace stile::plan {

/// A printed anchor of the 0-10 effort scale. `rung` is absent above vigorous: nothing is dosed there.
struct EffortAnchor {
  base::Rational from = 0, to = 0;
  std::optional<limits::Rung> rung;
  std::string name;    ///< "light"
  std::string client;  ///< "light: you could keep going for a long time"
};

/// How hard the lines of a section are at one rung.
struct EffortRow {
  Section section = Section::Aerobic;
  limits::Rung rung = limits::Rung::Light;
  base::Rational low = 0, high = 0;
  std::string words;                                   ///< names of the anchors it spans
  std::string client;                                  ///< talk test, or how much to keep in reserve
  std::optional<base::Rational> repetitionsInReserve;  ///< strength only
  std::vector<std::string> sources;
  base::Place place;
};

/// Where a client starts.
struct Level {
  DoseRow dose;
  std::string title;
  std::string because;                      ///< for the clinician
  std::optional<expression::Program> when;  ///< absent for the gentlest, which is last
  limits::PerBay<limits::Rung> rung;        ///< highest intensity to start at
  std::map<Section, int> lines;             ///< at most so many exercises of a section
  bool keepsModerate = false;               ///< moderate aerobic activity done now goes on as such
  bool staysSame = false;                   ///< always the same exercises: no harder one is named
  std::vector<std::string> sources;
};

/// Amounts every level must state.
inline constexpr std::array<std::string_view, 25> kAmounts{
    "warmUpMinutes",       "aerobicMinutes",          "aerobicDays",     "aerobicStepWeeks", "strengthSets",
    "strengthSetsGoal",    "strengthRepetitions",     "strengthRepetitionsGoal", "strengthDays", "strengthStepWeeks",
    "restSeconds",         "balanceHoldSeconds",      "balanceRepetitions", "balanceMinutes", "balanceDays",
    "balanceMinutesGoal",  "balanceStepWeeks",        "stretchRepetitionsGoal", "stretchStepWeeks",
    "stretchHoldSeconds",  "stretchRepetitions",      "stretchDays",     "stretchMinutes",      "coolDownMinutes",  "breathingMinutes"};

struct HeartRateBand {
  expression::Program low, high;  ///< per minute
  std::vector<std::string> sources;
};

/// One way in which aerobic time grows, by minutes a session or by a share of the week's total.
struct AerobicGrowth {
  std::string id;
  std::string because;                      ///< for the clinician
  std::optional<expression::Program> when;  ///< absent for the last, which always applies
  base::Rational minutesStep, percentStep;  ///< one of the two
  int everyWeeks = 0;                       ///< 0: the level's aerobicStepWeeks
  std::vector<std::string> sources;
};

/// A sentence of a plan. It stands only with a certain finding of one of `ifRules` (when any are
/// named) and without a certain one of `unlessRules`.
struct PlanSentence {
  std::string id, say;
  std::vector<std::string> ifRules, unlessRules, sources;
  base::Place place;
};

/// How the weeks grow: time before intensity.
struct Growth {
  int weeks = 12;
  base::Rational minutesGoal, daysGoal, weeklyGoal, repetitionsStep, balanceMinutesStep;
  int holdEvery = 4;   ///< every so many weeks nothing grows
  int slowFactor = 2;  ///< slow progression grows so many times less often
};

struct Library::Doses {
  std::vector<EffortAnchor> anchors;
  std::vector<EffortRow> efforts;
  std::vector<Level> levels;  ///< most active first; the last has no condition
  std::map<limits::Rung, HeartRateBand> heartRate;
  std::map<limits::Rung, base::Rational> loadPercentOfMaximum;  ///< heaviest of a rung
  Growth growth;
  std::vector<AerobicGrowth> aerobicGrowth;  ///< the first whose condition is certainly true applies
  int currentMinutesSlot = -1, currentDaysSlot = -1, currentModerateSlot = -1;
  base::Rational surgicalMargin, secondsPerRepetition, hoursBetweenStrength, leastWarmUpMinutes, leastCoolDownMinutes,
      leastAerobicMinutes;
  std::map<std::string, std::vector<PlanSentence>, std::less<>> sentences;  ///< badDay, missedWeek …
  std::map<std::string, std::string, std::less<>> phrases;                 ///< with {slots}
  std::map<std::string, std::pair<base::Rational, base::Rational>, std::less<>> ranges;
  rules::Vocabulary vocabulary;
  EasingWords easingWords;
  /// Of what has one set of sources for all of it: "effortScale", "current", "growth", "care", "loadBands".
  std::map<std::string, std::vector<std::string>, std::less<>> sources;
  std::map<std::string, std::vector<std::string>, std::less<>> wishSources;  ///< by the id of the wish

  const EffortRow* effort(Section section, limits::Rung rung) const;
  /// The sentences that apply to these findings, in order.
  std::vector<std::string> sentencesOf(std::string_view key, const std::vector<rules::Finding>& findings) const;
  /// The way in which aerobic time grows for these facts; doses.json must give one.
  const AerobicGrowth* aerobicGrowthFor(const facts::FactSet& facts) const;
  /// The phrase with its slots filled in; a slot without a value stays as it is.
  std::string phrase(std::string_view key, const std::map<std::string, std::string>& slots = {}) const;
  /// The same, or `<key>One` where the number is one and there is such a phrase.
  std::string counted(std::string_view key, const base::Rational& number,
                      const std::map<std::string, std::string>& slots) const;
};

/// Names of the anchors an effort range spans: "light", "very light to light".
std::string wordsFor(const Library::Doses& doses, const base::Rational& low, const base::Rational& high);

/// Sentences and phrases doses.json must give, and no others.
inline constexpr std::array<std::string_view, 7> kSentences{"badDay", "missedWeek", "afterIllness", "goingOn",
                                                            "notes",  "pacing",     "slow"};
inline constexpr std::array<std::string_view, 36> kPhrases{
    "minutes",       "oneSet",       "moreSets",     "oneSetEachSide", "moreSetsEachSide", "holds",
    "holdsEachSide", "balanceHolds", "balanceHoldsEachSide", "days", "everySession",   "effort",
    "reserve",       "heartRate",    "heartRateCeiling", "loadKilograms", "loadPercent",  "strengthGap",
    "leftOnly",      "rightOnly",    "weekAerobic",  "weekStrength",   "weekHeld",         "mainPartShrinks",
    "floorsOnly",    "separateDays", "minutesOne",     "daysOne",        "everyDay",
    "weekAerobicOne", "weekStrengthOne",  "range",       "weekBalance",    "weekBalanceOne",
    "weekStretch",   "weekStretchOne"};

}  // namespace stile::plan
