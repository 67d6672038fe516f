#include "screening/policies.h"

#include <algorithm>

#include "facts/ripple.h"
#include "rules/rule_reads.h"
#include "screening/merge.h"

namespace stile::screening {
namespace {

/// Tries other choices of policies on one client.
class PolicyTrial {
 public:
  PolicyTrial(const Content& content, const Screening& screening, const std::vector<ClearanceReply>& replies)
      : content_(content), screening_(screening), replies_(replies), facts_(screening.facts),
        dependents_(content.dictionary, planOf(screening.facts, content)) {
    for (const rules::Rule& rule : content.rules.rules) reads_.push_back(rules::slotsReadBy(rule, content.dictionary));
  }

  /// Whether some rule reads the policy, directly or not.
  bool choose(int slot) {
    const std::vector<int> reached = dependents_.allFrom(slot);
    touched_.clear();
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      const bool isTouched = std::any_of(reads_[i].begin(), reads_[i].end(), [&](int read) {
        return std::binary_search(reached.begin(), reached.end(), read);
      });
      if (isTouched) touched_.push_back(i);
    }
    return !touched_.empty();
  }

  /// Whether the limits of either end would differ with `code` for the policy of choose().
  bool decides(int slot, const std::string& code) {
    facts::Ripple ripple(facts_, dependents_);
    ripple.decree(slot, expression::Value::code(code));
    ripple.run();
    const bool differs = anyRuleDiffers() && limitsDiffer();
    ripple.undo();
    return differs;
  }

 private:
  static std::shared_ptr<const facts::EnablementPlan> planOf(const facts::FactSet& facts, const Content& content) {
    if (facts.plan()) return facts.plan();
    return std::make_shared<const facts::EnablementPlan>(
        content.dictionary, facts::EnablementPlan::formsThatCount(content.forms, facts.formsAnswered()));
  }

  bool anyRuleDiffers() const {
    return std::any_of(touched_.begin(), touched_.end(), [&](std::size_t index) {
      const rules::Rule& rule = content_.rules.rules[index];
      const auto now = rules::evaluateRule(rule, facts_, screening_.date, rules::Words::None);
      std::vector<const rules::Finding*> before;
      for (const rules::Finding& finding : screening_.findings)
        if (finding.rule == &rule) before.push_back(&finding);
      return !std::equal(now.begin(), now.end(), before.begin(), before.end(), [](const auto& a, const auto* b) {
        return a.repetition == b->repetition && a.standing == b->standing && a.counted == b->counted &&
               a.floor == b->floor && a.reach == b->reach && a.basis == b->basis;
      });
    });
  }

  bool limitsDiffer() const {
    const auto findings = rules::evaluateRules(content_.rules, facts_, screening_.date, rules::Words::None);
    const auto coverage = coverageOf(replies_, findings, facts_, screening_.date);
    const auto floor = mergeEnd(findings, EndKind::Floor, coverage, replies_, facts_, Merged::All);
    const auto reach = mergeEnd(findings, EndKind::Reach, coverage, replies_, facts_, Merged::All);
    return !(floor.limits == screening_.floor.limits) || !(reach.limits == screening_.reach.limits);
  }

  const Content& content_;
  const Screening& screening_;
  const std::vector<ClearanceReply>& replies_;
  facts::FactSet facts_;
  facts::Dependents dependents_;
  std::vector<std::vector<int>> reads_;  ///< by rule
  std::vector<std::size_t> touched_;
};

}  // namespace

std::vector<PolicyNote> policiesThatDecide(const Content& content, const Screening& screening,
                                           const std::vector<ClearanceReply>& replies) {
  std::vector<PolicyNote> notes;
  PolicyTrial trial(content, screening, replies);
  for (const rules::Policy& policy : content.rules.policies) {
    const facts::Definition* definition = content.dictionary.find(policy.id);
    if (definition == nullptr || !trial.choose(definition->slot)) continue;
    bool decides = false;
    std::string display = policy.value;
    for (const auto& [code, words] : policy.alternatives) {
      if (code == policy.value)
        display = words;
      else if (!decides)
        decides = trial.decides(definition->slot, code);
    }
    if (decides) notes.push_back({policy.id, policy.title, policy.value, display, policy.decides});
  }
  return notes;
}

std::vector<PolicyNote> policiesThatShape(const Content& content, const plan::StarterPlan& plan) {
  std::vector<PolicyNote> notes;
  for (const rules::Policy& policy : content.rules.policies) {
    if (std::find(plan.growthReads.begin(), plan.growthReads.end(), policy.id) == plan.growthReads.end()) continue;
    std::string display = policy.value;
    for (const auto& [code, words] : policy.alternatives)
      if (code == policy.value) display = words;
    notes.push_back({policy.id, policy.title, policy.value, display, policy.decides});
  }
  return notes;
}

}  // namespace stile::screening
