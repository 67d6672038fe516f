// A starter plan: what this client may do first, how much, how it grows, and why each line is so.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "facts/fact_set.h"
#include "limits/limits.h"
#include "plan/edit.h"
#include "plan/library.h"
#include "rules/finding.h"

namespace stile::plan {

/// FITT in numbers; what does not apply is absent.
struct Dose {
  std::optional<base::Rational> minutes, sets, repetitions, holdSeconds, daysPerWeek, restSeconds;
  std::optional<base::Rational> effortLow, effortHigh;  ///< on the printed 0-10 scale
  std::optional<base::Rational> repetitionsInReserve;
  std::optional<base::Rational> heartRateLow, heartRateHigh;  ///< per minute, only where the guide allows it
  std::string words;                                    ///< "8 times. Rest 1 minute. 8 times more."
};

/// A line that goes beyond what the program would offer, because a clinician decided so.
struct LineOverride {
  std::string beyond;               ///< what it goes beyond, with the rules that hold it
  std::string reason;               ///< the clinician's
  std::vector<std::string> rules;
  bool needsSecond = false;         ///< a rule among them is acute: a second licensed signature is needed
};

struct Line {
  const Exercise* exercise = nullptr;
  std::string place;                     ///< for the client, where the exercise has several: "A firm bed."
  std::string side;                      ///< "" both, or "left only" …
  std::size_t form = 0;                  ///< 0 as written, n = its n-th easing; also the form that is drawn
  int percent = 100;                     ///< of the full movement, when it is done smaller; drawn so
  Dose dose;
  std::string changed;                   ///< for the client: what is adapted, or ""
  std::string saidSmaller;               ///< of `changed`, how far to go when it is done smaller, or ""
  std::vector<std::string> becauseRules; ///< rules that shaped it
  std::string chosenBecause, changedBecause;  ///< for the clinician
  std::string saidBecause;               ///< for the client: the wish that the line serves, or ""
  /// Of strength work, the harder exercise for the same purpose that is open just as written under the same
  /// limits, with what is at hand; nullptr when there is none, and for a line that is adapted or beyond
  /// limits.
  const Exercise* next = nullptr;
  std::string pinnedBy;                  ///< "Added by A. Reed.", or "" when it was chosen
  std::optional<LineOverride> override;
};

/// An exercise or a whole purpose that is not in the plan, and why.
struct LeftOut {
  std::string exerciseId;                ///< or "" for a purpose without any option
  std::string purpose;
  std::string because;                   ///< "hip bends 110 degrees, limit 90 (hip-replacement-posterior)"
  std::string instead;                   ///< id of what took its place, or ""
  std::string turnTo;                    ///< service when no option is left, or ""
};

/// An exercise that is open to the client and was not chosen: what a line can be swapped for.
struct AlsoOpen {
  const Exercise* exercise = nullptr;
  std::string because;                   ///< why another came first
};

/// One week of the way to the guideline volume.
struct Week {
  int number = 1;
  base::Rational aerobicMinutesPerSession = 0, aerobicDays = 0, aerobicMinutesPerWeek = 0;
  base::Rational strengthDays = 0, strengthSets = 0, strengthRepetitions = 0;
  base::Rational balanceMinutes = 0, balanceDays = 0;  ///< minutes of a session, all balance lines together
  base::Rational stretchRepetitions = 0;
  std::string words;
  std::string heldBy;                    ///< the cap that stops growth, or ""
};

struct StarterPlan {
  std::string level;                     ///< starting level
  std::string levelBecause;
  std::vector<Line> lines;               ///< in session order: warm-up, aerobic, strength, balance, stretches, cool-down
  std::vector<LeftOut> leftOut;
  std::vector<AlsoOpen> alsoOpen;        ///< in session order
  std::vector<Week> weeks;
  std::vector<std::string> growthReads;  ///< facts by which aerobic time grows so and not otherwise
  std::vector<std::string> effortWords;  ///< the printed anchors of the effort scale
  std::vector<std::string> firstSteps;   ///< for the client, one for each goal
  std::vector<std::string> badDay, missedWeek, afterIllness, goingOn, notes;  ///< for the client
  Edits edits;                           ///< what a clinician changed; only what was followed
  bool isEmpty() const { return lines.empty(); }
};

/// What the plan is made from.
struct Request {
  const limits::Limits& limits;
  limits::PerBay<limits::Rung> usable;
  const facts::FactSet& facts;
  const std::vector<rules::Finding>& findings;  ///< for reasons, prefer and discourage
  base::Date today;
};

/// The best plan under the limits, by a fixed order of wishes (DEVELOPERS.md, "Choosing").
/// Deterministic. With both bays at rest there are no lines.
StarterPlan makeStarterPlan(const Library& library, const Request& request);

struct EditedPlan {
  StarterPlan plan;                      ///< with every edit that could be followed
  std::vector<RefusedEdit> refused;
};

/// The best plan round the clinician's edits. What the program would not offer (beyond the limits, a
/// missing piece, later than the starting level) is taken only with a reason, which stays with the line.
/// Never with one: a shut bay, and what a rule marked absolute holds.
EditedPlan editStarterPlan(const Library& library, const Request& request, const Edits& edits);

}  // namespace stile::plan
