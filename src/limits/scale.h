// The ordered scales of a decision, each from mildest to gravest.
#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

namespace stile::limits {

/// What is to be done about the client today, whatever the plan.
enum class Action : unsigned char { None, Routine, WithinDays, SameDay, Emergency };

/// The two bays of the ladder. Aerobic work and strength work have ceilings of their own.
enum class Bay : unsigned char { Aerobic, Strength };
inline constexpr std::array<Bay, 2> kBays{Bay::Aerobic, Bay::Strength};

/// A rung of the ladder, lowest first. None = rest: usual daily activity only.
enum class Rung : unsigned char { None, Light, Moderate, Vigorous };

/// From which intensity on a physician's word is wanted first.
enum class Clearance : unsigned char { None, BeforeVigorous, BeforeModerate, BeforeAny };

enum class EffortGuide { HeartRateAllowed, EffortOnly };
enum class Progression { AsPlanned, Slow, None };
enum class Supervision { None, TelephoneCheck, InPerson };
/// How soon a referral is wanted.
enum class Within { Routine, Days, SameDay, Now };

/// Ids as they stand in rule files and in JSON output.
const char* idOf(Action value);
const char* idOf(Bay value);
const char* idOf(Rung value);
const char* idOf(Clearance value);
const char* idOf(EffortGuide value);
const char* idOf(Progression value);
const char* idOf(Supervision value);
const char* idOf(Within value);
std::optional<Action> actionOf(std::string_view id);
std::optional<Rung> rungOf(std::string_view id);
std::optional<Clearance> clearanceOf(std::string_view id);
std::optional<EffortGuide> effortGuideOf(std::string_view id);
std::optional<Progression> progressionOf(std::string_view id);
std::optional<Supervision> supervisionOf(std::string_view id);
std::optional<Within> withinOf(std::string_view id);

/// The least action today of whoever must be seen this soon.
Action actionFor(Within within);

/// The highest rung that stays usable while this clearance is wanted and not given.
Rung leftOpenBy(Clearance clearance);

/// One value per bay.
template <class T>
struct PerBay {
  T aerobic{};
  T strength{};
  T& operator[](Bay bay) { return bay == Bay::Aerobic ? aerobic : strength; }
  const T& operator[](Bay bay) const { return bay == Bay::Aerobic ? aerobic : strength; }
  bool operator==(const PerBay&) const = default;
};

}  // namespace stile::limits
