#include "interview/limit_atom.h"

#include <set>

namespace stile::interview {

using base::Rational;
using limits::Part;
using limits::Side;

int LimitKeys::keyOf(Part part, const std::string& name, int coveredBy) {
  const std::string full = std::to_string(static_cast<int>(part)) + ":" + name;
  const auto [at, isNew] = byName_.emplace(full, size());
  if (isNew) keys_.push_back({part, coveredBy});
  return at->second;
}

/// Cuts one record up.
class AtomCutter {
 public:
  AtomCutter(LimitKeys& keys, std::vector<LimitAtom>& atoms) : keys_(keys), atoms_(atoms) {}

  void cut(const limits::Limits& limits) {
    for (const auto& [service, referral] : limits.referrals) {
      add(Part::Referrals, service, Rational(static_cast<int>(referral.within)));
      addEach(Part::Referrals, service + ":why:", referral.why);
      addEach(Part::Referrals, service + ":ask:", referral.ask);
      addEach(Part::Referrals, service + ":meanwhile:", referral.meanwhile);
    }
    for (const auto& [cap, degrees] : limits.caps) {
      const std::string way = cap.movement + ":" + limits::idOf(cap.qualifier) + ":";
      addSided(Part::Caps, way, cap.side, degrees.negated());
    }
    for (const auto& ban : limits.bans) addSided(Part::Bans, ban.ban + ":", ban.side, Rational());
    addSmallest(Part::Load, "kilograms", limits.loadKilograms);
    addSmallest(Part::Load, "percent", limits.loadPercentOfMaximum);
    addSmallest(Part::HeartRate, "", limits.heartRatePerMinute);
    for (const auto& [key, value] : limits.stopValues)
      add(Part::StopValues, key.measure + (key.below ? "<" : ">") + key.unit, key.below ? value : value.negated());
    for (const auto& [name, value] : limits.doseCaps) add(Part::DoseCaps, name, value.negated());
    for (const auto& [name, value] : limits.doseFloors) add(Part::DoseFloors, name, value);
    addEach(Part::Settings, "", limits.settings);
    addEach(Part::Timing, "", limits.timing);
    addLevel(Part::EffortGuide, static_cast<int>(limits.effortGuide));
    addLevel(Part::Progression, static_cast<int>(limits.progression));
    addLevel(Part::Supervision, static_cast<int>(limits.supervision));
    addEach(Part::Checks, "", limits.checks);
    for (const auto& [measure, gate] : limits.gates) {
      add(Part::Gates, measure, Rational());
      addEach(Part::Gates, measure + ":clinician:", gate.clinician);
      addEach(Part::Gates, measure + ":client:", gate.client);
    }
    addEach(Part::Questions, "", limits.questions);
  }

 private:
  void add(Part part, const std::string& name, Rational strictness, int coveredBy = -1) {
    atoms_.push_back({keys_.keyOf(part, name, coveredBy), strictness});
  }
  void addEach(Part part, const std::string& stem, const std::set<std::string>& names) {
    for (const std::string& name : names) add(part, stem + name, Rational());
  }
  void addSmallest(Part part, const std::string& name, const std::optional<Rational>& value) {
    if (value) add(part, name, value->negated());
  }
  void addLevel(Part part, int level) {
    if (level > 0) add(part, "", Rational(level));
  }
  void addSided(Part part, const std::string& stem, Side side, Rational strictness) {
    const int both = keys_.keyOf(part, stem + limits::idOf(Side::Both));
    add(part, stem + limits::idOf(side), strictness, side == Side::Both ? -1 : both);
  }

  LimitKeys& keys_;
  std::vector<LimitAtom>& atoms_;
};

std::vector<LimitAtom> LimitKeys::atomsOf(const limits::Limits& limits) {
  std::vector<LimitAtom> atoms;
  AtomCutter(*this, atoms).cut(limits);
  return atoms;
}

void Strictest::add(const std::vector<LimitAtom>& atoms) {
  for (const LimitAtom& atom : atoms) {
    const auto at = static_cast<std::size_t>(atom.key);
    if (at >= marks_.size()) {
      marks_.resize(at + 1, 0);
      strictness_.resize(at + 1);
    }
    if (marks_[at] == 0 || strictness_[at] < atom.strictness) strictness_[at] = atom.strictness;
    marks_[at] = 1;
  }
}

bool Strictest::covers(int key, const Rational& strictness) const {
  const auto at = static_cast<std::size_t>(key);
  return key >= 0 && at < marks_.size() && marks_[at] != 0 && strictness <= strictness_[at];
}

bool Strictest::covers(const LimitAtom& atom, const LimitKeys& keys) const {
  return covers(atom.key, atom.strictness) || covers(keys.coveredBy(atom.key), atom.strictness);
}

}  // namespace stile::interview
