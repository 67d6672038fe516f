#include "plan/holders.h"

#include <algorithm>

namespace stile::plan {
namespace {

base::Rational lessMargin(const base::Rational& degrees, const base::Rational& margin) {
  const auto left = base::Rational::subtract(degrees, margin);
  return left && *left > base::Rational(0) ? *left : base::Rational(0);
}

/// An open finding whose rule lets the unknown pass orders no choices either.
bool counts(const rules::Finding& finding) { return finding.counted != rules::IfUnknown::Pass; }

}  // namespace

bool isNamedIn(const std::vector<std::string>& words, const Exercise& exercise) {
  return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
    return word == exercise.id || word == exercise.purpose || word == idOf(exercise.section) ||
           std::find(exercise.tags.begin(), exercise.tags.end(), word) != exercise.tags.end();
  });
}

template <class Holds>
Holders::Ids Holders::where(Holds holds) const {
  Ids ids;
  for (const rules::Finding& finding : findings_) {
    if (finding.rule != nullptr && holds(finding)) addEach(ids, {finding.rule->id});
  }
  return ids;
}

limits::Limits Holders::withMargin(limits::Limits limits) const {
  for (const rules::Finding& finding : findings_) {
    if (finding.rule == nullptr || !finding.rule->surgical) continue;
    for (const auto& [key, degrees] : finding.floor.caps) {
      // A cap that an override took out of the limits gets no margin. One that a cap of both sides
      // made superfluous does: with its margin it may be the tighter one again.
      const limits::CapKey both{key.movement, limits::Side::Both, key.qualifier};
      if (limits.caps.count(key) == 0 && limits.caps.count(both) == 0) continue;
      const base::Rational tighter = lessMargin(degrees, margin_);
      auto [at, isNew] = limits.caps.emplace(key, tighter);
      if (!isNew && tighter < at->second) at->second = tighter;
    }
  }
  return limits;
}

Holders::Ids Holders::ofBan(const std::string& ban, limits::Side side) const {
  return where([&](const rules::Finding& finding) { return limits::isBanned(finding.floor, ban, side); });
}

Holders::Ids Holders::ofCap(const Demand& demand, limits::Side side) const {
  return where([&](const rules::Finding& finding) {
    const auto cap = limits::capFor(finding.floor, demand.movement, side, demand.done);
    return cap && demand.degrees > (finding.rule->surgical ? lessMargin(*cap, margin_) : *cap);
  });
}

Holders::Ids Holders::ofRung(limits::Bay bay, limits::Rung rung) const {
  return where([&](const rules::Finding& finding) {
    return finding.floor.ceiling[bay] < rung || limits::leftOpenBy(finding.floor.clearance[bay]) < rung ||
           finding.floor.action >= limits::Action::SameDay;
  });
}

Holders::Ids Holders::ofSetting(const std::string& setting) const {
  return where([&](const rules::Finding& finding) { return finding.floor.settings.count(setting) != 0; });
}

Holders::Ids Holders::ofDoseCap(const std::string& name, const base::Rational& value) const {
  return where([&](const rules::Finding& finding) {
    const auto at = finding.floor.doseCaps.find(name);
    return at != finding.floor.doseCaps.end() && at->second <= value;
  });
}

Holders::Ids Holders::ofDoseFloor(const std::string& name, const base::Rational& value) const {
  return where([&](const rules::Finding& finding) {
    const auto at = finding.floor.doseFloors.find(name);
    return at != finding.floor.doseFloors.end() && at->second >= value;
  });
}

Holders::Ids Holders::ofLoad() const {
  return where([](const rules::Finding& f) { return f.floor.loadKilograms || f.floor.loadPercentOfMaximum; });
}

Holders::Ids Holders::ofHeartRate() const {
  return where([](const rules::Finding& f) {
    return f.floor.heartRatePerMinute || f.floor.effortGuide == limits::EffortGuide::EffortOnly;
  });
}

Holders::Ids Holders::ofProgression() const {
  return where([](const rules::Finding& f) { return f.floor.progression != limits::Progression::AsPlanned; });
}

Holders::Ids Holders::preferring(const Exercise& exercise) const {
  return where([&](const rules::Finding& finding) { return counts(finding) && isNamedIn(finding.rule->prefer, exercise); });
}

Holders::Ids Holders::discouraging(const Exercise& exercise) const {
  return where([&](const rules::Finding& finding) { return counts(finding) && isNamedIn(finding.rule->discourage, exercise); });
}

std::string inBrackets(const std::vector<std::string>& ruleIds) {
  std::string text;
  for (const std::string& id : ruleIds) text += (text.empty() ? " (" : ", ") + id;
  return text.empty() ? text : text + ")";
}

void addEach(std::vector<std::string>& into, const std::vector<std::string>& from) {
  for (const std::string& each : from) {
    if (std::find(into.begin(), into.end(), each) == into.end()) into.push_back(each);
  }
}

}  // namespace stile::plan
