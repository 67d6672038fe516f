// One thing someone said, on its way into the facts: checked against the dictionary and joined
// with what was said before.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "facts/fact_set.h"

namespace stile::facts {

/// What was said about one fact.
struct Given {
  expression::Value value;
  UnknownReason reason = UnknownReason::None;  ///< None = `value` holds something
  std::string written;
  std::optional<base::PartialDate> date;  ///< when it was so, if that was said or follows
  std::string givenBy;
  std::string source;
  int occasion = 0;
  std::shared_ptr<const base::Place> place;
};

/// Joins `given` with what the set holds for the fact. The newest answer counts; a question that was
/// not asked says nothing. Two answers for one occasion that differ make the fact contradictory and
/// are asked back.
void take(FactSet& facts, int slot, int repetition, const Given& given, base::Issues& issues);

/// The number in the fact's unit, or nullopt and an issue when there is no unit, one that cannot be
/// compared, or a value outside the possible range. An implausible value is kept and asked back.
std::optional<base::Rational> checkedNumber(const Definition& definition, const base::Rational& number,
                                            std::string_view unit, const std::string& written,
                                            const base::Place& place, const std::string& subject,
                                            base::Issues& issues);

/// The answers to a choice with several answers.
struct ChosenOptions {
  std::vector<std::string> codes;
  std::vector<std::string> offered;  ///< codes; empty = every option of the dictionary
  /// Why options that were not chosen are not known to be false; None = they are false.
  UnknownReason othersUnknown = UnknownReason::None;
};

/// Puts a choice and its option facts into the set. `given` holds all but the values.
void takeChoice(FactSet& facts, const Definition& choice, int repetition, const ChosenOptions& chosen,
                Given given, base::Issues& issues);

}  // namespace stile::facts
