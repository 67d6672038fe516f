#include "documents/limit_words.h"

#include <algorithm>
#include <map>

#include "documents/decision_words.h"
#include "facts/fact_display.h"

namespace stile::documents {

using limits::Limits;
using limits::Qualifier;
using limits::Side;

std::string sideWords(Side side) {
  switch (side) {
    case Side::Both:
      return "";
    case Side::Left:
      return "left ";
    case Side::Right:
      return "right ";
  }
  return "";
}

std::string qualifierWords(Qualifier qualifier) {
  switch (qualifier) {
    case Qualifier::Any:
      return "";
    case Qualifier::Loaded:
      return ", loaded";
    case Qualifier::EndRange:
      return ", at end range";
    case Qualifier::Fast:
      return ", fast";
  }
  return "";
}

std::string termWords(const std::map<std::string, rules::Term, std::less<>>& terms, const std::string& id,
                      bool forClient) {
  const auto at = terms.find(id);
  if (at == terms.end()) return id;
  return forClient ? at->second.client : at->second.clinician;
}

std::string capWords(const rules::Vocabulary& vocabulary, const limits::CapKey& key,
                     const base::Rational& degrees) {
  return sideWords(key.side) + termWords(vocabulary.movements, key.movement, false) +
         qualifierWords(key.qualifier) + ": " + degrees.toText(1) + "° at most";
}

std::string doseWords(const std::string& name, const base::Rational& value, bool isFloor) {
  // What the number counts, for both ends of a dose.
  static const std::map<std::string, std::pair<const char*, const char*>> kNames{
      {"aerobicMinutesPerSession", {"aerobic work", "minutes a session"}},
      {"aerobicDaysPerWeek", {"aerobic work", "days a week"}},
      {"aerobicEffort", {"aerobic work", "of 10 in effort"}},
      {"strengthSets", {"strength work", "sets"}},
      {"strengthRepetitions", {"strength work", "repetitions"}},
      {"strengthDaysPerWeek", {"strength work", "days a week"}},
      {"strengthEffort", {"strength work", "of 10 in effort"}},
      {"stretchHoldSeconds", {"stretches", "seconds a hold"}},
      {"balanceMinutes", {"balance work", "minutes a session"}},
      {"sessionMinutes", {"a session", "minutes"}},
      {"warmUpMinutes", {"warming up", "minutes"}},
      {"coolDownMinutes", {"cooling down", "minutes"}},
      {"restSeconds", {"rest between sets", "seconds"}},
      {"hoursBetweenStrength", {"between strength sessions", "hours"}},
      {"repetitionsInReserve", {"in reserve at the end of a set", "repetitions"}}};
  const auto at = kNames.find(name);
  std::string unit = at == kNames.end() ? "" : std::string(" ") + at->second.second;
  if (value == base::Rational(1))  // "1 set", "1 day a week"
    if (const auto plural = unit.find('s', 1); plural != std::string::npos && (plural + 1 == unit.size() || unit[plural + 1] == ' '))
      unit.erase(plural, 1);
  const std::string amount = value.toText(1) + unit;
  const std::string what = at == kNames.end() ? name : std::string(at->second.first);
  return what + ": " + amount + (isFloor ? " or more" : " at most");
}

std::string stopWords(const rules::Vocabulary& vocabulary, const limits::StopKey& key,
                      const base::Rational& value, bool forClient) {
  const std::string unit = facts::unitWords(key.unit);
  return termWords(vocabulary.measures, key.measure, forClient) + (key.below ? " under " : " above ") +
         value.toText(2) + (unit.empty() ? "" : (unit == "%" ? "" : " ") + unit);
}

std::string titleOf(const rules::Finding& finding) {
  if (finding.where.empty()) return finding.rule->title;
  // The place is a list of options' words, each written to stand alone: "Hip, Left".
  std::string where;
  for (std::size_t at = 0; at < finding.where.size();) {
    const std::size_t end = std::min(finding.where.find(", ", at), finding.where.size());
    const std::string part = uncapitalized(finding.where.substr(at, end - at));
    if (part != "not known") where += (where.empty() ? "" : ", ") + part;
    at = end + 2;
  }
  return finding.rule->title + (where.empty() ? "" : " (" + where + ")");
}

std::vector<const rules::Finding*> holdersOf(const screening::Screening& screening,
                                             const std::function<bool(const Limits&)>& holds) {
  std::vector<const rules::Finding*> certain, open;
  for (const rules::Finding& finding : screening.findings) {
    if (!holds(finding.floor)) continue;
    (finding.standing == rules::Standing::Certain ? certain : open).push_back(&finding);
  }
  certain.insert(certain.end(), open.begin(), open.end());
  return certain;
}

bool LimitLine::isCertain() const {
  return holders.empty() || holders.front()->standing == rules::Standing::Certain;
}

namespace {

class LineList {
 public:
  explicit LineList(const screening::Screening& screening) : screening_(screening) {}

  template <class Holds>
  void add(const std::string& term, std::string text, Holds holds) {
    lines_.push_back({term, capitalized(std::move(text)), holdersOf(screening_, holds)});
  }
  std::vector<LimitLine> finish() { return std::move(lines_); }

