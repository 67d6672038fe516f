#include "facts/fact_set.h"

#include <algorithm>

namespace stile::facts {
namespace {

void makeBlank(Fact& fact, const Definition& definition) {
  fact.value.kind = definition.valueType.kind;
  fact.asGiven.kind = definition.valueType.kind;
  if (definition.policy) {
    fact.value = *definition.policy;
    fact.asGiven = *definition.policy;
    fact.reason = UnknownReason::None;
    fact.givenReason = UnknownReason::None;
    fact.source = "policy";
  }
}

std::size_t indexOf(int number) {
  return static_cast<std::size_t>(number);
}

}  // namespace

FactSet::FactSet(const Dictionary& dictionary) : dictionary_(&dictionary) {
  facts_.resize(indexOf(dictionary.size()));
  for (int slot = 0; slot < dictionary.size(); ++slot) makeBlank(facts_[indexOf(slot)], dictionary.at(slot));
  groups_.resize(dictionary.groups().size());
  for (std::size_t i = 0; i < groups_.size(); ++i)
    groups_[i].repetitions.push_back(blankRepetition(static_cast<int>(i)));
}

std::vector<Fact> FactSet::blankRepetition(int groupIndex) const {
  std::vector<Fact> facts;
  for (const int slot : dictionary_->groupMembers(groupIndex)) makeBlank(facts.emplace_back(), dictionary_->at(slot));
  return facts;
}

const Fact& FactSet::at(int slot, int repetition) const {
  const Definition& definition = dictionary_->at(slot);
  if (definition.groupIndex < 0 || repetition < 0) return at(slot);
  const auto& repetitions = groups_[indexOf(definition.groupIndex)].repetitions;
  if (indexOf(repetition) >= repetitions.size()) return at(slot);
  return repetitions[indexOf(repetition)][indexOf(definition.memberIndex)];
}

Fact& FactSet::change(int slot, int repetition) {
  return const_cast<Fact&>(std::as_const(*this).at(slot, repetition));
}

void FactSet::give(int slot, int repetition, expression::Value value, base::PartialDate date) {
  Fact& fact = change(slot, repetition);
  fact.asGiven = std::move(value);
  fact.givenReason = UnknownReason::None;
  fact.written.clear();
  fact.date = std::move(date);
  fact.value = fact.asGiven;
  fact.reason = UnknownReason::None;
}

void FactSet::forget(int slot, int repetition, UnknownReason reason) {
  Fact& fact = change(slot, repetition);
  fact.asGiven = expression::Value::unknown(fact.asGiven.kind);
  fact.givenReason = reason;
  fact.written.clear();
  fact.date.reset();
  fact.value = fact.asGiven;
  fact.reason = reason;
}

int FactSet::repetitions(int groupIndex) const {
  if (groupIndex < 0) return 0;
  const Group& group = groups_[indexOf(groupIndex)];
  return group.state == GroupState::Empty ? 0 : static_cast<int>(group.repetitions.size());
}

void FactSet::setRepetitions(std::string_view group, int count) {
  const int index = dictionary_->groupIndex(group);
  if (index < 0) return;
  auto& repetitions = groups_[indexOf(index)].repetitions;
  repetitions.resize(indexOf(std::max(count, 0)));
  for (auto& repetition : repetitions) {
    if (repetition.empty()) repetition = blankRepetition(index);
  }
}

bool FactSet::isOpenEnded(int groupIndex) const {
  if (groupIndex < 0) return false;
  const Group& group = groups_[indexOf(groupIndex)];
  if (group.state == GroupState::Empty) return false;
  return group.isOpenEnded || group.state == GroupState::Unconfirmed;
}

void FactSet::setOpenEnded(std::string_view group, bool open) {
  const int index = dictionary_->groupIndex(group);
  if (index >= 0) groups_[indexOf(index)].isOpenEnded = open;
}

void FactSet::setOccasion(std::string_view group, int occasion) {
  const int index = dictionary_->groupIndex(group);
  if (index >= 0) groups_[indexOf(index)].occasion = occasion;
}

}  // namespace stile::facts
