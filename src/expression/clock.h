// The moment an evaluation takes place, passed in by the caller: nothing in this room reads a clock.
#pragma once

#include "expression/temporal.h"

namespace stile::expression {

/// `now` is a DateTime down to the second (or finer) with an offset: today() is its date, now()
/// itself, timeOfDay() its time. Values without an offset are taken to be in its zone.
struct Clock {
  Temporal now;

  /// From text such as `2026-11-25T10:30:00.000+00:00`; nullopt when a part is missing.
  static std::optional<Clock> parse(std::string_view text) {
    const auto now = Temporal::parseDateTime(text);
    if (!now || now->precision != Precision::Second || !now->zoneMinutes) return std::nullopt;
    return Clock{*now};
  }
  Temporal today() const {
    Temporal date;
    date.precision = Precision::Day;
    date.year = now.year;
    date.month = now.month;
    date.day = now.day;
    return date;
  }
  Temporal timeOfDay() const {
    Temporal time = now;
    time.kind = TemporalKind::Time;
    time.year = time.month = time.day = 1;
    time.zoneMinutes.reset();
    time.isZulu = false;
    return time;
  }
  int zoneMinutes() const { return now.zoneMinutes.value_or(0); }
};

}  // namespace stile::expression
