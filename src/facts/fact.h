// A fact: one thing known, or not known, about a client, with its date, source and reason.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "base/date.h"
#include "base/issue.h"
#include "expression/value.h"

namespace stile::facts {

/// Why a fact is unknown. None = it is known (or known in part, see the value's bounds).
enum class UnknownReason {
  None,
  NotAsked,
  NotAnswered,
  NotSure,
  Declined,
  OutOfDate,
  NotConfirmed,
  Contradictory,
  NotApplicable,
  Unresolved
};

const char* toText(UnknownReason reason);  ///< "not asked" …
const char* idOf(UnknownReason reason);    ///< "notAsked" …
/// The reasons someone may state for an answer that is missing; nullopt for any other word.
std::optional<UnknownReason> statedReason(std::string_view id);
/// Of two reasons the one that matters more: a person's own "not sure" before a blank.
UnknownReason graver(UnknownReason a, UnknownReason b);

/// One fact, as it was given and as it counts today.
///
/// Always true once settled: `reason` is None exactly when the value holds something, save that
/// NotApplicable facts hold their whenNotApplicable value.
struct Fact {
  expression::Value value;  ///< what counts today
  UnknownReason reason = UnknownReason::NotAsked;
  expression::Value asGiven;  ///< before age, enablement and derivation count
  UnknownReason givenReason = UnknownReason::NotAsked;
  std::string written;                       ///< as it was given, with unit: "138 mm[Hg]"
  std::optional<base::PartialDate> date;     ///< when it was so
  std::string givenBy;                       ///< client, carer, interpreter, clinician, record
  std::string source;                        ///< form and item, "facts file", "policy" or "derived"
  int occasion = 0;                          ///< which response it came from, counted by date
  std::shared_ptr<const base::Place> place;  ///< where it was given; null when nowhere

  bool isGiven() const { return givenReason == UnknownReason::None; }
};

}  // namespace stile::facts
