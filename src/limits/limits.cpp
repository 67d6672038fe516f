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

Limits join(const Limits& a, const Limits& b) {
  Limits sum = a;
  sum.action = std::max(a.action, b.action);
  for (const auto& [service, referral] : b.referrals) {
    auto [at, isNew] = sum.referrals.emplace(service, referral);
    if (isNew) continue;
    at->second.within = std::max(at->second.within, referral.within);
    addAll(at->second.why, referral.why);
    addAll(at->second.ask, referral.ask);
    addAll(at->second.meanwhile, referral.meanwhile);
  }
  for (const Bay bay : kBays) {
    sum.clearance[bay] = std::max(a.clearance[bay], b.clearance[bay]);
    sum.ceiling[bay] = std::min(a.ceiling[bay], b.ceiling[bay]);
  }
  keepSmallest(sum.caps, b.caps);
  dropImplied(sum.caps);
  addAll(sum.bans, b.bans);
  dropImplied(sum.bans);
  keepSmallest(sum.loadKilograms, b.loadKilograms);
  keepSmallest(sum.loadPercentOfMaximum, b.loadPercentOfMaximum);
  keepSmallest(sum.heartRatePerMinute, b.heartRatePerMinute);
  keepStrictest(sum.stopValues, b.stopValues);
  keepSmallest(sum.doseCaps, b.doseCaps);
  keepLargest(sum.doseFloors, b.doseFloors);
  addAll(sum.settings, b.settings);
  addAll(sum.timing, b.timing);
  sum.effortGuide = std::max(a.effortGuide, b.effortGuide);
  sum.progression = std::max(a.progression, b.progression);
  sum.supervision = std::max(a.supervision, b.supervision);
  addAll(sum.checks, b.checks);
  for (const auto& [measure, gate] : b.gates) {
    auto [at, isNew] = sum.gates.emplace(measure, gate);
    if (isNew) continue;
    addAll(at->second.clinician, gate.clinician);
    addAll(at->second.client, gate.client);
  }
  addAll(sum.questions, b.questions);
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
