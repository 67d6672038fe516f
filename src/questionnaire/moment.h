// FHIR dates, dateTimes and times of day, whole or in part, as intervals that can be compared.
//
// A value known in part is every moment it may mean: 2026-11 is the whole of November. Without a
// zone a dateTime is taken in UTC, on both sides of a comparison alike.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "expression/value.h"
#include "questionnaire/item.h"

namespace stile::questionnaire {

/// From `first` to `last`, both included: milliseconds since 1970-01-01T00:00Z, or since midnight.
struct Moment {
  std::int64_t first = 0;
  std::int64_t last = 0;
};

/// A date or dateTime as FHIR writes them: YYYY, YYYY-MM, YYYY-MM-DD, or with Thh:mm:ss, parts of a
/// second and a zone. nullopt when the text is none, or the calendar has no such day.
std::optional<Moment> momentOf(std::string_view text);

/// The standard wants a zone wherever a dateTime has hours.
bool hasZoneOrNoHours(std::string_view text);

/// hh:mm:ss, with parts of a second if need be.
std::optional<Moment> timeOfDay(std::string_view text);

/// `a op b`; Unknown where the part that is not known decides. Never asked for Exists.
expression::Truth compareMoments(const Moment& a, const Moment& b, EnableOperator op);

}  // namespace stile::questionnaire
