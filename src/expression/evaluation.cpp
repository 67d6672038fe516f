#include "expression/evaluation.h"

namespace stile::expression {

Value Evaluation::value() const {
  const int root = code_.root;
  switch (code_.type.kind) {
    case ValueKind::Boolean:
      return Value::boolean(truth(root));
    case ValueKind::Number: {
      const Interval result = number(root);
      if (result.isNotApplicable) return Value::ofNotApplicable(ValueKind::Number);
      return Value::between(result.low, result.high);
    }
    case ValueKind::Text:
    case ValueKind::Code: {
      const std::string* found = text(root);
      if (!found) return absent();
      return code_.type.kind == ValueKind::Code ? Value::code(*found) : Value::ofText(*found);
    }
    case ValueKind::Date: {
      const base::PartialDate* found = date(root);
      return found ? Value::ofDate(*found) : absent();
    }
  }
  return Value::unknown(code_.type.kind);
}

Value Evaluation::absent() const {
  return notApplicableBelow(code_.root) >= 0 ? Value::ofNotApplicable(code_.type.kind)
                                             : Value::unknown(code_.type.kind);
}

Truth Evaluation::truth(int index) const {
  const Node& node = code_.at(index);
  switch (node.step) {
    case Step::Truth:
      return node.a != 0 ? Truth::True : Truth::False;
    case Step::SlotTruth:
      return slots_.valueOf(node.a).truth;
    case Step::Not:
      return truthNot(truth(node.a));
    case Step::And: {
      const Truth left = truth(node.a);
      return left == Truth::False ? left : truthAnd(left, truth(node.b));
    }
    case Step::Or: {
      const Truth left = truth(node.a);
      return left == Truth::True ? left : truthOr(left, truth(node.b));
    }
    case Step::Implies: {
      const Truth left = truth(node.a);
      return left == Truth::False ? Truth::True : truthImplies(left, truth(node.b));
    }
    case Step::Xor:
      return truthXor(truth(node.a), truth(node.b));
    case Step::SameTruth:
      return truthNot(truthXor(truth(node.a), truth(node.b)));
    case Step::CompareNumbers:
      return compare(number(node.a), node.relation, number(node.b));
    case Step::CompareTexts:
      return compareTexts(node);
    case Step::CompareDates:
      return compareDates(node);
    default:
      return Truth::Unknown;
  }
}

Interval Evaluation::number(int index) const {
  const Node& node = code_.at(index);
  switch (node.step) {
    case Step::Number:
      return Interval::of(Instructions::item(code_.numbers, node.a));
    case Step::SlotNumber: {
      const Value& value = slots_.valueOf(node.a);
      // Bounds that cross would make a comparison true and false at once.
      if (value.low && value.high && *value.high < *value.low) return {};
      return {value.low, value.high, value.notApplicable};
    }
    case Step::Negate:
      return negated(number(node.a));
    case Step::Add:
      return sum(number(node.a), number(node.b));
    case Step::Subtract:
      return sum(number(node.a), negated(number(node.b)));
    case Step::Multiply:
      return product(number(node.a), number(node.b));
    case Step::Divide:
      return quotient(number(node.a), number(node.b));
    case Step::Convert:
      return converted(number(node.a), Instructions::item(code_.scales, node.b));
    default:
      return {};
  }
}

Interval Evaluation::converted(const Interval& value, const Scale& scale) const {
  const Interval scaled = product(value, Interval::of(scale.slope));
  return scale.offset == base::Rational() ? scaled : sum(scaled, Interval::of(scale.offset));
}

Truth Evaluation::compareTexts(const Node& node) const {
  const std::string* left = text(node.a);
  const std::string* right = text(node.b);
  if (left && right)
    return (*left == *right) == (node.relation == Relation::Equal) ? Truth::True : Truth::False;
  return notApplicableBelow(node.a) >= 0 || notApplicableBelow(node.b) >= 0 ? Truth::False : Truth::Unknown;
}

Truth Evaluation::compareDates(const Node& node) const {
  const base::PartialDate* left = date(node.a);
  const base::PartialDate* right = date(node.b);
  if (!left || !right) {
    return notApplicableBelow(node.a) >= 0 || notApplicableBelow(node.b) >= 0 ? Truth::False : Truth::Unknown;
  }
  const base::Date first[] = {left->first(), right->first()};
  const base::Date last[] = {left->last(), right->last()};
  return compareBounds(&first[0], &last[0], node.relation, &first[1], &last[1]);
}

const std::string* Evaluation::text(int index) const {
  const Node& node = code_.at(index);
  if (node.step == Step::Text) return &Instructions::item(code_.texts, node.a);
  if (node.step != Step::SlotText) return nullptr;
  const auto& text = slots_.valueOf(node.a).text;
  return text ? &*text : nullptr;
}

const base::PartialDate* Evaluation::date(int index) const {
  const Node& node = code_.at(index);
  if (node.step == Step::Date) return &Instructions::item(code_.dates, node.a);
  if (node.step != Step::SlotDate) return nullptr;
  const auto& date = slots_.valueOf(node.a).date;
  return date ? &*date : nullptr;
}
}  // namespace stile::expression
