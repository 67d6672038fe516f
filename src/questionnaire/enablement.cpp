#include "questionnaire/enablement.h"

#include <string>

#include "questionnaire/item_type.h"

namespace stile::questionnaire {
namespace {

using expression::Truth;
using expression::Value;
using expression::ValueKind;

Truth ofBool(bool value) {
  return value ? Truth::True : Truth::False;
}

/// Compares an interval of possible values with another one. T has an order; a missing bound is
/// no bound.
template <class T>
Truth compareIntervals(const std::optional<T>& low, const std::optional<T>& high, const T& wantedLow,
                       const T& wantedHigh, EnableOperator op) {
  switch (op) {
    case EnableOperator::Equal:
      if ((low && *low > wantedHigh) || (high && *high < wantedLow)) return Truth::False;
      return low && high && *low == *high && wantedLow == wantedHigh ? Truth::True : Truth::Unknown;
    case EnableOperator::Greater:
      if (low && *low > wantedHigh) return Truth::True;
      return high && *high <= wantedLow ? Truth::False : Truth::Unknown;
    case EnableOperator::GreaterOrEqual:
      if (low && *low >= wantedHigh) return Truth::True;
      return high && *high < wantedLow ? Truth::False : Truth::Unknown;
    case EnableOperator::Less:
      if (high && *high < wantedLow) return Truth::True;
      return low && *low >= wantedHigh ? Truth::False : Truth::Unknown;
    case EnableOperator::LessOrEqual:
      if (high && *high <= wantedLow) return Truth::True;
      return low && *low > wantedHigh ? Truth::False : Truth::Unknown;
    default:
      return Truth::Unknown;
  }
}

/// The bound in the condition's unit; false when the units cannot be compared.
bool convertBound(std::optional<base::Rational>& bound, const base::Unit& from, const base::Unit& to) {
  if (!bound) return true;
  bound = base::convert(*bound, from, to);
  return bound.has_value();
}

Truth compareNumber(const Value& value, const base::Unit* unit, const EnableWhen& condition,
                    EnableOperator op) {
  auto low = value.low;
  auto high = value.high;
  static const base::Unit kPureNumber;
  const auto wanted =
      condition.unit.empty() ? kPureNumber : base::parseUnit(condition.unit).value_or(kPureNumber);
  const base::Unit& given = unit ? *unit : kPureNumber;
  if (!base::comparable(given, wanted)) return Truth::Unknown;
  if (!convertBound(low, given, wanted) || !convertBound(high, given, wanted)) return Truth::Unknown;
  return compareIntervals(low, high, *condition.number, *condition.number, op);
}

Truth compareDate(const Value& value, const EnableWhen& condition, EnableOperator op) {
  const auto wanted = base::PartialDate::parse(*condition.text);
  if (!wanted || !value.date) return Truth::Unknown;
  return compareIntervals<base::Date>(value.date->first(), value.date->last(), wanted->first(),
                                      wanted->last(), op);
}

Truth equalText(const Value& value, const Item& question, const EnableWhen& condition) {
  // Words in place of an option may mean any of them, or none.
  if (isChoice(question.type) && value.kind != ValueKind::Code) return Truth::Unknown;
  if (!value.text) return Truth::Unknown;
  const std::string wanted = condition.text ? *condition.text : condition.number->toText();
  return ofBool(*value.text == wanted);
}

/// One known answer against the condition; never asked for Exists or NotEqual.
Truth compare(const Value& value, const base::Unit* unit, const Item& question, const EnableWhen& condition,
              EnableOperator op) {
  if (condition.boolean) {
    return value.truth == Truth::Unknown ? Truth::Unknown
                                         : ofBool((value.truth == Truth::True) == *condition.boolean);
  }
  if (isChoice(question.type) && (condition.text || condition.number)) {
    return equalText(value, question, condition);
  }
  if (condition.number) return compareNumber(value, unit, condition, op);
  if (!condition.text) return Truth::Unknown;
  if (value.kind == ValueKind::Date) return compareDate(value, condition, op);
  return op == EnableOperator::Equal ? equalText(value, question, condition) : Truth::Unknown;
}

Truth exists(const KnownAnswers& known) {
  if (!known.isApplicable) return Truth::False;
  for (const Value& value : known.values) {
    if (!value.isUnknown()) return Truth::True;
  }
  return known.isComplete && known.values.empty() ? Truth::False : Truth::Unknown;
}

/// True if some answer satisfies, False if certainly none does.
Truth someAnswer(const KnownAnswers& known, const Item& question, const EnableWhen& condition,
                 EnableOperator op) {
  if (!known.isApplicable) return Truth::False;
  Truth result = known.isComplete ? Truth::False : Truth::Unknown;
  for (std::size_t i = 0; i < known.values.size(); ++i) {
    const base::Unit* unit = i < known.units.size() ? &known.units[i] : nullptr;
    result = expression::truthOr(result, compare(known.values[i], unit, question, condition, op));
  }
  return result;
}

Truth holds(const EnableWhen& condition, const AnswerLookup& answers) {
  const Item* question = condition.asked;
  if (!question) return Truth::Unknown;  // an issue of the form
  const KnownAnswers known = answers.answersOf(*question);
  if (condition.op == EnableOperator::Exists) {
    const Truth present = exists(known);
    return condition.boolean.value_or(true) ? present : expression::truthNot(present);
  }
  if (condition.op == EnableOperator::NotEqual) {
    return expression::truthNot(someAnswer(known, *question, condition, EnableOperator::Equal));
  }
  return someAnswer(known, *question, condition, condition.op);
}

Truth ownConditions(const Item& item, const AnswerLookup& answers) {
  if (item.enableWhen.empty()) return Truth::True;
  Truth result = ofBool(!item.enableAny);
  for (const EnableWhen& condition : item.enableWhen) {
    if (result == ofBool(item.enableAny)) break;  // the others cannot change it
    const Truth truth = holds(condition, answers);
    result = item.enableAny ? expression::truthOr(result, truth) : expression::truthAnd(result, truth);
  }
  return result;
}

}  // namespace

Truth isEnabled(const Item& item, const AnswerLookup& answers) {
  Truth result = Truth::True;
  for (const Item* at = &item; at && result != Truth::False; at = at->parent) {
    result = expression::truthAnd(result, ownConditions(*at, answers));
  }
  return result;
}

}  // namespace stile::questionnaire
