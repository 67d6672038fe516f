#include "rules/finding_reads.h"

#include <algorithm>
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
  std::erase_if(findings, [&](const Finding& finding) { return touched[static_cast<std::size_t>(indexOf(finding))]; });
  const auto kept = static_cast<std::ptrdiff_t>(findings.size());
  for (std::size_t i = 0; i < ruleSet.rules.size(); ++i)
    if (touched[i])
      for (Finding& finding : evaluateRule(ruleSet.rules[i], facts, today)) findings.push_back(std::move(finding));
  std::inplace_merge(findings.begin(), findings.begin() + kept, findings.end(),
                     [&](const Finding& a, const Finding& b) { return indexOf(a) < indexOf(b); });
}

}  // namespace stile::rules
