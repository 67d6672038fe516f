#include "rules/rule_reads.h"

#include <set>

#include "facts/derivation_order.h"

namespace stile::rules {
namespace {

void add(std::set<int>& slots, const std::optional<expression::Program>& program) {
  if (program) slots.insert(program->slotsRead().begin(), program->slotsRead().end());
}

void add(std::set<int>& slots, const std::optional<Amount>& amount) {
  if (amount) add(slots, amount->computed);
}

void addTemplate(std::set<int>& slots, const LimitsTemplate& part) {
  for (const auto& cap : part.caps) {
    if (cap.sideSlot >= 0) slots.insert(cap.sideSlot);
    add(slots, cap.degrees.computed);
  }
  for (const auto& ban : part.bans)
    if (ban.sideSlot >= 0) slots.insert(ban.sideSlot);
  for (const auto& dose : part.doses) add(slots, dose.amount.computed);
  for (const auto& stop : part.stops) add(slots, stop.amount.computed);
  add(slots, part.loadKilograms);
  add(slots, part.loadPercentOfMaximum);
  add(slots, part.heartRatePerMinute);
}

std::set<int> whenCertain(const Rule& rule) {
  std::set<int> slots;
  addTemplate(slots, rule.then);
  add(slots, rule.assessable);
  add(slots, rule.until.unchanged);
  return slots;
}

void addInputs(std::set<int>& slots, const facts::Dictionary& dictionary, int slot) {
  for (const int read : facts::slotsReadBy(dictionary.at(slot)))
    if (slots.insert(read).second) addInputs(slots, dictionary, read);
}

}  // namespace

std::vector<int> slotsReadBy(const Rule& rule, const facts::Dictionary& dictionary) {
  std::set<int> slots = whenCertain(rule);
  if (rule.meanwhile) addTemplate(slots, *rule.meanwhile);
  for (const int read : rule.when.slotsRead()) {
    slots.insert(read);
    add(slots, dictionary.at(read).optionalWhen);
  }
  for (const auto& [slot, age] : rule.maxAge) addInputs(slots, dictionary, slot);
  return {slots.begin(), slots.end()};
}

std::vector<int> slotsReadWhenCertain(const Rule& rule) {
  const std::set<int> slots = whenCertain(rule);
  return {slots.begin(), slots.end()};
}

}  // namespace stile::rules
