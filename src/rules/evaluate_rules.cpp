#include <algorithm>

#include "facts/fact_table.h"
#include "rules/basis.h"
#include "rules/finding.h"
#include "rules/instantiate.h"
#include "rules/sentence.h"

namespace stile::rules {
namespace {

using expression::Truth;
using facts::UnknownAs;
using facts::UnknownReason;
using limits::Action;
using limits::Limits;

/// Evaluates one rule on one repetition.
class Evaluation {
 public:
  Evaluation(const Rule& rule, const facts::FactSet& facts, int repetition, base::Date today)
      : rule_(rule), facts_(facts), repetition_(repetition),
        slots_(facts, rule.forEach, repetition, rule.maxAge.empty() ? nullptr : &rule.maxAge, today) {}

  void addTo(std::vector<Finding>& findings) {
    const Truth truth = rule_.when.evaluate(slots_).truth;
    if (truth == Truth::False) return;
    Finding finding;
    finding.rule = &rule_;
    finding.repetition = repetition_;
    finding.where = where();
    finding.standing = truth == Truth::True ? Standing::Certain : Standing::Open;
    finding.full = instantiate(rule_.then, slots_);
    deciding_ = rule_.when.decidedBy(slots_);
    for (const int slot : deciding_) finding.reasons.push_back(reasonFor(slot));
    if (finding.standing == Standing::Certain)
      certain(finding);
    else
      open(finding);
    findings.push_back(std::move(finding));
  }

 private:
  bool isMember(const facts::Definition& definition) const {
    return !definition.group.empty() && definition.group == rule_.forEach;
  }
  const facts::Fact& factAt(int slot) const {
    return isMember(facts_.dictionary().at(slot)) ? facts_.at(slot, repetition_) : facts_.at(slot);
  }

  Reason reasonFor(int slot) const {
    const facts::Definition& definition = facts_.dictionary().at(slot);
    const facts::Fact& fact = factAt(slot);
    return {slot, definition.id, definition.label, facts::display(definition, fact), fact.source,
            !slots_.valueOf(slot).isSettled(), fact.reason};
  }

  /// The repetition in words: the known codes of the group's members ("hip, left").
  std::string where() const {
    if (rule_.forEach.empty()) return {};
    std::string words;
    for (int slot = 0; slot < facts_.dictionary().size(); ++slot) {
      const facts::Definition& definition = facts_.dictionary().at(slot);
      if (definition.group != rule_.forEach || definition.type != facts::FactType::Code ||
          definition.derived.kind != facts::DerivedKind::None)
        continue;
      const facts::Fact& fact = facts_.at(slot, repetition_);
      if (fact.value.isSettled()) words += (words.empty() ? "" : ", ") + facts::display(definition, fact);
    }
    return words;
  }

  void certain(Finding& finding) {
    finding.floor = finding.reach = finding.full;
    finding.basis = basisOf(rule_, facts_, repetition_);
    finding.say = filled(rule_.say);
  }

  void open(Finding& finding) {
    finding.counted = modeThatApplies();
    finding.say = filled(rule_.sayOpen ? *rule_.sayOpen : Sentence{rule_.title, {}});
    switch (finding.counted) {
      case IfUnknown::Cautious:
        finding.floor = finding.full;
        finding.floor.referrals.clear();  // a referral is a call: it waits for certainty
        // A mode that does not apply must not be milder than the one that would.
        if (rule_.meanwhile) finding.floor = join(finding.floor, meanwhile());
        if (rule_.gate) finding.floor.gates[rule_.gate->measure] = *rule_.gate;
        break;
      case IfUnknown::Gate:
        finding.floor = meanwhile();
        if (rule_.gate) finding.floor.gates[rule_.gate->measure] = *rule_.gate;
        break;
      case IfUnknown::Lowest: finding.floor = lowestPartOf(finding.full); break;
      case IfUnknown::Pass: finding.floor = meanwhile(); break;
    }
    if (rule_.whenUnsure && wasAskedInVain()) {
      finding.unsureCall = *rule_.whenUnsure;
      finding.floor.action = std::max(finding.floor.action, *rule_.whenUnsure);
      finding.reach.action = *rule_.whenUnsure;
    }
  }

  Limits meanwhile() const { return rule_.meanwhile ? instantiate(*rule_.meanwhile, slots_) : Limits{}; }

  static Limits lowestPartOf(const Limits& full) {
    Limits part;
    part.doseCaps = full.doseCaps;
    part.supervision = full.supervision;
    for (const auto& ban : full.bans)
      if (ban.ban == "unsupportedBalance") part.bans.insert(ban);
    return part;
  }

  bool wasAskedInVain() const {
    return std::any_of(deciding_.begin(), deciding_.end(), [&](int slot) {
      const UnknownReason reason = factAt(slot).reason;
      return reason == UnknownReason::NotSure || reason == UnknownReason::Declined;
    });
  }

  bool isOptionalNow(const facts::Definition& fact) const {
    if (fact.optionalWhen) return fact.optionalWhen->evaluate(slots_).truth == Truth::True;
    return fact.unknownAs == UnknownAs::Optional;
  }

  /// The rule's mode, if every fact that keeps it open is of that class; otherwise Cautious.
  IfUnknown modeThatApplies() const {
    const bool all = std::all_of(deciding_.begin(), deciding_.end(), [&](int slot) {
      const facts::Definition& fact = facts_.dictionary().at(slot);
      switch (rule_.ifUnknown) {
        case IfUnknown::Cautious: return false;
        case IfUnknown::Gate: return fact.unknownAs == UnknownAs::Gate;
        case IfUnknown::Lowest: return fact.unknownAs == UnknownAs::Lowest;
        case IfUnknown::Pass: return isOptionalNow(fact);
      }
      return false;
    });
    return all ? rule_.ifUnknown : IfUnknown::Cautious;
  }

  Sentence filled(const Sentence& sentence) const {
    return {fillIn(sentence.clinician, facts_, rule_.forEach, repetition_),
            fillIn(sentence.client, facts_, rule_.forEach, repetition_)};
  }

  const Rule& rule_;
  const facts::FactSet& facts_;
  int repetition_;
  facts::FactSlots slots_;
  std::vector<int> deciding_;
};

}  // namespace

std::vector<Finding> evaluateRules(const RuleSet& ruleSet, const facts::FactSet& facts, base::Date today) {
  std::vector<Finding> findings;
  for (const Rule& rule : ruleSet.rules) {
    if (rule.forEach.empty()) {
      Evaluation(rule, facts, -1, today).addTo(findings);
      continue;
    }
    for (int repetition = 0; repetition < facts.repetitions(rule.forEach); ++repetition)
      Evaluation(rule, facts, repetition, today).addTo(findings);
  }
  return findings;
}

}  // namespace stile::rules
