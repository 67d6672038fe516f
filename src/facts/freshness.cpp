#include "facts/freshness.h"

namespace stile::facts {

using expression::Value;

Freshness freshness(const std::optional<base::PartialDate>& date, const std::optional<base::Period>& age,
                    base::Date today) {
  if (!age) return Freshness::Fresh;
  if (!date) return Freshness::Uncertain;
  if (base::plus(date->first(), *age) >= today) return Freshness::Fresh;
  return base::plus(date->last(), *age) >= today ? Freshness::Uncertain : Freshness::Stale;
}

Counted countedToday(const Fact& fact, const std::optional<base::Period>& age, base::Date today) {
  const Value unknown = Value::unknown(fact.asGiven.kind);
  if (!fact.isGiven()) return {unknown, fact.givenReason};
  if (freshness(fact.date, age, today) != Freshness::Fresh) return {unknown, UnknownReason::OutOfDate};
  return {fact.asGiven, UnknownReason::None};
}

}  // namespace stile::facts
