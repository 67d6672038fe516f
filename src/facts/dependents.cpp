#include "facts/dependents.h"

#include <algorithm>
#include <utility>

#include "facts/derivation_order.h"

namespace stile::facts {
namespace {

std::size_t indexOf(int number) { return static_cast<std::size_t>(number); }

}  // namespace

Dependents::Dependents(const Dictionary& dictionary, std::shared_ptr<const EnablementPlan> plan)
    : dictionary_(dictionary), plan_(std::move(plan)) {
  const std::size_t slots = indexOf(dictionary.size());
  derivedFrom_.resize(slots);
  conditionalOn_.resize(slots);
  entryOf_.assign(slots, -1);
  fromGroup_.resize(dictionary.groups().size());
  entryOfGroup_.assign(dictionary.groups().size(), -1);
  for (std::size_t at = 0; at < dictionary.derivedInOrder().size(); ++at) {
    const Definition& definition = dictionary.at(dictionary.derivedInOrder()[at]);
    for (const int read : slotsReadBy(definition)) derivedFrom_[indexOf(read)].push_back(static_cast<int>(at));
    if (definition.groupIndex >= 0) fromGroup_[indexOf(definition.groupIndex)].push_back(static_cast<int>(at));
    const int over = definition.derived.groupIndex;
    if (over >= 0 && over != definition.groupIndex) fromGroup_[indexOf(over)].push_back(static_cast<int>(at));
  }
  const auto& entries = plan_->entries();
  for (std::size_t i = 0; i < entries.size(); ++i) {
    for (const int slot : entries[i].slots) entryOf_[indexOf(slot)] = static_cast<int>(i);
    if (entries[i].group >= 0) entryOfGroup_[indexOf(entries[i].group)] = static_cast<int>(i);
    for (const int gate : entries[i].gates) conditionalOn_[indexOf(gate)].push_back(static_cast<int>(i));
  }
}

std::vector<int> Dependents::allFrom(int slot) const {
  std::vector<bool> seen(indexOf(dictionary_.size()), false);
  std::vector<int> open{slot};
  const auto add = [&](int next) {
    if (seen[indexOf(next)]) return;
    seen[indexOf(next)] = true;
    open.push_back(next);
  };
  seen[indexOf(slot)] = true;
  const auto addDerived = [&](const std::vector<int>& positions) {
    for (const int at : positions) add(dictionary_.derivedInOrder()[indexOf(at)]);
  };
  while (!open.empty()) {
    const int at = open.back();
    open.pop_back();
    addDerived(derivedFrom(at));
    for (const OptionDefinition& option : dictionary_.at(at).options)
      if (option.slot >= 0) add(option.slot);
    for (const int entry : conditionalOn(at)) {
      const auto& one = plan_->entries()[indexOf(entry)];
      for (const int conditional : one.slots) add(conditional);
      if (one.group < 0) continue;
      for (const int member : dictionary_.groupMembers(one.group)) add(member);
      addDerived(derivedFromGroup(one.group));
    }
  }
  std::vector<int> all;
  for (std::size_t i = 0; i < seen.size(); ++i)
    if (seen[i]) all.push_back(static_cast<int>(i));
  return all;
}

}  // namespace stile::facts
