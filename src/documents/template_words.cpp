#include "documents/template_words.h"

#include "documents/decision_words.h"
#include "documents/limit_words.h"
#include "documents/rule_book.h"

namespace stile::documents {
namespace {

using limits::Limits;
using rules::Amount;
using rules::LimitsTemplate;

class TemplateWords {
 public:
  TemplateWords(const rules::RuleSet& rules, const facts::Dictionary& dictionary)
      : rules_(rules), words_(rules.vocabulary), dictionary_(dictionary) {}

  std::vector<std::string> of(const LimitsTemplate& limits) {
    calls(limits.fixed);
    perBay(limits.fixed);
    movements(limits);
    numbers(limits);
    rest(limits.fixed);
    return std::move(lines_);
  }

 private:
  void add(std::string line) { lines_.push_back(std::move(line)); }

  std::string amount(const Amount& amount, const std::string& unit) const {
    if (amount.fixed) return amount.fixed->toText(2) + unit;
    return (amount.computed ? conditionInWords(amount.computed->text(), dictionary_) : "?") + unit + " (unknown: " +
           amount.ifUnknown.toText(2) + unit + ")";
  }

  std::string side(limits::Side side, int slot) const {
    return slot < 0 ? sideWords(side) : "side by \"" + dictionary_.at(slot).label + "\": ";
  }

  void calls(const Limits& fixed) {
    if (fixed.action > limits::Action::None) add(std::string("action today: ") + wordsOf(fixed.action));
    for (const auto& [service, referral] : fixed.referrals)
      add("referral to " + termWords(words_.services, service, false) + ", " + wordsOf(referral.within));
  }

  void perBay(const Limits& fixed) {
    for (const limits::Bay bay : limits::kBays) {
      const limits::Bay other = bay == limits::Bay::Aerobic ? limits::Bay::Strength : limits::Bay::Aerobic;
      const bool isFirst = bay == limits::Bay::Aerobic;
      if (fixed.clearance[bay] != limits::Clearance::None) {
        const bool isBoth = fixed.clearance[bay] == fixed.clearance[other];
        if (isFirst || !isBoth)
          add(std::string(isBoth ? "" : std::string(wordsOf(bay)) + ": ") + "clearance " + wordsOf(fixed.clearance[bay]));
      }
      if (fixed.ceiling[bay] != limits::Rung::Vigorous) {
        const bool isBoth = fixed.ceiling[bay] == fixed.ceiling[other];
        if (isFirst || !isBoth)
          add(std::string(isBoth ? "" : std::string(wordsOf(bay)) + ": ") + "no higher than " + wordsOf(fixed.ceiling[bay]));
      }
    }
  }

  void movements(const LimitsTemplate& limits) {
    for (const auto& key : limits.fixed.bans) add("leave out " + sideWords(key.side) + termWords(words_.bans, key.ban, false));
    for (const auto& ban : limits.bans) add("leave out " + side(ban.side, ban.sideSlot) + termWords(words_.bans, ban.ban, false));
    for (const auto& [key, degrees] : limits.fixed.caps) add(capWords(words_, key, degrees));
    for (const auto& cap : limits.caps)
      add(side(cap.side, cap.sideSlot) + termWords(words_.movements, cap.movement, false) + qualifierWords(cap.qualifier) +
          ": " + amount(cap.degrees, "°") + " at most");
  }

  void numbers(const LimitsTemplate& limits) {
    const Limits& fixed = limits.fixed;
    if (fixed.loadKilograms) add("load " + fixed.loadKilograms->toText(1) + " kg at most");
    if (limits.loadKilograms) add("load " + amount(*limits.loadKilograms, " kg") + " at most");
    if (fixed.loadPercentOfMaximum) add("load " + fixed.loadPercentOfMaximum->toText(1) + "% of maximum at most");
    if (limits.loadPercentOfMaximum) add("load " + amount(*limits.loadPercentOfMaximum, "%") + " of maximum at most");
    if (fixed.heartRatePerMinute) add("heart rate " + fixed.heartRatePerMinute->toText(0) + " at most");
    if (limits.heartRatePerMinute) add("heart rate " + amount(*limits.heartRatePerMinute, "") + " at most");
    for (const auto& [key, value] : fixed.stopValues) add("stop at " + stopWords(words_, key, value, false));
    for (const auto& stop : limits.stops)
      add("stop at " + termWords(words_.measures, stop.key.measure, false) + (stop.key.below ? " under " : " above ") +
          amount(stop.amount, ""));
    for (const auto& [name, value] : fixed.doseCaps) add("no more than " + doseWords(name, value, false));
    for (const auto& [name, value] : fixed.doseFloors) add("no less than " + doseWords(name, value, true));
    for (const auto& dose : limits.doses)
      add(std::string(dose.isFloor ? "no less than " : "no more than ") +
          (dose.amount.fixed ? doseWords(dose.name, *dose.amount.fixed, dose.isFloor)
                             : dose.name + " " + amount(dose.amount, "")));
  }

  void rest(const Limits& fixed) {
    for (const std::string& id : fixed.settings) add("not: " + termWords(words_.settings, id, false));
    for (const std::string& id : fixed.timing) add("when: " + termWords(words_.timing, id, false));
    if (fixed.effortGuide == limits::EffortGuide::EffortOnly) add("effort scale only, no heart rate");
    if (fixed.progression != limits::Progression::AsPlanned)
      add(fixed.progression == limits::Progression::Slow ? "slow progression" : "no progression");
    if (fixed.supervision != limits::Supervision::None)
      add(fixed.supervision == limits::Supervision::InPerson ? "supervised in person" : "checked by telephone");
    for (const std::string& id : fixed.checks)
      if (const auto check = rules_.checks.find(id); check != rules_.checks.end())
        add("every session: " + check->second.say.clinician);
    for (const std::string& question : fixed.questions) add("settle: " + question);
  }

  const rules::RuleSet& rules_;
  const rules::Vocabulary& words_;
  const facts::Dictionary& dictionary_;
  std::vector<std::string> lines_;
};

}  // namespace

std::vector<std::string> templateWords(const rules::LimitsTemplate& limits, const rules::RuleSet& rules,
                                       const facts::Dictionary& dictionary) {
  return TemplateWords(rules, dictionary).of(limits);
}

}  // namespace stile::documents
