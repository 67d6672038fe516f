#include "facts/fact_changes.h"

namespace stile::facts {
namespace {

/// The place in a file, which no finding tells, is left out.
bool isSame(const Fact& a, const Fact& b) {
  return a.reason == b.reason && a.givenReason == b.givenReason && a.occasion == b.occasion &&
         a.value == b.value && a.asGiven == b.asGiven && a.written == b.written && a.date == b.date &&
         a.givenBy == b.givenBy && a.source == b.source;
}

}  // namespace

FactChanges changesBetween(const FactSet& before, const FactSet& after) {
  const Dictionary& dictionary = after.dictionary();
  FactChanges changes{std::vector<bool>(static_cast<std::size_t>(dictionary.size())),
                      std::vector<bool>(dictionary.groups().size())};
  for (int group = 0; group < static_cast<int>(dictionary.groups().size()); ++group)
    changes.groups[static_cast<std::size_t>(group)] = before.repetitions(group) != after.repetitions(group) ||
                                                      before.isOpenEnded(group) != after.isOpenEnded(group);
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const int group = dictionary.at(slot).groupIndex;
    bool differs = (group >= 0 && changes.groups[static_cast<std::size_t>(group)]) ||
                   !isSame(before.at(slot), after.at(slot));
    for (int i = 0; group >= 0 && !differs && i < after.repetitions(group); ++i)
      differs = !isSame(before.at(slot, i), after.at(slot, i));
    changes.slots[static_cast<std::size_t>(slot)] = differs;
  }
  return changes;
}

}  // namespace stile::facts
