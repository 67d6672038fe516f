#include "plan/candidate.h"

#include <algorithm>
#include <array>
#include <map>

#include "plan/obstacle.h"
#include "plan/phrase.h"

namespace stile::plan {
namespace {

using limits::Rung;
using limits::Side;

/// What one form asks of each of its demands; a row of a scale, or nullptr = as they are.
using Degrees = const std::vector<base::Rational>*;

class Fitter {
 public:
  Fitter(const Exercise& exercise, const Fitting& fitting) : exercise_(exercise), fitting_(fitting) {}

  std::variant<Candidate, Refusal> run();
  Candidate leastBeyond(Refusal& beyond) const;

 private:
  Refusal refuse(Ground ground, std::string because, std::vector<std::string> heldBy = {}) const {
    return {&exercise_, ground, std::move(because), std::move(heldBy)};
  }
  std::vector<std::string> sides() const;
  std::optional<Refusal> refuseByDose() const;
  /// Words for the first fact that is not certainly true, or "".
  std::string missing(const std::vector<std::string>& facts) const;
  std::vector<Obstacle> obstacles(const Setup* setup, const Easing* easing, const std::string& side,
                                  Degrees row = nullptr) const;
  const std::vector<Demand>& askedBy(const Easing* easing) const {
    return easing != nullptr ? easing->asked : exercise_.demands;
  }
  std::vector<Side> workingSides(const std::string& side) const;
  Side sideOf(const Demand& demand, Side working) const;
  void meetDemands(const Easing* easing, Side working, Degrees row, std::vector<Obstacle>& found) const;
  /// The rows of the form's scale; nullptr when it is not done smaller.
  const Scale* scaleOf(const Easing* easing) const;
  /// The largest share that goes as little beyond the caps as the least one.
  std::size_t rowLeastBeyond(const Scale& scale, const Easing* easing, const std::string& side) const;
  /// Words for what the place, the eased form and doing it smaller need and is not certainly there.
  std::vector<Obstacle> lacking(const Setup* setup, const Easing* easing, bool isSmaller) const;
  /// Whether the form keeps within every cap when it asks no more than a row of its scale.
  bool isWithinCaps(const Easing* easing, const std::string& side, const std::vector<base::Rational>& row) const;
  /// The largest share at which the form runs into nothing; nullopt when even the least one does.
  std::optional<std::size_t> rowWithin(const Setup* setup, const Easing* easing, const std::string& side) const;
  void saySmaller(Candidate& candidate, std::size_t row) const;
  void meetBans(const std::set<std::string>& bans, const Easing* easing, Side side,
                std::vector<Obstacle>& found) const;
  void meetAllBans(const Setup* setup, const Easing* easing, const std::string& side, std::vector<Obstacle>& found) const;
  Candidate take(const Setup* setup, const Easing* easing, const std::string& side,
                 std::optional<std::size_t> row = std::nullopt) const;

