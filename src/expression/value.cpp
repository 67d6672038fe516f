#include "expression/value.h"

#include <utility>

namespace stile::expression {

Truth truthAnd(Truth a, Truth b) {
  if (a == Truth::False || b == Truth::False) return Truth::False;
  return a == Truth::True && b == Truth::True ? Truth::True : Truth::Unknown;
}

Truth truthOr(Truth a, Truth b) {
  return truthNot(truthAnd(truthNot(a), truthNot(b)));
}

Truth truthNot(Truth a) {
  if (a == Truth::Unknown) return Truth::Unknown;
  return a == Truth::True ? Truth::False : Truth::True;
}

Truth truthXor(Truth a, Truth b) {
  if (a == Truth::Unknown || b == Truth::Unknown) return Truth::Unknown;
  return a != b ? Truth::True : Truth::False;
}

Truth truthImplies(Truth a, Truth b) {
  return truthOr(truthNot(a), b);
}

Value Value::boolean(Truth truth) {
  Value value;
  value.truth = truth;
  return value;
}

Value Value::number(base::Rational number) {
  return between(number, number);
}

Value Value::between(std::optional<base::Rational> low, std::optional<base::Rational> high) {
  Value value;
  value.kind = ValueKind::Number;
  value.low = low;
  value.high = high;
  return value;
}

Value Value::ofText(std::string text) {
  Value value;
  value.kind = ValueKind::Text;
  value.text = std::move(text);
  return value;
}

Value Value::code(std::string code) {
  Value value = ofText(std::move(code));
  value.kind = ValueKind::Code;
  return value;
}

Value Value::ofDate(base::PartialDate date) {
  Value value;
  value.kind = ValueKind::Date;
  value.date = std::move(date);
  return value;
}

Value Value::unknown(ValueKind kind) {
  Value value;
  value.kind = kind;
  return value;
}

Value Value::ofNotApplicable(ValueKind kind) {
  Value value = unknown(kind);
  value.notApplicable = true;
  return value;
}

bool Value::isUnknown() const {
  return !notApplicable && truth == Truth::Unknown && !low && !high && !text && !date;
}

bool Value::isSettled() const {
  if (notApplicable) return true;
  switch (kind) {
    case ValueKind::Boolean:
      return truth != Truth::Unknown;
    case ValueKind::Number:
      return low && high && *low == *high;
    case ValueKind::Text:
    case ValueKind::Code:
      return text.has_value();
    case ValueKind::Date:
      return date && date->isExact();
  }
  return false;
}

}  // namespace stile::expression
