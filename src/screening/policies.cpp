#include "screening/policies.h"

#include <algorithm>
#include <set>

#include "screening/merge.h"

namespace stile::screening {
namespace {

/// Slots whose value may depend on `slot`, itself included.
std::set<int> dependentsOf(const facts::Dictionary& dictionary, int slot) {
  std::set<int> touched{slot};
  const auto reads = [&](const std::optional<expression::Program>& program) {
    if (!program) return false;
    const auto& slots = program->slotsRead();
    return std::any_of(slots.begin(), slots.end(), [&](int read) { return touched.count(read) != 0; });
  };
  for (const int derived : dictionary.derivedInOrder()) {
    const facts::Derivation& how = dictionary.at(derived).derived;
    const bool byInput =
        std::any_of(how.inputs.begin(), how.inputs.end(), [&](int in) { return touched.count(in) != 0; });
    if (byInput || (how.of >= 0 && touched.count(how.of) != 0) || reads(how.program) || reads(how.where))
      touched.insert(derived);
  }
  return touched;
}

/// The rules that may answer to a policy: their condition reads one of `slots`.
rules::RuleSet readersOf(const rules::RuleSet& ruleSet, const std::set<int>& slots) {
  rules::RuleSet readers;
  readers.vocabulary = ruleSet.vocabulary;
  for (const rules::Rule& rule : ruleSet.rules) {
    const auto& read = rule.when.slotsRead();
    if (std::any_of(read.begin(), read.end(), [&](int slot) { return slots.count(slot) != 0; }))
      readers.rules.push_back(rule);
  }
  return readers;
}

/// Whether two evaluations of the same rules came to the same: only then may the whole be spared.
bool areAlike(const std::vector<rules::Finding>& a, const std::vector<rules::Finding>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const rules::Finding& x, const rules::Finding& y) {
                      return x.rule == y.rule && x.repetition == y.repetition && x.standing == y.standing &&
                             x.counted == y.counted && x.unsureCall == y.unsureCall && x.floor == y.floor &&
                             x.reach == y.reach;
                    });
}

}  // namespace

std::vector<PolicyNote> policiesThatDecide(const Content& content, const Screening& screening,
                                           const std::vector<ClearanceReply>& replies) {
  std::vector<PolicyNote> notes;
  for (const rules::Policy& policy : content.rules.policies) {
    const facts::Definition* definition = content.dictionary.find(policy.id);
    if (definition == nullptr) continue;
    const std::set<int> touched = dependentsOf(content.dictionary, definition->slot);
    const rules::RuleSet readers = readersOf(content.rules, touched);
    if (readers.rules.empty()) continue;
    const auto asChosen = rules::evaluateRules(readers, screening.facts, screening.date);
    bool decides = false;
    std::string display = policy.value;
    for (const auto& [code, words] : policy.alternatives) {
      if (code == policy.value) {
        display = words;
        continue;
      }
      if (decides) continue;
      facts::FactSet other = screening.facts;
      other.change(definition->slot).value = expression::Value::code(code);
      base::Issues ignored;
      facts::settle(other, content.forms, screening.date, ignored);
      // Most policies change nothing for most people; the whole rule book is run only where one may.
      if (areAlike(asChosen, rules::evaluateRules(readers, other, screening.date))) continue;
      const auto findings = rules::evaluateRules(content.rules, other, screening.date);
      const auto coverage = coverageOf(replies, findings, other, screening.date);
      const auto floor = mergeEnd(findings, EndKind::Floor, coverage, replies, other);
      const auto reach = mergeEnd(findings, EndKind::Reach, coverage, replies, other);
      decides = !(floor.limits == screening.floor.limits) || !(reach.limits == screening.reach.limits);
    }
    if (decides) notes.push_back({policy.id, policy.title, policy.value, display, policy.decides});
  }
  return notes;
}

}  // namespace stile::screening
