// Working out derived facts: expressions, elapsed time, summaries, readings, norms, scores and
// medicine classes, all three-valued and on bounds.
//
// Unknown inputs never give a firm answer that another value of theirs could turn.
#pragma once

#include <optional>
#include <vector>

#include "facts/fact_set.h"
#include "facts/freshness.h"

namespace stile::facts {

/// Who alone resolves a medicine whose name is not known.
inline constexpr const char* kClinician = "clinician";

/// What a derivation gives: a value, or why there is none.
struct Derived {
  expression::Value value;
  UnknownReason reason = UnknownReason::None;
  std::optional<base::PartialDate> date;  ///< of readings: when the newest that counts was taken
};

/// Derivations over one set of facts on one date. Reads the facts as they are at each call, save
/// the medicines, which it looks up once.
class Derivations {
 public:
  Derivations(const FactSet& facts, base::Date today) : facts_(facts), today_(today) {}

  /// Of a derived fact, leaving aside what was given for it directly. `age` replaces the
  /// dictionary's freshFor for means, worsts and lasts.
  Derived derive(const Definition& definition, int repetition, const std::optional<base::Period>& age) const;

  /// The facts read directly that are not settled and leave this one unknown.
  std::vector<FactRef> openReads(const Definition& definition, int repetition) const;

  /// How the medicine of each repetition reads, a clinician's word on an unmatched name included; null
  /// where its name is unknown.
  const std::vector<std::optional<MedicineMatch>>& medicines(const Derivation& derivation) const;

 private:
  std::optional<MedicineMatch> medicineAt(const Derivation& derivation, int repetition) const;
  expression::Truth isOfClass(const Derivation& derivation, const std::optional<MedicineMatch>& match) const;
  expression::Value elapsed(const Derivation& derivation, int repetition) const;
  expression::Value summary(const Definition& definition) const;
  expression::Value truthSummary(const Derivation& derivation) const;
  expression::Value count(const Derivation& derivation) const;
  expression::Value extreme(const Derivation& derivation) const;
  expression::Value norm(const Derivation& derivation, int repetition) const;
  expression::Value score(const Derivation& derivation, int repetition) const;
  expression::Value classMember(const Definition& definition, int repetition) const;
  /// Whether a repetition is among those a summary is over; in an open-ended group one without
  /// anything given may not exist.
  expression::Truth isMember(const Derivation& derivation, int repetition) const;
  UnknownReason reasonFor(const Definition& definition, int repetition) const;
  void openReadsOfSummary(const Derivation& derivation, std::vector<FactRef>& open) const;

  const FactSet& facts_;
  base::Date today_;
  mutable std::optional<std::vector<std::optional<MedicineMatch>>> medicines_;
};

/// A derived fact that was also given directly: both joined. Where both are known (what was given
/// only within `age`) and disagree, the fact is contradictory.
Counted joinWithGiven(const Definition& definition, const Fact& fact, const Derived& derived,
                      const std::optional<base::Period>& age, base::Date today);

/// Works out one derived fact and joins it with what was given for it directly.
void deriveOne(FactSet& facts, const Derivations& derivations, const Definition& definition, int repetition,
               base::Date today);

/// Works out every derived fact of a set in order, and joins it with what was given for it
/// directly.
void deriveAll(FactSet& facts, base::Date today);

/// Dates that lie in the future, answers that disagree with what they derive from, and medicines
/// that match no known name.
void reportDerived(const FactSet& facts, base::Date today, base::Issues& issues);

}  // namespace stile::facts
