// A question of an interview, and the answers that are possible to it.
#pragma once

#include <compare>
#include <string>
#include <vector>

#include "facts/dictionary.h"
#include "facts/fact_set.h"
#include "questionnaire/form.h"

namespace stile::interview {

/// A question at its place: which item of the form, and in which repetition of its group.
struct QuestionRef {
  int place = -1;       ///< index into Questions::all()
  int repetition = -1;  ///< -1 outside repeating groups
  auto operator<=>(const QuestionRef&) const = default;
};

/// One thing a person can say. A known answer has a value, or the codes of a choice with several
/// answers; otherwise `why` says why it is not known.
struct PossibleAnswer {
  facts::UnknownReason why = facts::UnknownReason::None;
  expression::Value value;
  std::vector<std::string> codes;
  bool isKnown() const { return why == facts::UnknownReason::None; }
  bool operator==(const PossibleAnswer&) const = default;
};

/// One question of a form.
struct FormQuestion {
  const questionnaire::Item* item = nullptr;
  const facts::Definition* fact = nullptr;  ///< the fact of the same id
  int group = -1;                           ///< of the dictionary; -1 outside repeating groups
  bool isOpening = false;                   ///< in the form's first group: asked before anything else
  bool isListable = false;                  ///< yes or no, where yes is the concern: fit for "no to all of these"
  /// Known answers: all of them, or for numbers and dates one for each way the rules and forms can
  /// take them, and their neighbours. Empty for free text.
  std::vector<PossibleAnswer> answers;
  /// True when every admissible answer leads to the same outcome as one of `answers`.
  bool isComplete = false;
};

/// The questions of one form that are facts, in form order.
class Questions {
 public:
  Questions(const questionnaire::Form& form, const facts::Dictionary& dictionary);

  const std::vector<FormQuestion>& all() const { return all_; }
  const FormQuestion& at(int place) const { return all_[static_cast<std::size_t>(place)]; }
  const FormQuestion& at(const QuestionRef& ref) const { return at(ref.place); }
  /// Of the question that asks a base fact, or the choice an option fact belongs to; -1 if none.
  int placeOf(int slot) const { return placeOf_[static_cast<std::size_t>(slot)]; }
  std::vector<FormQuestion>& change() { return all_; }

 private:
  std::vector<FormQuestion> all_;
  std::vector<int> placeOf_;
};

}  // namespace stile::interview
