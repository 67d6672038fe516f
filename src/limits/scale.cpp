#include "limits/scale.h"

#include <cstddef>

namespace stile::limits {
namespace {

constexpr std::array kActions{"none", "routine", "withinDays", "sameDay", "emergency"};
constexpr std::array kBayIds{"aerobic", "strength"};
constexpr std::array kRungs{"none", "light", "moderate", "vigorous"};
constexpr std::array kClearances{"none", "beforeVigorous", "beforeModerate", "beforeAny"};
constexpr std::array kEffortGuides{"heartRateAllowed", "effortOnly"};
constexpr std::array kProgressions{"asPlanned", "slow", "none"};
constexpr std::array kSupervisions{"none", "telephoneCheck", "inPerson"};
constexpr std::array kWithins{"routine", "days", "sameDay", "now"};

template <class Enum, std::size_t N>
const char* nameIn(const std::array<const char*, N>& names, Enum value) {
  return names[static_cast<std::size_t>(value)];
}

template <class Enum, std::size_t N>
std::optional<Enum> find(const std::array<const char*, N>& names, std::string_view id) {
  for (std::size_t i = 0; i < N; ++i)
    if (id == names[i]) return static_cast<Enum>(i);
  return std::nullopt;
}

}  // namespace

const char* idOf(Action value) { return nameIn(kActions, value); }
const char* idOf(Bay value) { return nameIn(kBayIds, value); }
const char* idOf(Rung value) { return nameIn(kRungs, value); }
const char* idOf(Clearance value) { return nameIn(kClearances, value); }
const char* idOf(EffortGuide value) { return nameIn(kEffortGuides, value); }
const char* idOf(Progression value) { return nameIn(kProgressions, value); }
const char* idOf(Supervision value) { return nameIn(kSupervisions, value); }
const char* idOf(Within value) { return nameIn(kWithins, value); }
std::optional<Action> actionOf(std::string_view id) { return find<Action>(kActions, id); }
std::optional<Rung> rungOf(std::string_view id) { return find<Rung>(kRungs, id); }
std::optional<Clearance> clearanceOf(std::string_view id) { return find<Clearance>(kClearances, id); }
std::optional<EffortGuide> effortGuideOf(std::string_view id) { return find<EffortGuide>(kEffortGuides, id); }
std::optional<Progression> progressionOf(std::string_view id) { return find<Progression>(kProgressions, id); }
std::optional<Supervision> supervisionOf(std::string_view id) { return find<Supervision>(kSupervisions, id); }
std::optional<Within> withinOf(std::string_view id) { return find<Within>(kWithins, id); }

Action actionFor(Within within) {
  switch (within) {
    case Within::Routine: return Action::Routine;
    case Within::Days: return Action::WithinDays;
    case Within::SameDay: return Action::SameDay;
    case Within::Now: return Action::Emergency;
  }
  return Action::Emergency;
}

Rung leftOpenBy(Clearance clearance) {
  switch (clearance) {
    case Clearance::None: return Rung::Vigorous;
    case Clearance::BeforeVigorous: return Rung::Moderate;
    case Clearance::BeforeModerate: return Rung::Light;
    case Clearance::BeforeAny: return Rung::None;
  }
  return Rung::None;
}

}  // namespace stile::limits
