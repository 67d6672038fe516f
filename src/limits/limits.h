// Limits: everything that restrains a plan, as a record of join-semilattices.
//
// Merging only tightens, and its order never matters: join() is associative, commutative and
// idempotent, and Limits{} is its neutral element (nothing restrains). Every part of a plan and
// of a paper reads these; what is not here does not restrain anyone.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <tuple>

#include "base/rational.h"
#include "limits/scale.h"

namespace stile::limits {

enum class Side { Both, Left, Right };
enum class Qualifier { Any, Loaded, EndRange, Fast };
const char* idOf(Side value);
const char* idOf(Qualifier value);
std::optional<Side> sideOf(std::string_view id);
std::optional<Qualifier> qualifierOf(std::string_view id);

/// A joint movement that is limited in degrees.
struct CapKey {
  std::string movement;  ///< id of the vocabulary
  Side side = Side::Both;
  Qualifier qualifier = Qualifier::Any;
  auto operator<=>(const CapKey&) const = default;
};

/// Something left out altogether.
struct BanKey {
  std::string ban;  ///< id of the vocabulary
  Side side = Side::Both;
  auto operator<=>(const BanKey&) const = default;
};

/// A value at which a running session stops. `below` true: stop under the value.
struct StopKey {
  std::string measure;
  bool below = true;
  std::string unit;
  auto operator<=>(const StopKey&) const = default;
};

/// A value that must be recorded before the first session.
struct Gate {
  std::string measure;
  std::set<std::string> clinician;  ///< "do not start if …", one sentence per rule
  std::set<std::string> client;
  bool operator==(const Gate&) const = default;
};

/// A word to somebody else. Merged per service: the soonest wins, the reasons add up.
struct Referral {
  Within within = Within::Routine;
  std::set<std::string> why, ask, meanwhile;
  bool operator==(const Referral&) const = default;
};

struct Limits {
  // calls: they tell somebody to act
  Action action = Action::None;
  std::map<std::string, Referral> referrals;  ///< by service id

  // holds: they restrain the plan
  PerBay<Clearance> clearance{Clearance::None, Clearance::None};
  PerBay<Rung> ceiling{Rung::Vigorous, Rung::Vigorous};
  std::map<CapKey, base::Rational> caps;  ///< degrees, smallest wins
  std::set<BanKey> bans;
  std::optional<base::Rational> loadKilograms;         ///< smallest wins
  std::optional<base::Rational> loadPercentOfMaximum;  ///< of the one-repetition maximum
  std::optional<base::Rational> heartRatePerMinute;    ///< highest heart rate allowed
  std::map<StopKey, base::Rational> stopValues;        ///< strictest wins
  std::map<std::string, base::Rational> doseCaps;      ///< smallest wins; names in DEVELOPERS.md
  std::map<std::string, base::Rational> doseFloors;    ///< largest wins
  std::set<std::string> settings;                      ///< settings left out
  std::set<std::string> timing;
  EffortGuide effortGuide = EffortGuide::HeartRateAllowed;
  Progression progression = Progression::AsPlanned;
  Supervision supervision = Supervision::None;
  std::set<std::string> checks;                        ///< ids of checks
  std::map<std::string, Gate> gates;                   ///< by measure
  std::set<std::string> questions;                     ///< to settle with the client

  bool operator==(const Limits&) const = default;
};

/// The least record that is at least as strict as both.
Limits join(const Limits& a, const Limits& b);

/// The same in place: `into` becomes join(into, by).
void tighten(Limits& into, const Limits& by);

/// Of that only action, clearances and ceilings.
void tightenDecision(Limits& into, const Limits& by);

/// True if `b` is at least as strict as `a` in every part: join(a, b) == b.
bool isAtMost(const Limits& a, const Limits& b);

/// The smallest cap in degrees that applies to a movement, on one side, done in a given way.
/// A demand that is loaded, at end range or fast answers to those caps too.
std::optional<base::Rational> capFor(const Limits& limits, const std::string& movement, Side side,
                                     const std::set<Qualifier>& done);
/// True if the ban applies to the side (a ban of both sides applies to either).
bool isBanned(const Limits& limits, const std::string& ban, Side side = Side::Both);

/// The parts named apart, so that a reader can ask which findings hold one of them.
enum class Part { Action, Clearance, Ceiling, Caps, Bans, Load, HeartRate, StopValues, DoseCaps, DoseFloors,
                  Settings, Timing, EffortGuide, Progression, Supervision, Checks, Gates, Referrals, Questions };

}  // namespace stile::limits
