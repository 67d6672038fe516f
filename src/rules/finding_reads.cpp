#include "rules/finding_reads.h"

#include <algorithm>
#include <iterator>
#include <set>

#include "facts/derivation_order.h"
#include "rules/rule_reads.h"
#include "rules/sentence.h"

namespace stile::rules {
namespace {

/// What a fact is derived from, all the way down: the basis of a finding names it.
void addUnder(std::set<int>& slots, const facts::Dictionary& dictionary, int slot) {
  for (const int read : facts::slotsReadBy(dictionary.at(slot)))
    if (slots.insert(read).second) addUnder(slots, dictionary, read);
}

void addNamed(std::set<int>& slots, const facts::Dictionary& dictionary, const Sentence& sentence) {
  for (const std::string* words : {&sentence.clinician, &sentence.client})
    for (const std::string& id : slotsIn(*words))
      if (const facts::Definition* fact = dictionary.find(id)) slots.insert(fact->slot);
}

std::set<int> slotsUnder(const Rule& rule, const facts::Dictionary& dictionary) {
  const std::vector<int> read = slotsReadBy(rule, dictionary);
  std::set<int> slots(read.begin(), read.end());
  for (const int slot : rule.when.slotsRead()) addUnder(slots, dictionary, slot);
  addNamed(slots, dictionary, rule.say);
  if (rule.sayOpen) addNamed(slots, dictionary, *rule.sayOpen);
  if (!rule.forEach.empty())  // their words tell which repetition it is
    for (const int slot : dictionary.groupMembers(dictionary.groupIndex(rule.forEach))) slots.insert(slot);
  return slots;
}

}  // namespace

FindingReads::FindingReads(const RuleSet& ruleSet, const facts::Dictionary& dictionary)
    : rules_(ruleSet.rules.size()),
      bySlot_(static_cast<std::size_t>(dictionary.size())),
      byGroup_(dictionary.groups().size()) {
  for (std::size_t i = 0; i < ruleSet.rules.size(); ++i) {
    const Rule& rule = ruleSet.rules[i];
    for (const int slot : slotsUnder(rule, dictionary))
      bySlot_[static_cast<std::size_t>(slot)].push_back(static_cast<int>(i));
    const int group = rule.forEach.empty() ? -1 : dictionary.groupIndex(rule.forEach);
    if (group >= 0) byGroup_[static_cast<std::size_t>(group)].push_back(static_cast<int>(i));
  }
}

std::vector<bool> FindingReads::touchedBy(const facts::FactChanges& changes) const {
  std::vector<bool> touched(rules_);
  const auto touch = [&](const std::vector<bool>& changed, const std::vector<std::vector<int>>& readers) {
    for (std::size_t i = 0; i < changed.size(); ++i)
      if (changed[i])
        for (const int rule : readers[i]) touched[static_cast<std::size_t>(rule)] = true;
  };
  touch(changes.slots, bySlot_);
  touch(changes.groups, byGroup_);
  return touched;
}

void evaluateChanged(const RuleSet& ruleSet, const std::vector<bool>& touched, const facts::FactSet& facts,
                     base::Date today, std::vector<Finding>& findings) {
  const auto indexOf = [&](const Finding& finding) { return finding.rule - ruleSet.rules.data(); };
  // A finding is large to move and new memory takes long: all stays where it is while as many come as go.
  std::vector<Finding> added;
  std::size_t at = 0;
  for (std::size_t i = 0; i < ruleSet.rules.size(); ++i) {
    const Rule& rule = ruleSet.rules[i];
    std::size_t until = at;
    while (until < findings.size() && findings[until].rule == &rule) ++until;
    if (touched[i]) {
      std::vector<Finding> now = evaluateRule(rule, facts, today);
      const std::size_t both = std::min(now.size(), until - at);
      std::move(now.begin(), now.begin() + static_cast<std::ptrdiff_t>(both), findings.begin() + static_cast<std::ptrdiff_t>(at));
      std::move(now.begin() + static_cast<std::ptrdiff_t>(both), now.end(), std::back_inserter(added));
      for (std::size_t gone = at + both; gone < until; ++gone) findings[gone].rule = nullptr;
    }
    at = until;
  }
  std::erase_if(findings, [](const Finding& finding) { return finding.rule == nullptr; });
  const auto kept = static_cast<std::ptrdiff_t>(findings.size());
  std::move(added.begin(), added.end(), std::back_inserter(findings));
  std::inplace_merge(findings.begin(), findings.begin() + kept, findings.end(),
                     [&](const Finding& a, const Finding& b) { return indexOf(a) < indexOf(b); });
}

}  // namespace stile::rules
