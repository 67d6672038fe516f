#include "rules/instantiate.h"

namespace stile::rules {
namespace {

using base::Rational;
using limits::Side;

limits::Side sideOf(Side written, int sideSlot, const expression::Slots& slots) {
  if (sideSlot < 0) return written;
  const expression::Value& value = slots.valueOf(sideSlot);
  return value.text ? limits::sideOf(*value.text).value_or(Side::Both) : Side::Both;
}

Rational amountOf(const Amount& amount, const expression::Slots& slots, bool largestIsStrictest) {
  if (amount.fixed) return *amount.fixed;
  if (!amount.computed) return amount.ifUnknown;
  const expression::Value value = amount.computed->evaluate(slots);
  const auto& bound = largestIsStrictest ? value.high : value.low;
  return bound ? *bound : amount.ifUnknown;
}

std::optional<Rational> amountOf(const std::optional<Amount>& amount, const expression::Slots& slots) {
  if (!amount) return std::nullopt;
  return amountOf(*amount, slots, false);
}

}  // namespace

limits::Limits instantiate(const LimitsTemplate& part, const expression::Slots& slots) {
  limits::Limits result = part.fixed;
  for (const auto& cap : part.caps) {
    const limits::CapKey key{cap.movement, sideOf(cap.side, cap.sideSlot, slots), cap.qualifier};
    limits::Limits one;
    one.caps[key] = amountOf(cap.degrees, slots, false);
    result = join(result, one);
  }
  for (const auto& ban : part.bans) result.bans.insert({ban.ban, sideOf(ban.side, ban.sideSlot, slots)});
  for (const auto& dose : part.doses)
    (dose.isFloor ? result.doseFloors : result.doseCaps)[dose.name] = amountOf(dose.amount, slots, dose.isFloor);
  for (const auto& stop : part.stops) result.stopValues[stop.key] = amountOf(stop.amount, slots, stop.key.below);
  result.loadKilograms = amountOf(part.loadKilograms, slots);
  result.loadPercentOfMaximum = amountOf(part.loadPercentOfMaximum, slots);
  result.heartRatePerMinute = amountOf(part.heartRatePerMinute, slots);
  return result;
}

}  // namespace stile::rules
