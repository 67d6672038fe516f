#include "facts/fact_table.h"
#include "rules/basis.h"
#include "rules/finding.h"
#include "rules/judgement.h"
#include "rules/sentence.h"

namespace stile::rules {
namespace {

using expression::Truth;

/// Makes the finding of one rule on one repetition.
class FindingMaker {
 public:
  FindingMaker(const Rule& rule, const facts::FactSet& facts, int repetition, base::Date today)
      : rule_(rule), facts_(facts), repetition_(repetition), slots_(slotsOf(rule, facts, repetition, today)) {}

  void addTo(std::vector<Finding>& findings, Words words) {
    const Judgement judgement = judge(rule_, facts_, slots_);
    if (judgement.truth == Truth::False) return;
    Contribution contribution = contributionOf(rule_, judgement, slots_);
    Finding finding;
    finding.rule = &rule_;
    finding.repetition = repetition_;
    finding.standing = judgement.truth == Truth::True ? Standing::Certain : Standing::Open;
    finding.counted = judgement.counted;
    finding.unsureCall = judgement.unsureCall;
    finding.full = std::move(contribution.full);
    finding.floor = std::move(contribution.floor);
    finding.reach = std::move(contribution.reach);
    const bool isCertain = finding.standing == Standing::Certain;
    if (isCertain) finding.basis = basisOf(rule_, facts_, repetition_);
    if (words == Words::Full) {
      finding.where = where();
      for (const int slot : judgement.deciding) finding.reasons.push_back(reasonFor(slot));
      finding.say = filled(isCertain ? rule_.say : rule_.sayOpen ? *rule_.sayOpen : Sentence{rule_.title, {}});
    }
    findings.push_back(std::move(finding));
  }

 private:
  Reason reasonFor(int slot) const {
    const facts::Definition& definition = facts_.dictionary().at(slot);
    const facts::Fact& fact = slots_.factOf(slot);
    return {slot, definition.id, definition.label, facts::display(definition, fact), fact.source,
            !slots_.valueOf(slot).isSettled(), fact.reason};
  }

  /// The repetition in words: the known codes of the group's members ("hip, left").
  std::string where() const {
    if (rule_.forEach.empty()) return {};
    std::string words;
    for (const int slot : facts_.dictionary().groupMembers(facts_.dictionary().groupIndex(rule_.forEach))) {
      const facts::Definition& definition = facts_.dictionary().at(slot);
      if (definition.type != facts::FactType::Code || definition.derived.kind != facts::DerivedKind::None) continue;
      const facts::Fact& fact = facts_.at(slot, repetition_);
      if (fact.value.isSettled()) words += (words.empty() ? "" : ", ") + facts::display(definition, fact);
    }
    return words;
  }

  Sentence filled(const Sentence& sentence) const {
    return {fillIn(sentence.clinician, facts_, rule_.forEach, repetition_),
            fillIn(sentence.client, facts_, rule_.forEach, repetition_)};
  }

  const Rule& rule_;
  const facts::FactSet& facts_;
  int repetition_;
  facts::FactSlots slots_;
};

}  // namespace

std::vector<Finding> evaluateRule(const Rule& rule, const facts::FactSet& facts, base::Date today, Words words) {
  std::vector<Finding> findings;
  if (rule.forEach.empty()) {
    FindingMaker(rule, facts, -1, today).addTo(findings, words);
    return findings;
  }
  for (int repetition = 0; repetition < facts.repetitions(rule.forEach); ++repetition)
    FindingMaker(rule, facts, repetition, today).addTo(findings, words);
  return findings;
}

std::vector<Finding> evaluateRules(const RuleSet& ruleSet, const facts::FactSet& facts, base::Date today, Words words) {
  std::vector<Finding> findings;
  for (const Rule& rule : ruleSet.rules)
    for (Finding& finding : evaluateRule(rule, facts, today, words)) findings.push_back(std::move(finding));
  return findings;
}

}  // namespace stile::rules
