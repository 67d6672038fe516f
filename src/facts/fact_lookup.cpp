#include "facts/fact_lookup.h"

#include <algorithm>

namespace stile::facts {

using expression::Truth;
using expression::Value;
using questionnaire::Item;
using questionnaire::KnownAnswers;

KnownAnswers FactLookup::answersOf(const Item& question) const {
  KnownAnswers known;
  // An item has few conditions.
  const auto at = std::find_if(asked_.begin(), asked_.end(), [&](const EnablementPlan::Asked& asked) { return asked.item == &question; });
  if (at == asked_.end()) return known;
  const Definition* definition = at->fact;
  known.isApplicable = false;
  known.isComplete = true;
  if (definition->groupIndex < 0 || definition->groupIndex == groupIndex_) {
    add(*definition, question, definition->groupIndex < 0 ? -1 : repetition_, known);
    return known;
  }
  for (int i = 0; i < facts_.repetitions(definition->groupIndex); ++i) add(*definition, question, i, known);
  if (facts_.isOpenEnded(definition->groupIndex)) {
    known.isApplicable = true;
    known.isComplete = false;
  }
  return known;
}

void FactLookup::add(const Definition& definition, const Item& question, int repetition,
                     KnownAnswers& known) const {
  const Fact& fact = facts_.at(definition.slot, repetition);
  if (fact.reason == UnknownReason::NotApplicable) return;
  known.isApplicable = true;
  if (definition.isMultiple) {
    addOptions(definition, question, repetition, known);
  } else if (fact.value.isUnknown()) {
    known.isComplete = false;
  } else {
    known.values.push_back(fact.value);
    // Numbers carry their unit; a question's answers are all of one kind.
    if (fact.value.kind == expression::ValueKind::Number) known.units.push_back(definition.valueType.unit);
  }
}

void FactLookup::addOptions(const Definition& choice, const Item& question, int repetition,
                            KnownAnswers& known) const {
  std::size_t place = 0;
  for (const questionnaire::Option& offered : question.options) {
    // A form mostly offers them in the order of the dictionary.
    const bool isNext = place < choice.options.size() && choice.options[place].code == offered.code;
    const OptionDefinition* option = isNext ? &choice.options[place] : choice.option(offered.code);
    ++place;
    const Truth truth =
        option && option->slot >= 0 ? facts_.at(option->slot, repetition).value.truth : Truth::Unknown;
    if (truth == Truth::Unknown) known.isComplete = false;
    if (truth != Truth::True) continue;
    known.values.push_back(Value::code(offered.code));
  }
}

}  // namespace stile::facts
