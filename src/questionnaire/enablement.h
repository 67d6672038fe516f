// Whether an item applies: three-valued, for facts (apart from what a form shows).
//
// FHIR R4 enableWhen with its corrected meaning: `=`, `<` … are true if at least one answer
// satisfies them; `!=` if no answer equals; `exists` compares presence. An answer that is not
// known makes the comparison unknown, never false. An item in a disabled group is disabled.
#pragma once

#include <optional>
#include <vector>

#include "expression/value.h"
#include "questionnaire/form.h"

namespace stile::questionnaire {

/// What is known of one question's answers.
struct KnownAnswers {
  bool isApplicable = true;   ///< false: the question itself is certainly disabled (no answers)
  bool isComplete = false;    ///< every answer is known (an empty complete list = "none chosen")
  std::vector<expression::Value> values;  ///< known answers; numbers with `units`
  std::vector<base::Unit> units;          ///< parallel to values for numbers; may be empty
};

class AnswerLookup {
 public:
  virtual ~AnswerLookup() = default;
  virtual KnownAnswers answersOf(const Item& question) const = 0;
};

/// The item's own conditions and those of every group above it.
expression::Truth isEnabled(const Item& item, const AnswerLookup& answers);

}  // namespace stile::questionnaire