 private:
  const screening::Screening& screening_;
  std::vector<LimitLine> lines_;
};

void addMovements(LineList& rows, const Limits& limits, const rules::Vocabulary& words) {
  for (const auto& key : limits.bans)
    rows.add("Leave out",
             sideWords(key.side) + (key.side == Side::Both ? "" : "side: ") +
                 termWords(words.bans, key.ban, false),
             [&](const Limits& one) { return one.bans.contains(key); });
  for (const auto& [key, degrees] : limits.caps) {
    // A cap on every way of doing it says more than the same cap, or a wider one, on one way.
    const auto any = limits.caps.find({key.movement, key.side, Qualifier::Any});
    if (key.qualifier != Qualifier::Any && any != limits.caps.end() && any->second <= degrees) continue;
    rows.add("Movement", capWords(words, key, degrees), [&](const Limits& one) {
      const auto at = one.caps.find(key);
      return at != one.caps.end() && at->second == degrees;
    });
  }
}

void addNumbers(LineList& rows, const Limits& limits, const rules::Vocabulary& words) {
  if (limits.loadKilograms)
    rows.add("Load", limits.loadKilograms->toText(1) + " kg at most",
             [&](const Limits& one) { return one.loadKilograms == limits.loadKilograms; });
  if (limits.loadPercentOfMaximum)
    rows.add("Load", limits.loadPercentOfMaximum->toText(1) + "% of the one-repetition maximum at most",
             [&](const Limits& one) { return one.loadPercentOfMaximum == limits.loadPercentOfMaximum; });
  if (limits.heartRatePerMinute)
    rows.add("Heart rate", limits.heartRatePerMinute->toText(0) + " per minute at most",
             [&](const Limits& one) { return one.heartRatePerMinute == limits.heartRatePerMinute; });
  for (const auto& [key, value] : limits.stopValues)
    rows.add("Stop the session", stopWords(words, key, value, false), [&](const Limits& one) {
      const auto at = one.stopValues.find(key);
      return at != one.stopValues.end() && at->second == value;
    });
  for (const auto& [name, value] : limits.doseCaps)
    rows.add("No more than", doseWords(name, value, false), [&](const Limits& one) {
      const auto at = one.doseCaps.find(name);
      return at != one.doseCaps.end() && at->second == value;
    });
  for (const auto& [name, value] : limits.doseFloors)
    rows.add("No less than", doseWords(name, value, true), [&](const Limits& one) {
      const auto at = one.doseFloors.find(name);
      return at != one.doseFloors.end() && at->second == value;
    });
}

}  // namespace

std::vector<LimitLine> limitLinesOf(const screening::Screening& screening, const rules::RuleSet& rules) {
  const Limits& limits = screening.floor.limits;
  const rules::Vocabulary& words = rules.vocabulary;
  LineList rows(screening);
  addMovements(rows, limits, words);
  addNumbers(rows, limits, words);
  for (const std::string& id : limits.settings)
    rows.add("Places", "not: " + termWords(words.settings, id, false),
             [&](const Limits& one) { return one.settings.contains(id); });
  for (const std::string& id : limits.timing)
    rows.add("Times", termWords(words.timing, id, false),
             [&](const Limits& one) { return one.timing.contains(id); });
  if (limits.effortGuide == limits::EffortGuide::EffortOnly)
    rows.add("Effort guide", "effort scale and talk test only, no heart rate",
             [](const Limits& one) { return one.effortGuide == limits::EffortGuide::EffortOnly; });
  if (limits.progression != limits::Progression::AsPlanned)
    rows.add(
        "Progression",
        limits.progression == limits::Progression::Slow ? "slower than planned" : "none: the amount stays",
        [&](const Limits& one) { return one.progression == limits.progression; });
  if (limits.supervision != limits::Supervision::None)
    rows.add("Supervision",
             limits.supervision == limits::Supervision::InPerson ? "in person" : "by telephone",
             [&](const Limits& one) { return one.supervision == limits.supervision; });
  return rows.finish();
}

std::vector<LimitLine> checkLinesOf(const screening::Screening& screening, const rules::RuleSet& rules) {
  const Limits& limits = screening.floor.limits;
  LineList rows(screening);
  for (const auto& [measure, gate] : limits.gates) {
    std::string text = "record " + termWords(rules.vocabulary.measures, measure, false) + ";";
    std::vector<std::string> conditions(gate.clinician.begin(), gate.clinician.end());
    for (std::size_t i = 0; i < conditions.size(); ++i) text += (i == 0 ? " " : "; ") + conditions[i];
    rows.add(kGateTerm, text,
             [&, &id = measure](const Limits& one) { return one.gates.contains(id); });
  }
  for (const std::string& id : limits.checks) {
    const auto check = rules.checks.find(id);
    rows.add("At every session", check == rules.checks.end() ? id : check->second.say.clinician,
             [&](const Limits& one) { return one.checks.contains(id); });
  }
  return rows.finish();
}

}  // namespace stile::documents
