#include "limits/limits.h"

#include <array>

namespace stile::limits {
namespace {

constexpr std::array kSides{"both", "left", "right"};
constexpr std::array kQualifiers{"any", "loaded", "endRange", "fast"};

using base::Rational;

template <class Key>
void keepSmallest(std::map<Key, Rational>& into, const std::map<Key, Rational>& from) {
  for (const auto& [key, value] : from) {
    auto [at, isNew] = into.emplace(key, value);
    if (!isNew && value < at->second) at->second = value;
  }
}

template <class Key>
void keepLargest(std::map<Key, Rational>& into, const std::map<Key, Rational>& from) {
  for (const auto& [key, value] : from) {
    auto [at, isNew] = into.emplace(key, value);
    if (!isNew && value > at->second) at->second = value;
  }
}

void keepSmallest(std::optional<Rational>& into, const std::optional<Rational>& from) {
  if (from && (!into || *from < *into)) into = from;
}

template <class T>
void addAll(std::set<T>& into, const std::set<T>& from) {
  into.insert(from.begin(), from.end());
}

/// A stop "below" is stricter the higher its value, a stop "above" the lower.
void keepStrictest(std::map<StopKey, Rational>& into, const std::map<StopKey, Rational>& from) {
  for (const auto& [key, value] : from) {
    auto [at, isNew] = into.emplace(key, value);
    if (!isNew && (key.below ? value > at->second : value < at->second)) at->second = value;
  }
}

/// A cap or ban of both sides makes the same one of a single side superfluous; dropping those
/// keeps equal limits equal.
template <class Value>
void dropImplied(std::map<CapKey, Value>& caps) {
  for (auto at = caps.begin(); at != caps.end();) {
    bool implied = false;
    if (at->first.side != Side::Both) {
      const auto both = caps.find(CapKey{at->first.movement, Side::Both, at->first.qualifier});
      implied = both != caps.end() && both->second <= at->second;
    }
    at = implied ? caps.erase(at) : std::next(at);
  }
}

void dropImplied(std::set<BanKey>& bans) {
  std::erase_if(bans, [&](const BanKey& key) {
    return key.side != Side::Both && bans.count(BanKey{key.ban, Side::Both}) != 0;
  });
}

}  // namespace

const char* idOf(Side value) { return kSides[static_cast<std::size_t>(value)]; }
const char* idOf(Qualifier value) { return kQualifiers[static_cast<std::size_t>(value)]; }

std::optional<Side> sideOf(std::string_view id) {
  for (std::size_t i = 0; i < kSides.size(); ++i)
    if (id == kSides[i]) return static_cast<Side>(i);
  return std::nullopt;
}

std::optional<Qualifier> qualifierOf(std::string_view id) {
  for (std::size_t i = 0; i < kQualifiers.size(); ++i)
    if (id == kQualifiers[i]) return static_cast<Qualifier>(i);
  return std::nullopt;
}

void tightenDecision(Limits& into, const Limits& by) {
  into.action = std::max(into.action, by.action);
  for (const Bay bay : kBays) {
    into.clearance[bay] = std::max(into.clearance[bay], by.clearance[bay]);
    into.ceiling[bay] = std::min(into.ceiling[bay], by.ceiling[bay]);
  }
}

void tighten(Limits& into, const Limits& by) {
  tightenDecision(into, by);
  for (const auto& [service, referral] : by.referrals) {
    auto [at, isNew] = into.referrals.emplace(service, referral);
    if (isNew) continue;
    at->second.within = std::max(at->second.within, referral.within);
    addAll(at->second.why, referral.why);
    addAll(at->second.ask, referral.ask);
    addAll(at->second.meanwhile, referral.meanwhile);
  }
  keepSmallest(into.caps, by.caps);
  dropImplied(into.caps);
  addAll(into.bans, by.bans);
  dropImplied(into.bans);
  keepSmallest(into.loadKilograms, by.loadKilograms);
  keepSmallest(into.loadPercentOfMaximum, by.loadPercentOfMaximum);
  keepSmallest(into.heartRatePerMinute, by.heartRatePerMinute);
  keepStrictest(into.stopValues, by.stopValues);
  keepSmallest(into.doseCaps, by.doseCaps);
  keepLargest(into.doseFloors, by.doseFloors);
  addAll(into.settings, by.settings);
  addAll(into.timing, by.timing);
  into.effortGuide = std::max(into.effortGuide, by.effortGuide);
  into.progression = std::max(into.progression, by.progression);
  into.supervision = std::max(into.supervision, by.supervision);
  addAll(into.checks, by.checks);
  for (const auto& [measure, gate] : by.gates) {
    auto [at, isNew] = into.gates.emplace(measure, gate);
    if (isNew) continue;
    addAll(at->second.clinician, gate.clinician);
    addAll(at->second.client, gate.client);
  }
  addAll(into.questions, by.questions);
}

Limits join(const Limits& a, const Limits& b) {
  Limits sum = a;
  tighten(sum, b);
  return sum;
}

bool isAtMost(const Limits& a, const Limits& b) { return join(a, b) == join(b, b); }

std::optional<Rational> capFor(const Limits& limits, const std::string& movement, Side side,
                               const std::set<Qualifier>& done) {
  std::optional<Rational> smallest;
  for (const auto& [key, degrees] : limits.caps) {
    if (key.movement != movement) continue;
    if (key.side != Side::Both && side != Side::Both && key.side != side) continue;
    if (key.qualifier != Qualifier::Any && done.count(key.qualifier) == 0) continue;
    if (!smallest || degrees < *smallest) smallest = degrees;
  }
  return smallest;
}

bool isBanned(const Limits& limits, const std::string& ban, Side side) {
  for (const auto& key : limits.bans) {
    if (key.ban != ban) continue;
    if (key.side == Side::Both || side == Side::Both || key.side == side) return true;
  }
  return false;
}

}  // namespace stile::limits
