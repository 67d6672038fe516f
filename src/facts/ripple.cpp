#include "facts/ripple.h"

#include <algorithm>
#include <utility>

#include "facts/derivation.h"
#include "facts/enablement_closure.h"

namespace stile::facts {
namespace {

using expression::Truth;
using expression::Value;

std::size_t indexOf(int number) { return static_cast<std::size_t>(number); }

}  // namespace

void Ripple::save(FactRef at) { saved_.push_back({at, facts_.at(at.slot, at.repetition), -1, nullptr, nullptr}); }

void Ripple::saveGroup(int groupIndex) {
  saved_.push_back({{}, {}, groupIndex, std::make_unique<FactSet::Group>(facts_.groups_[indexOf(groupIndex)]), nullptr});
}

void Ripple::changed(int slot) {
  changedSlots_.push_back(slot);
  derived_.insert(dependents_.derivedFrom(slot).begin(), dependents_.derivedFrom(slot).end());
  entries_.insert(dependents_.conditionalOn(slot).begin(), dependents_.conditionalOn(slot).end());
}

/// A fact changed at its root; a conditional one still has to pass its condition.
void Ripple::start(FactRef at) {
  const int entry = dependents_.entryOf(at.slot);
  if (entry >= 0) entries_.insert(entry);
  changed(at.slot);
}

void Ripple::give(FactRef at, Value value) {
  save(at);
  facts_.give(at.slot, at.repetition, std::move(value), *facts_.settledOn());
  start(at);
}

void Ripple::choose(FactRef at, const std::vector<std::string>& codes) {
  std::string text;
  for (const std::string& code : codes) text += (text.empty() ? "" : ", ") + code;
  for (const OptionDefinition& option : facts_.dictionary().at(at.slot).options) {
    if (option.slot < 0) continue;
    const bool isChosen = std::find(codes.begin(), codes.end(), option.code) != codes.end();
    give({option.slot, at.repetition}, Value::boolean(isChosen));
  }
  give(at, Value::code(text));
}

void Ripple::forget(FactRef at, UnknownReason reason) {
  for (const OptionDefinition& option : facts_.dictionary().at(at.slot).options)
    if (option.slot >= 0) forget({option.slot, at.repetition}, reason);
  save(at);
  facts_.forget(at.slot, at.repetition, reason);
  start(at);
}

void Ripple::decree(int policySlot, Value value) {
  save({policySlot, -1});
  facts_.change(policySlot).value = std::move(value);
  changed(policySlot);
}

void Ripple::close(int group, int repetitions) {
  saveGroup(group);
  const std::string& id = facts_.dictionary().groups()[indexOf(group)];
  facts_.setRepetitions(id, repetitions);
  facts_.setOpenEnded(id, false);
  groupChanged(group);
}

void Ripple::groupChanged(int groupIndex) {
  changedGroups_.push_back(groupIndex);
  const auto& positions = dependents_.derivedFromGroup(groupIndex);
  derived_.insert(positions.begin(), positions.end());
  for (const int slot : facts_.dictionary().groupMembers(groupIndex)) {
    changed(slot);
    if (dependents_.entryOf(slot) >= 0) entries_.insert(dependents_.entryOf(slot));
  }
}

void Ripple::run() {
  if (dependents_.canFollow())
    follow();
  else
    settleAgain();
}

void Ripple::follow() {
  while (!entries_.empty()) {
    const int entry = *entries_.begin();
    entries_.erase(entries_.begin());
    apply(entry);
  }
  const Derivations derivations(facts_, *facts_.settledOn());
  while (!derived_.empty()) {
    const int position = *derived_.begin();
    derived_.erase(derived_.begin());
    derive(position, derivations);
  }
}

std::vector<int> Ripple::placesOf(int groupIndex) const {
  if (groupIndex < 0) return {-1};
  std::vector<int> places(indexOf(facts_.repetitions(groupIndex)));
  for (std::size_t i = 0; i < places.size(); ++i) places[i] = static_cast<int>(i);
  return places;
}

/// Notes which of the facts saved since then are not what they were.
void Ripple::noteChanges(std::size_t savedBefore) {
  for (std::size_t i = savedBefore; i < saved_.size(); ++i) {
    const Saved& saved = saved_[i];
    const Fact& now = facts_.at(saved.at.slot, saved.at.repetition);
    if (now.reason != saved.fact.reason || now.value != saved.fact.value) changed(saved.at.slot);
  }
}

void Ripple::dropStale(int entry, int repetition) {
  if (stale_ == Stale::Kept) return;
  const auto& one = dependents_.plan().entries()[indexOf(entry)];
  for (const int slot : one.slots) {
    Fact& fact = facts_.change(slot, repetition);
    if (fact.givenReason == UnknownReason::NotAsked) continue;
    fact.asGiven = Value::unknown(fact.asGiven.kind);
    fact.givenReason = UnknownReason::NotAsked;
  }
}

void Ripple::apply(int index) {
  const auto& entry = dependents_.plan().entries()[indexOf(index)];
  if (entry.group >= 0) return applyToGroup(index);
  EnablementClosure closure(facts_, dependents_.plan(), *facts_.settledOn());
  for (const int repetition : placesOf(facts_.dictionary().at(entry.slot).groupIndex)) {
    const std::size_t before = saved_.size();
    for (const int slot : entry.slots) save({slot, repetition});
    if (closure.enablementOf(entry, repetition) != Truth::True) dropStale(index, repetition);
    closure.apply(entry, repetition);
    noteChanges(before);
  }
}

void Ripple::applyToGroup(int index) {
  const auto& entry = dependents_.plan().entries()[indexOf(index)];
  FactSet::Group& group = facts_.groups_[indexOf(entry.group)];
  EnablementClosure closure(facts_, dependents_.plan(), *facts_.settledOn());
  saveGroup(entry.group);
  const bool isDropped = stale_ == Stale::Dropped && closure.enablementOf(entry, -1) != Truth::True && !group.isOpenEnded;
  if (isDropped) {
    group.repetitions.assign(1, facts_.blankRepetition(entry.group));
    group.isOpenEnded = true;
  }
  if (closure.apply(entry, -1) || isDropped) groupChanged(entry.group);
}

void Ripple::derive(int position, const Derivations& derivations) {
  const Definition& definition = facts_.dictionary().at(facts_.dictionary().derivedInOrder()[indexOf(position)]);
  for (const int repetition : placesOf(definition.groupIndex)) {
    const std::size_t before = saved_.size();
    save({definition.slot, repetition});
    deriveOne(facts_, derivations, definition, repetition, *facts_.settledOn());
    // What is known in part passes on the reasons of what it was derived from, which may have changed alone.
    const Fact& now = facts_.at(definition.slot, repetition);
    if (now.reason == UnknownReason::None && !now.value.isSettled())
      changed(definition.slot);
    else
      noteChanges(before);
  }
}

/// True when some answer was dropped.
bool Ripple::dropStale() {
  bool any = false;
  const EnablementClosure closure(facts_, dependents_.plan(), *facts_.settledOn());
  for (std::size_t i = 0; i < dependents_.plan().entries().size(); ++i) {
    const auto& entry = dependents_.plan().entries()[i];
    if (entry.group >= 0) {
      FactSet::Group& group = facts_.groups_[indexOf(entry.group)];
      if (group.isOpenEnded || closure.enablementOf(entry, -1) == Truth::True) continue;
      group.repetitions.assign(1, facts_.blankRepetition(entry.group));
      group.isOpenEnded = true;
      any = true;
      continue;
    }
    for (const int repetition : placesOf(facts_.dictionary().at(entry.slot).groupIndex)) {
      if (facts_.at(entry.slot, repetition).givenReason == UnknownReason::NotAsked) continue;
      if (closure.enablementOf(entry, repetition) == Truth::True) continue;
      dropStale(static_cast<int>(i), repetition);
      any = true;
    }
  }
  return any;
}

void Ripple::settleAgain() {
  Saved all;
  all.everything = std::make_unique<FactSet>(facts_);
  base::Issues ignored;
  const auto settleOnce = [&] { settleWith(facts_, facts_.plan(), *facts_.settledOn(), ignored); };
  settleOnce();
  for (std::size_t round = 0; stale_ == Stale::Dropped && round < dependents_.plan().entries().size() && dropStale(); ++round)
    settleOnce();
  // Which of them changed is not followed here; all may have.
  for (int slot = 0; slot < facts_.dictionary().size(); ++slot) changedSlots_.push_back(slot);
  for (std::size_t i = 0; i < facts_.groups_.size(); ++i) changedGroups_.push_back(static_cast<int>(i));
  saved_.push_back(std::move(all));
}

void Ripple::undo() {
  for (auto saved = saved_.rbegin(); saved != saved_.rend(); ++saved) {
    if (saved->everything)
      facts_ = std::move(*saved->everything);
    else if (saved->group)
      facts_.groups_[indexOf(saved->groupIndex)] = std::move(*saved->group);
    else
      facts_.change(saved->at.slot, saved->at.repetition) = std::move(saved->fact);
  }
  saved_.clear();
  changedSlots_.clear();
  changedGroups_.clear();
  entries_.clear();
  derived_.clear();
}

}  // namespace stile::facts