  const Exercise& exercise_;
  const Fitting& fitting_;
};

Side opposite(Side side) {
  if (side == Side::Both) return side;
  return side == Side::Left ? Side::Right : Side::Left;
}

std::string Fitter::missing(const std::vector<std::string>& facts) const {
  const auto& dictionary = fitting_.request.facts.dictionary();
  for (const std::string& id : facts) {
    const auto* definition = dictionary.find(id);
    if (definition == nullptr) return id + ": no such fact";
    const auto& fact = fitting_.request.facts.at(definition->slot);
    if (fact.value.truth == expression::Truth::True) continue;
    return definition->label + (fact.value.truth == expression::Truth::False ? ": no" : ": not known");
  }
  return {};
}

std::optional<Refusal> Fitter::refuseByDose() const {
  const auto& section = fitting_.prescription.sections.at(exercise_.section);
  if (!section.isOpen) return refuse(Ground::Limits, section.shutBecause, section.shutBy);
  if (exercise_.intensity > section.rung) {
    const std::string asks = std::string("asks for ") + limits::idOf(exercise_.intensity) + " effort; ";
    if (exercise_.intensity > fitting_.request.usable[exercise_.bay]) {
      const auto rules = fitting_.holders.ofRung(exercise_.bay, exercise_.intensity);
      return refuse(
          Ground::Limits,
          asks + limits::idOf(fitting_.request.usable[exercise_.bay]) + " is open" + inBrackets(rules),
          rules);
    }
    return refuse(Ground::Level, asks + "the start is " + limits::idOf(section.rung));
  }
  for (const std::string& setting : exercise_.settings) {
    if (fitting_.limits.settings.count(setting) == 0) continue;
    const auto& words = fitting_.doses.vocabulary.settings;
    const auto at = words.find(setting);
    const auto rules = fitting_.holders.ofSetting(setting);
    return refuse(Ground::Limits,
                  (at == words.end() ? setting : at->second.clinician) + " is left out" + inBrackets(rules),
                  rules);
  }
  if (exercise_.load == Load::Weight && fitting_.limits.loadKilograms &&
      *fitting_.limits.loadKilograms < base::Rational(1))
    return refuse(Ground::Limits, "no weight may be lifted" + inBrackets(fitting_.holders.ofLoad()),
                  fitting_.holders.ofLoad());
  return std::nullopt;
}

// What has no sides, such as bending the trunk, counts whichever limb works.
Side Fitter::sideOf(const Demand& demand, Side working) const {
  const auto& movements = fitting_.doses.vocabulary.movements;
  const auto term = movements.find(demand.movement);
  if (!exercise_.oneSided || term == movements.end() || !term->second.hasSides) return Side::Both;
  if (demand.limb == Limb::Working) return working;
  return demand.limb == Limb::Other ? opposite(working) : Side::Both;
}

std::vector<Side> Fitter::workingSides(const std::string& side) const {
  if (!exercise_.oneSided) return {Side::Both};
  if (side == "left only") return {Side::Left};
  if (side == "right only") return {Side::Right};
  return {Side::Left, Side::Right};
}

void Fitter::meetDemands(const Easing* easing, Side working, Degrees row,
                         std::vector<Obstacle>& found) const {
  const auto& movements = fitting_.doses.vocabulary.movements;
  const auto& asked = askedBy(easing);
  for (std::size_t i = 0; i < asked.size(); ++i) {
    const Demand& demand = asked[i];
    const base::Rational& degrees = row == nullptr ? demand.degrees : (*row)[i];
    const auto term = movements.find(demand.movement);
    const Side side = sideOf(demand, working);
    const auto cap = limits::capFor(fitting_.limits, demand.movement, side, demand.done);
    if (!cap || degrees <= *cap) continue;
    found.push_back({(term == movements.end() ? demand.movement : term->second.clinician) + " " +
                         degrees.toText() + " degrees, limit " + cap->toText(),
                     fitting_.holders.ofCap(demand, side),
                     base::Rational::subtract(degrees, *cap).value_or(degrees)});
  }
}

void Fitter::meetBans(const std::set<std::string>& bans, const Easing* easing, Side side,
                      std::vector<Obstacle>& found) const {
  for (const std::string& ban : bans) {
    if (easing != nullptr && easing->without.count(ban) != 0) continue;
    const auto term = fitting_.doses.vocabulary.bans.find(ban);
    const bool hasSides = term != fitting_.doses.vocabulary.bans.end() && term->second.hasSides;
    if (!limits::isBanned(fitting_.limits, ban, hasSides ? side : Side::Both)) continue;
    found.push_back(
        {"involves " + (term == fitting_.doses.vocabulary.bans.end() ? ban : term->second.clinician),
         fitting_.holders.ofBan(ban, side),
         {}});
  }
}

std::vector<Obstacle> Fitter::obstacles(const Setup* setup, const Easing* easing, const std::string& side,
                                        Degrees row) const {
  std::vector<Obstacle> found;
  for (Side working : workingSides(side)) meetDemands(easing, working, row, found);
  meetAllBans(setup, easing, side, found);
  return found;
}

void Fitter::meetAllBans(const Setup* setup, const Easing* easing, const std::string& side,
                         std::vector<Obstacle>& found) const {
  for (Side working : workingSides(side)) {
    meetBans(exercise_.involves, easing, working, found);
    meetBans(exercise_.involvesOther, easing, opposite(working), found);
  }
  if (setup != nullptr) meetBans(setup->involves, easing, Side::Both, found);
}

bool Fitter::isWithinCaps(const Easing* easing, const std::string& side, const std::vector<base::Rational>& row) const {
  const auto& asked = askedBy(easing);
  for (Side working : workingSides(side))
    for (std::size_t i = 0; i < asked.size(); ++i) {
      const auto cap = limits::capFor(fitting_.limits, asked[i].movement, sideOf(asked[i], working), asked[i].done);
      if (cap && row[i] > *cap) return false;
    }
  return true;
}

const Scale* Fitter::scaleOf(const Easing* easing) const {
  if (!exercise_.scaling) return nullptr;
  const auto form = easing == nullptr ? 0 : static_cast<std::size_t>(easing - exercise_.easings.data()) + 1;
  const Scale& scale = exercise_.scaling->scales.at(form);
  return scale.empty() ? nullptr : &scale;
}

std::optional<std::size_t> Fitter::rowWithin(const Setup* setup, const Easing* easing,
                                             const std::string& side) const {
  const Scale* const scale = scaleOf(easing);
  if (scale == nullptr || !missing(exercise_.scaling->equipment).empty()) return std::nullopt;
  // Rows never ask less than the one before, so the last that fits is found by halving.
  const auto past = std::partition_point(scale->begin(), scale->end(),
                                         [&](const auto& row) { return isWithinCaps(easing, side, row); });
  if (past == scale->begin()) return std::nullopt;
  std::vector<Obstacle> bans;
  meetAllBans(setup, easing, side, bans);
  if (!bans.empty()) return std::nullopt;
  return static_cast<std::size_t>(past - scale->begin()) - 1;
}

// The words go by what is capped: of the movements that are eased, those that the whole form takes too far.
void Fitter::saySmaller(Candidate& candidate, std::size_t row) const {
  const Scaling& scaling = *exercise_.scaling;
  const EasingWords& words = fitting_.doses.easingWords;
  const auto& asked = askedBy(candidate.easing);
  const auto& degrees = scaling.scales[candidate.form()][row];
  std::map<std::string, base::Rational> eased;  // what the smaller form asks most
  std::vector<std::string> capped;
  for (Side working : workingSides(candidate.side))
    for (std::size_t i = 0; i < asked.size(); ++i) {
      const auto [at, isNew] = eased.emplace(asked[i].movement, degrees[i]);
      at->second = std::max(at->second, degrees[i]);
      const auto cap = limits::capFor(fitting_.limits, asked[i].movement, sideOf(asked[i], working), asked[i].done);
      if (cap && asked[i].degrees > *cap) addEach(capped, {asked[i].movement});
    }
  const Landmarks* landmarks = nullptr;
  for (const std::string& id : scaling.words) {
    const Landmarks* each = words.find(id);
    const bool isMeant = each != nullptr && std::find(capped.begin(), capped.end(), each->movement) != capped.end();
    if (landmarks == nullptr || isMeant) landmarks = each;
    if (isMeant) break;
  }
  if (landmarks != nullptr)
    candidate.saidSmaller = landmarks->at(
        landmarks->movement.empty() ? candidate.percent : static_cast<int>(eased[landmarks->movement].floor()));
  std::string angles;
  for (const std::string& movement : capped) {
    const auto term = fitting_.doses.vocabulary.movements.find(movement);
    const std::string name = term == fitting_.doses.vocabulary.movements.end() ? movement : term->second.clinician;
    angles += (angles.empty() ? "" : ", ") +
              filledIn(words.angle, {{"degrees", eased[movement].toText()}, {"movement", name}});
  }
  candidate.changedBecause +=
      (candidate.easing != nullptr ? " " : ". ") + filledIn(words.clinician, {{"angles", angles}, {"percent", std::to_string(candidate.percent)}});
}

Candidate Fitter::take(const Setup* setup, const Easing* easing, const std::string& side,
                       std::optional<std::size_t> row) const {
  Candidate candidate;
  candidate.exercise = &exercise_;
  candidate.setup = setup;
  candidate.easing = easing;
  candidate.side = side;
  if (row) candidate.percent = exercise_.scaling->percentAt(*row);
  candidate.preferredBy = fitting_.holders.preferring(exercise_);
  candidate.discouragedBy = fitting_.holders.discouraging(exercise_);
  if (candidate.isAdapted()) {
    const auto asWritten = obstacles(setup, nullptr, "");
    for (const Obstacle& each : asWritten) addEach(candidate.changedBy, each.ruleIds);
    candidate.changedBecause = join(asWritten);
    if (easing != nullptr) candidate.changedBecause += ". " + easing->sayClinician;
    if (row) saySmaller(candidate, *row);
    if (!side.empty())
      candidate.changedBecause += ". Done on the " + side.substr(0, side.find(' ')) + " side only.";
  }
  return candidate;
}

std::vector<std::string> Fitter::sides() const {
  if (!exercise_.oneSided) return {""};
  return {"", "left only", "right only"};
}

std::variant<Candidate, Refusal> Fitter::run() {
  if (auto refusal = refuseByDose()) return *refusal;
  for (const auto* facts : {&exercise_.equipment, &exercise_.needs}) {
    if (const std::string words = missing(*facts); !words.empty()) return refuse(Ground::Equipment, words);
  }
  std::vector<const Setup*> setups;
  std::string noPlace;
  for (const Setup& setup : exercise_.setups) {
    std::string words = missing(setup.equipment);
    if (words.empty()) words = missing(setup.needs);
    if (words.empty()) setups.push_back(&setup);
    if (!words.empty()) noPlace += (noPlace.empty() ? "" : "; ") + words;
  }
  if (exercise_.setups.empty()) setups.push_back(nullptr);
  if (setups.empty()) return refuse(Ground::Equipment, noPlace);

  std::vector<const Easing*> forms{nullptr};
  std::string easingLacks;
  for (const Easing& easing : exercise_.easings) {
    const std::string words = missing(easing.equipment);
    if (words.empty()) forms.push_back(&easing);
    if (!words.empty()) easingLacks += "; eased form needs " + words;
  }
  if (exercise_.scaling)
    if (const std::string words = missing(exercise_.scaling->equipment); !words.empty())
      easingLacks += "; doing it smaller needs " + words;
  for (const std::string& side : sides()) {
    for (const Easing* easing : forms) {
      for (const Setup* setup : setups)
        if (obstacles(setup, easing, side).empty()) return take(setup, easing, side);
      for (const Setup* setup : setups)
        if (const auto row = rowWithin(setup, easing, side)) return take(setup, easing, side, row);
    }
  }
  const auto found = obstacles(setups.front(), nullptr, "");
  return refuse(Ground::Limits, join(found) + easingLacks, heldBy(found));
}

std::size_t Fitter::rowLeastBeyond(const Scale& scale, const Easing* easing, const std::string& side) const {
  const auto beyond = [&](const std::vector<base::Rational>& row) {
    std::vector<Obstacle> found;
    for (Side working : workingSides(side)) meetDemands(easing, working, &row, found);
    return excessOf(found);
  };
  const Excess least = beyond(scale.front());
  const auto past = std::partition_point(scale.begin(), scale.end(),
                                         [&](const auto& row) { return !(least < beyond(row)); });
  return static_cast<std::size_t>(past - scale.begin()) - 1;
}

std::vector<Obstacle> Fitter::lacking(const Setup* setup, const Easing* easing, bool isSmaller) const {
  std::vector<Obstacle> found;
  const auto lack = [&](const std::vector<std::string>& facts) {
    if (const std::string words = missing(facts); !words.empty()) found.push_back({words, {}, {}});
  };
  if (setup != nullptr) lack(setup->equipment), lack(setup->needs);
  if (easing != nullptr) lack(easing->equipment);
  if (isSmaller) lack(exercise_.scaling->equipment);
  return found;
}

// What is missing counts like a ban, so the form that lacks least and goes least past the caps is taken.
Candidate Fitter::leastBeyond(Refusal& beyond) const {
  std::vector<Obstacle> always;
  if (const auto refusal = refuseByDose())
    always.push_back({refusal->because, {}, {}}), beyond.heldBy = refusal->heldBy;
  for (const auto* facts : {&exercise_.equipment, &exercise_.needs})
    if (const std::string words = missing(*facts); !words.empty()) always.push_back({words, {}, {}});
  std::vector<const Setup*> setups;
  for (const Setup& setup : exercise_.setups) setups.push_back(&setup);
  if (setups.empty()) setups.push_back(nullptr);
  std::vector<const Easing*> forms{nullptr};
  for (const Easing& easing : exercise_.easings) forms.push_back(&easing);
  std::optional<std::vector<Obstacle>> least;
  Candidate best;
  const auto consider = [&](const Setup* setup, const Easing* easing, const std::string& side,
                            std::optional<std::size_t> row) {
    std::vector<Obstacle> found = obstacles(setup, easing, side, row ? &(*scaleOf(easing))[*row] : nullptr);
    const auto lacks = lacking(setup, easing, row.has_value());
    found.insert(found.end(), lacks.begin(), lacks.end());
    if (least && !(excessOf(found) < excessOf(*least))) return;
    best = take(setup, easing, side, row);
    least = std::move(found);
  };
  for (const std::string& side : sides()) {
    for (const Easing* easing : forms) {
      for (const Setup* setup : setups) consider(setup, easing, side, std::nullopt);
      if (const Scale* const scale = scaleOf(easing))
        for (const Setup* setup : setups) consider(setup, easing, side, rowLeastBeyond(*scale, easing, side));
    }
  }
  always.insert(always.end(), least->begin(), least->end());
  beyond.because = join(always);
  addEach(beyond.heldBy, heldBy(*least));
  return best;
}

}  // namespace

std::variant<Candidate, Refusal> fit(const Exercise& exercise, const Fitting& fitting) {
  return Fitter(exercise, fitting).run();
}

Candidate fitBeyond(const Exercise& exercise, const Fitting& fitting, Refusal& beyond) {
  return Fitter(exercise, fitting).leastBeyond(beyond);
}

std::vector<std::string> equipmentOf(const Candidate& candidate) {
  std::vector<std::string> facts = candidate.exercise->equipment;
  if (candidate.setup != nullptr) addEach(facts, candidate.setup->equipment);
  if (candidate.easing != nullptr) addEach(facts, candidate.easing->equipment);
  if (candidate.percent < 100) addEach(facts, candidate.exercise->scaling->equipment);
  return facts;
}

}  // namespace stile::plan
