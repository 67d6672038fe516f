#include "rules/finding_reads.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>

#include "facts/derivation_order.h"
#include "rules/rule_reads.h"
#include "rules/sentence.h"

namespace stile::rules {
namespace {

constexpr std::size_t kMoreFindings = 32;  ///< room for those that one step may bring

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
  // A finding is large to move: those of before stay where they are while as many come as go.
  std::vector<Finding> all;
  bool isMoved = false;
  std::size_t from = 0;  // the first one of before that was not looked at
  const auto keep = [&] {
    if (isMoved) all.push_back(std::move(findings[from]));
    ++from;
  };
  for (std::size_t i = 0; i < ruleSet.rules.size(); ++i) {
    const Rule& rule = ruleSet.rules[i];
    if (!touched[i]) {
      while (from < findings.size() && findings[from].rule == &rule) keep();
      continue;
    }
    std::size_t until = from;
    while (until < findings.size() && findings[until].rule == &rule) ++until;
    std::vector<Finding> now = evaluateRule(rule, facts, today);
    if (!isMoved && now.size() != until - from) {
      isMoved = true;
      all.reserve(findings.size() + kMoreFindings);
      std::move(findings.begin(), findings.begin() + static_cast<std::ptrdiff_t>(from), std::back_inserter(all));
    }
    if (isMoved)
      std::move(now.begin(), now.end(), std::back_inserter(all));
    else
      std::move(now.begin(), now.end(), findings.begin() + static_cast<std::ptrdiff_t>(from));
    from = until;
  }
  if (isMoved) findings = std::move(all);
}

}  // namespace stile::rules
