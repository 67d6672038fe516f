#include "interview/plan_slots.h"

#include "plan/doses.h"

namespace stile::interview {

std::set<int> slotsReadBy(const plan::Library& library, const facts::Dictionary& dictionary) {
  std::set<int> slots;
  const auto addNames = [&](const std::vector<std::string>& names) {
    for (const std::string& name : names)
      if (const facts::Definition* fact = dictionary.find(name)) slots.insert(fact->slot);
  };
  const auto addProgram = [&](const expression::Program& program) {
    slots.insert(program.slotsRead().begin(), program.slotsRead().end());
  };
  for (const plan::Exercise& exercise : library.exercises) {
    addNames(exercise.equipment);
    addNames(exercise.needs);
    for (const plan::Setup& setup : exercise.setups) {
      addNames(setup.equipment);
      addNames(setup.needs);
    }
    for (const plan::Easing& easing : exercise.easings) addNames(easing.equipment);
    if (exercise.scaling) addNames(exercise.scaling->equipment);
  }
  for (const plan::Wish& wish : library.wishes.all)
    if (wish.slot >= 0) slots.insert(wish.slot);
  if (!library.doses) return slots;
  for (const plan::AerobicGrowth& growth : library.doses->aerobicGrowth)
    if (growth.when) addProgram(*growth.when);
  for (const plan::Level& level : library.doses->levels)
    if (level.when) addProgram(*level.when);
  for (const auto& [rung, band] : library.doses->heartRate) {
    addProgram(band.low);
    addProgram(band.high);
  }
  for (const int slot : {library.doses->currentMinutesSlot, library.doses->currentDaysSlot, library.doses->currentModerateSlot})
    if (slot >= 0) slots.insert(slot);
  return slots;
}

}  // namespace stile::interview
