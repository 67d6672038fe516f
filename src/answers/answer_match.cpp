#include "answers/answer_match.h"

#include "answers/member_text.h"

#include <algorithm>

#include "base/unit.h"
#include "questionnaire/moment.h"
#include "questionnaire/quantity_reader.h"

namespace stile::answers {
namespace {

using expression::Truth;
using questionnaire::EnableOperator;
using questionnaire::EnableWhen;

Truth ofBool(bool value) {
  return value ? Truth::True : Truth::False;
}

template <class T>
Truth ordered(const T& a, const T& b, EnableOperator op) {
  switch (op) {
    case EnableOperator::Greater:
      return ofBool(a > b);
    case EnableOperator::GreaterOrEqual:
      return ofBool(!(a < b));
    case EnableOperator::Less:
      return ofBool(a < b);
    case EnableOperator::LessOrEqual:
      return ofBool(!(a > b));
    default:
      return ofBool(a == b);
  }
}

Truth matchNumber(json::Node value, const EnableWhen& condition, EnableOperator op) {
  const auto number = value.isNumber() ? value.number() : std::nullopt;
  return number ? ordered(*number, *condition.number, op) : Truth::Unknown;
}

Truth matchQuantity(json::Node value, const EnableWhen& condition, EnableOperator op) {
  base::Issues ignored;  // told when the answer itself is checked
  const auto given = questionnaire::readOpenQuantity(value, {}, ignored);
  const auto wanted = questionnaire::readOpenQuantity(*condition.answer, {}, ignored);
  if (!given || !wanted) return Truth::Unknown;
  const auto from = base::parseUnit(given->unit);
  const auto to = base::parseUnit(wanted->unit);
  if (from && to) {
    const auto converted = base::convert(given->value, *from, *to);
    return converted ? ordered(*converted, wanted->value, op) : Truth::Unknown;
  }
  // Units that nobody can convert are comparable only if they are written alike.
  const bool isSame = given->unit.empty() && wanted->unit.empty() && given->system == wanted->system &&
                      given->unitWords == wanted->unitWords;
  return isSame ? ordered(given->value, wanted->value, op) : Truth::Unknown;
}

Truth matchCoding(json::Node value, const EnableWhen& condition) {
  const std::string system = memberText(value, "system");
  const bool isSystem = system.empty() || condition.system.empty() || system == condition.system;
  return ofBool(isSystem && memberText(value, "code") == *condition.text);
}

Truth matchMoment(const std::string& given, const std::string& wanted, bool isTime, EnableOperator op) {
  const auto a = isTime ? questionnaire::timeOfDay(given) : questionnaire::momentOf(given);
  const auto b = isTime ? questionnaire::timeOfDay(wanted) : questionnaire::momentOf(wanted);
  return a && b ? questionnaire::compareMoments(*a, *b, op) : Truth::Unknown;
}

bool isNumber(const std::string& type) {
  return type == "Integer" || type == "Decimal";
}

bool isDate(const std::string& type) {
  return type == "Date" || type == "DateTime";
}

bool isText(const std::string& type) {
  return type == "String" || type == "Uri";
}

}  // namespace

Truth matches(const Occurrence& answer, const EnableWhen& condition, EnableOperator op) {
  if (!answer.value) return Truth::Unknown;
  const json::Node value = *answer.value;
  const std::string& given = answer.valueType;
  const std::string& wanted = condition.answerType;
  if (isNumber(given) && isNumber(wanted) && condition.number) return matchNumber(value, condition, op);
  if (given == "Quantity" && wanted == "Quantity") return matchQuantity(value, condition, op);
  if (given == "Boolean" && wanted == "Boolean") {
    return value.isBoolean() && condition.boolean ? ofBool(value.boolean() == *condition.boolean)
                                                  : Truth::Unknown;
  }
  if (!condition.text) return Truth::False;
  if (given == "Coding" && wanted == "Coding") return matchCoding(value, condition);
  if (given == "Reference" && wanted == "Reference")
    return ofBool(memberText(value, "reference") == *condition.text);
  if (!value.isString()) return Truth::False;
  if (isDate(given) && isDate(wanted)) return matchMoment(value.string(), *condition.text, false, op);
  if (given == "Time" && wanted == "Time") return matchMoment(value.string(), *condition.text, true, op);
  if (isText(given) && isText(wanted)) return ordered(value.string(), *condition.text, op);
  return Truth::False;
}

}  // namespace stile::answers
