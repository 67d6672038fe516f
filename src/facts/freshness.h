// How old a fact may be: what was given, as it counts on the screening date.
#pragma once

#include <optional>

#include "base/date.h"
#include "facts/dictionary.h"
#include "facts/fact.h"

namespace stile::facts {

enum class Freshness { Fresh, Uncertain, Stale };

/// A date of at most `age` before `today` is fresh; `age` 0 d = today itself. A date known in part
/// may leave it uncertain, and so does no date at all. Without an `age` everything is fresh.
Freshness freshness(const std::optional<base::PartialDate>& date, const std::optional<base::Period>& age,
                    base::Date today);

/// A value that counts, or why there is none.
struct Counted {
  expression::Value value;
  UnknownReason reason = UnknownReason::None;
};

/// What was given, if it is certainly fresh.
Counted countedToday(const Fact& fact, const std::optional<base::Period>& age, base::Date today);

}  // namespace stile::facts
