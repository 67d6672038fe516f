// Which rules hold a limit: the findings whose own contribution to the floor carries it.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "limits/limits.h"
#include "plan/exercise.h"
#include "rules/finding.h"

namespace stile::plan {

/// Reads the findings of one screening. Ids come in the order of the findings, each once.
class Holders {
 public:
  using Ids = std::vector<std::string>;

  Holders(const std::vector<rules::Finding>& findings, base::Rational surgicalMargin)
      : findings_(findings), margin_(surgicalMargin) {}

  /// The limits with the margin of surgical caps taken off, once per cap, never below zero.
  limits::Limits withMargin(limits::Limits limits) const;

  Ids ofBan(const std::string& ban, limits::Side side) const;
  /// Rules whose cap, with its margin, lies below the degrees asked for.
  Ids ofCap(const Demand& demand, limits::Side side) const;
  Ids ofRung(limits::Bay bay, limits::Rung rung) const;  ///< rules that shut the rung
  Ids ofSetting(const std::string& setting) const;
  /// Rules that carry the dose cap or floor as strictly as `value`.
  Ids ofDoseCap(const std::string& name, const base::Rational& value) const;
  Ids ofDoseFloor(const std::string& name, const base::Rational& value) const;
  Ids ofLoad() const;
  Ids ofHeartRate() const;
  Ids ofProgression() const;
  Ids preferring(const Exercise& exercise) const;
  Ids discouraging(const Exercise& exercise) const;

 private:
  template <class Holds>
  Ids where(Holds holds) const;

  const std::vector<rules::Finding>& findings_;
  base::Rational margin_;
};

/// True if a word is the id, the purpose, the section or a tag of the exercise.
bool isNamedIn(const std::vector<std::string>& words, const Exercise& exercise);
/// " (rule-a, rule-b)", or "" when no rule is named.
std::string inBrackets(const std::vector<std::string>& ruleIds);
/// Adds what is not there yet, keeping order.
void addEach(std::vector<std::string>& into, const std::vector<std::string>& from);

}  // namespace stile::plan
