#include "facts/enablement_closure.h"

#include <algorithm>
#include <utility>

#include "facts/fact_lookup.h"
#include "facts/fact_name.h"
#include "facts/freshness.h"

namespace stile::facts {

using expression::Truth;
using expression::Value;

Truth enablementOf(const FactSet& facts, const EnablementPlan::Entry& entry, int repetition) {
  const int group = entry.slot >= 0 ? facts.dictionary().at(entry.slot).groupIndex : -1;
  const FactLookup lookup(facts, entry.asked, group, repetition);
  Truth enabled = Truth::False;
  for (const questionnaire::Item* occurrence : entry.occurrences) {
    enabled = expression::truthOr(enabled, questionnaire::isEnabled(*occurrence, lookup));
    if (enabled == Truth::True) break;
  }
  return enabled;
}

bool EnablementClosure::run() {
  conflicts_.clear();
  bool changed = false;
  for (const Entry& entry : plan_.entries()) {
    if (entry.group >= 0) {
      changed = applyToGroup(entry) || changed;
      continue;
    }
    const int group = facts_.dictionary().at(entry.slot).groupIndex;
    if (group < 0) {
      changed = applyToQuestion(entry, -1) || changed;
      continue;
    }
    for (int i = 0; i < facts_.repetitions(group); ++i) changed = applyToQuestion(entry, i) || changed;
  }
  return changed;
}

int EnablementClosure::occasionOf(const Entry& entry, int repetition) const {
  int latest = 0;
  const int group = entry.slot >= 0 ? facts_.dictionary().at(entry.slot).groupIndex : -1;
  for (const int gate : entry.gates) {
    const int gateGroup = facts_.dictionary().at(gate).groupIndex;
    if (gateGroup < 0 || gateGroup == group) {
      latest = std::max(latest, facts_.at(gate, gateGroup < 0 ? -1 : repetition).occasion);
      continue;
    }
    for (int i = 0; i < facts_.repetitions(gateGroup); ++i)
      latest = std::max(latest, facts_.at(gate, i).occasion);
  }
  return latest;
}

bool EnablementClosure::applyToGroup(const Entry& entry) {
  FactSet::Group& group = facts_.groups_[static_cast<std::size_t>(entry.group)];
  const Truth enabled = enablementOf(entry, -1);
  GroupState state = GroupState::AsGiven;
  if (enabled != Truth::True) {
    const bool isGiven =
        std::any_of(group.repetitions.begin(), group.repetitions.end(), [](const auto& repetition) {
          return std::any_of(repetition.begin(), repetition.end(),
                             [](const Fact& fact) { return fact.isGiven(); });
        });
    const bool isSuperseded = group.occasion < occasionOf(entry, -1);
    if (enabled == Truth::False) {
      state = isGiven && !isSuperseded ? GroupState::Contradictory : GroupState::Empty;
    } else if (isSuperseded && !group.isOpenEnded) {
      state = GroupState::Unconfirmed;
    }
  }
  if (state == GroupState::Contradictory) conflicts_.push_back({&entry, -1, false});
  return std::exchange(group.state, state) != state;
}

bool EnablementClosure::applyToQuestion(const Entry& entry, int repetition) {
  const Dictionary& dictionary = facts_.dictionary();
  const Definition& question = dictionary.at(entry.slot);
  const bool inContradictoryGroup =
      question.groupIndex >= 0 &&
      facts_.groups_[static_cast<std::size_t>(question.groupIndex)].state == GroupState::Contradictory;
  const Truth enabled = enablementOf(entry, repetition);
  const int gateOccasion = enabled == Truth::True ? 0 : occasionOf(entry, repetition);

  bool isGiven = false;    // on the occasion that disables it
  bool isHarmless = true;  // and no other than what it is when it does not apply
  for (const int slot : entry.slots) {
    const Fact& fact = facts_.at(slot, repetition);
    const bool isTwice = fact.givenReason == UnknownReason::Contradictory;
    if ((!fact.isGiven() && !isTwice) || fact.occasion < gateOccasion) continue;
    isGiven = true;
    const bool isChoice = slot == question.slot && question.isMultiple;
    if (!isChoice)
      isHarmless = isHarmless && !isTwice && fact.asGiven == dictionary.at(slot).valueWhenNotApplicable();
  }
  const bool isConflict = enabled == Truth::False && isGiven;
  if (isConflict && !inContradictoryGroup) conflicts_.push_back({&entry, repetition, isHarmless});

  bool changed = false;
  for (const int slot : entry.slots) {
    const Definition& definition = dictionary.at(slot);
    const Fact& fact = facts_.at(slot, repetition);
    const Value unknown = Value::unknown(definition.valueType.kind);
    Counted counted = countedToday(fact, definition.freshFor, today_);
    if (inContradictoryGroup || (isConflict && !isHarmless)) {
      counted = {unknown, UnknownReason::Contradictory};
    } else if (isConflict && fact.isGiven() && fact.occasion >= gateOccasion) {
      counted = {fact.asGiven, UnknownReason::None};
    } else if (enabled == Truth::False) {
      counted = {definition.valueWhenNotApplicable(), UnknownReason::NotApplicable};
    } else if (enabled == Truth::Unknown && fact.isGiven() && fact.occasion < gateOccasion) {
      counted = {unknown, UnknownReason::NotConfirmed};
    }
    changed = set(slot, repetition, std::move(counted.value), counted.reason) || changed;
  }
  return changed;
}

bool EnablementClosure::set(int slot, int repetition, Value value, UnknownReason reason) {
  Fact& fact = facts_.change(slot, repetition);
  if (fact.reason == reason && fact.value == value) return false;
  fact.value = std::move(value);
  fact.reason = reason;
  return true;
}

void EnablementClosure::report(base::Issues& issues) const {
  const Dictionary& dictionary = facts_.dictionary();
  for (const Conflict& conflict : conflicts_) {
    const Entry& entry = *conflict.entry;
    if (entry.group >= 0) {
      const auto& repetitions = facts_.groups_[static_cast<std::size_t>(entry.group)].repetitions;
      const Fact* first = nullptr;
      for (const Fact& fact : repetitions.front()) {
        if (!first && fact.place) first = &fact;
      }
      const std::string& id = dictionary.groups()[static_cast<std::size_t>(entry.group)];
      issues.add({base::Severity::AskBack, first ? placeOf(*first) : base::Place{}, id,
                  "\"" + dictionary.groupTitles().at(id) +
                      "\" was answered, but does not apply after the other answers",
                  "correct one of them; until then it counts as unknown"});
      continue;
    }
    const Definition& definition = dictionary.at(entry.slot);
    const Fact* given = nullptr;
    for (const int slot : entry.slots) {
      const Fact& fact = facts_.at(slot, conflict.repetition);
      if (!given && fact.place) given = &fact;
    }
    const std::string what =
        "\"" + definition.label + "\" was answered, but does not apply after the other answers";
    const base::Place place = given ? placeOf(*given) : base::Place{};
    if (conflict.isHarmless) {
      issues.add({base::Severity::Note, place, nameOf(definition, conflict.repetition), what,
                  "the answer changes nothing"});
    } else {
      issues.add({base::Severity::AskBack, place, nameOf(definition, conflict.repetition), what,
                  "correct one of them; until then it counts as unknown"});
    }
  }
}

}  // namespace stile::facts
