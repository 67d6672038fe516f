// today(), now(), timeOfDay() (FHIRPath 2.0.0, 5.9) from the passed clock, and the parts of dates
// and times (3.0.0, trial use).
#include <algorithm>
#include <array>

#include "expression/function_table.h"

namespace stile::expression {
namespace {

Collection today(Call& call) {
  return {Item::temporal(call.machine.environment().clock.today())};
}
Collection now(Call& call) {
  return {Item::temporal(call.machine.environment().clock.now)};
}
Collection timeOfDay(Call& call) {
  return {Item::temporal(call.machine.environment().clock.timeOfDay())};
}

/// The date or time asked of; null when the input is empty or something else, which has no such part.
const Temporal* temporal(Call& call) {
  const Item* item = call.single();
  return item && item->isTemporal() ? &item->temporal() : nullptr;
}

/// A part where the value is known so precisely and has it at all.
Collection part(Call& call, Precision precision, int Temporal::*field) {
  const Temporal* value = temporal(call);
  if (!value || value->precision < precision) return {};
  if (value->kind == TemporalKind::Time && precision < Precision::Hour) return {};
  return {Item::integer(value->*field)};
}

Collection yearOf(Call& call) {
  return part(call, Precision::Year, &Temporal::year);
}
Collection monthOf(Call& call) {
  return part(call, Precision::Month, &Temporal::month);
}
Collection dayOf(Call& call) {
  return part(call, Precision::Day, &Temporal::day);
}
Collection hourOf(Call& call) {
  return part(call, Precision::Hour, &Temporal::hour);
}
Collection minuteOf(Call& call) {
  return part(call, Precision::Minute, &Temporal::minute);
}
Collection secondOf(Call& call) {
  return part(call, Precision::Second, &Temporal::second);
}

Collection millisecondOf(Call& call) {
  const Temporal* value = temporal(call);
  if (!value || value->fractionDigits == 0) return {};
  return {Item::integer(value->nanosecond / 1000000)};
}

Collection offsetOf(Call& call) {
  const Temporal* value = temporal(call);
  if (!value || !value->zoneMinutes) return {};
  const auto hours = Decimal::divide({*value->zoneMinutes, 0}, {60, 0});
  return {Item::decimal(*hours)};
}

Collection dateOf(Call& call) {
  const Temporal* value = temporal(call);
  if (!value || value->kind == TemporalKind::Time) return {};
  Temporal date = Clock{*value}.today();
  date.precision = std::min(value->precision, Precision::Day);
  return {Item::temporal(date)};
}

Collection timeOf(Call& call) {
  const Temporal* value = temporal(call);
  if (!value || value->kind == TemporalKind::Time || value->precision < Precision::Hour) return {};
  return {Item::temporal(Clock{*value}.timeOfDay())};
}

constexpr std::array<FunctionEntry, 13> kTemporalFunctions{{{"today", 0, 0, today},
                                                    {"now", 0, 0, now},
                                                    {"timeOfDay", 0, 0, timeOfDay},
                                                    {"yearOf", 0, 0, yearOf},
                                                    {"monthOf", 0, 0, monthOf},
                                                    {"dayOf", 0, 0, dayOf},
                                                    {"hourOf", 0, 0, hourOf},
                                                    {"minuteOf", 0, 0, minuteOf},
                                                    {"secondOf", 0, 0, secondOf},
                                                    {"millisecondOf", 0, 0, millisecondOf},
                                                    {"timezoneOffsetOf", 0, 0, offsetOf},
                                                    {"dateOf", 0, 0, dateOf},
                                                    {"timeOf", 0, 0, timeOf}}};

}  // namespace

std::span<const FunctionEntry> temporalFunctions() {
  return kTemporalFunctions;
}

}  // namespace stile::expression
