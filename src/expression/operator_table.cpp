// The operators of two operands (FHIRPath 2.0.0, section 6).
#include <array>

#include "expression/equality.h"
#include "expression/machine.h"
#include "expression/value.h"

namespace stile::expression {
namespace {

struct Operands {
  Machine& machine;
  const Syntax& syntax;
  const Collection& left;
  const Collection& right;

  Equality equality() const { return {machine.budget(), machine.localZone()}; }
  [[noreturn]] void refuse(const Item& a, const Item& b) const {
    machine.fail(syntax, syntax.text + " does not go with " + named(a) + " and " + named(b));
  }
  static std::string named(const Item& item) {
    const TypeName type = item.typeName();
    return type.name.empty() ? "an object" : type.space + "." + type.name;
  }
};

Collection booleanOr(std::optional<bool> value) {
  return value ? Collection{Item::boolean(*value)} : Collection{};
}
Collection quantityOr(const std::optional<Quantity>& value) {
  return value ? Collection{Item::quantity(*value)} : Collection{};
}
/// Empty when the result is no Integer (6.6: overflow).
Collection integerOr(long long value) {
  if (value > kLargestInteger || value < kSmallestInteger) return {};
  return {Item::integer(value)};
}

Truth truthOf(const Operands& o, const Collection& items) {
  const auto value = o.machine.truth(items, o.syntax);
  return !value ? Truth::Unknown : *value ? Truth::True : Truth::False;
}

Collection logical(const Operands& o, Truth (*apply)(Truth, Truth)) {
  const Truth result = apply(truthOf(o, o.left), truthOf(o, o.right));
  if (result == Truth::Unknown) return {};
  return {Item::boolean(result == Truth::True)};
}

Collection equals(const Operands& o, bool isNegated) {
  if (o.left.empty() || o.right.empty()) return {};
  const auto result = o.equality().areEqual(o.left, o.right);
  return booleanOr(result ? std::optional(*result != isNegated) : std::nullopt);
}

Collection equivalent(const Operands& o, bool isNegated) {
  return {Item::boolean(o.equality().areEquivalent(o.left, o.right) != isNegated)};
}

Collection ordered(const Operands& o) {
  if (o.left.empty() || o.right.empty()) return {};
  const Item* left = o.machine.single(o.left, o.syntax);
  const Item* right = o.machine.single(o.right, o.syntax);
  if (left->isText() && right->isText()) o.machine.budget().compare(left->text().size());
  const Ordering ordering = orderOf(*left, *right, o.machine.localZone());
  if (!ordering.isComparable) o.refuse(*left, *right);
  if (!ordering.order) return {};
  const auto order = *ordering.order;
  if (o.syntax.text == "<") return {Item::boolean(std::is_lt(order))};
  if (o.syntax.text == ">") return {Item::boolean(std::is_gt(order))};
  if (o.syntax.text == "<=") return {Item::boolean(std::is_lteq(order))};
  return {Item::boolean(std::is_gteq(order))};
}

Collection sum(const Operands& o, const Item& a, const Item& b) {
  const bool isMinus = o.syntax.text == "-";
  if (a.isInteger() && b.isInteger()) {
    return integerOr(isMinus ? a.integer() - b.integer() : a.integer() + b.integer());
  }
  if (a.isNumber() && b.isNumber()) {
    return decimalOr(isMinus ? Decimal::subtract(*a.number(), *b.number())
                             : Decimal::add(*a.number(), *b.number()));
  }
  if (!isMinus && a.isText() && b.isText()) {
    o.machine.budget().text(a.text().size() + b.text().size());
    return {Item::text(a.text() + b.text())};
  }
  const auto amount = b.isNumber() ? std::nullopt : b.quantity();
  if (a.isTemporal() && amount) {
    const std::string reason = whyNotAddable(a.temporal(), *amount);
    if (!reason.empty()) o.machine.fail(o.syntax, reason);
    const auto moved = plus(a.temporal(), *amount, isMinus);
    return moved ? Collection{Item::temporal(*moved)} : Collection{};
  }
  const auto left = a.isNumber() ? std::optional(Quantity{*a.number()}) : a.quantity();
  const auto right = b.isNumber() ? std::optional(Quantity{*b.number()}) : amount;
  if (left && right) return quantityOr(add(*left, *right, isMinus));
  o.refuse(a, b);
}

Collection product(const Operands& o, const Item& a, const Item& b) {
  if (a.isInteger() && b.isInteger()) return integerOr(a.integer() * b.integer());
  if (a.isNumber() && b.isNumber()) return decimalOr(Decimal::multiply(*a.number(), *b.number()));
  const auto left = a.isNumber() ? std::optional(Quantity{*a.number()}) : a.quantity();
  const auto right = b.isNumber() ? std::optional(Quantity{*b.number()}) : b.quantity();
  if (left && right) return quantityOr(multiply(*left, *right));
  o.refuse(a, b);
}

Collection quotient(const Operands& o, const Item& a, const Item& b) {
  if (a.isNumber() && b.isNumber()) return decimalOr(Decimal::divide(*a.number(), *b.number()));
  const auto left = a.isNumber() ? std::optional(Quantity{*a.number()}) : a.quantity();
  const auto right = b.isNumber() ? std::optional(Quantity{*b.number()}) : b.quantity();
  if (left && right) return quantityOr(divide(*left, *right));
  o.refuse(a, b);
}

/// Whole division, cut off towards zero.
Collection division(const Operands& o, const Item& a, const Item& b) {
  if (!a.isNumber() || !b.isNumber()) o.refuse(a, b);
  const auto result = Decimal::divide(*a.number(), *b.number());
  const auto whole = result ? result->truncated() : std::nullopt;
  return whole ? Collection{Item::integer(*whole)} : Collection{};
}

/// The rest after division(); it has the sign of the dividend.
Collection rest(const Operands& o, const Item& a, const Item& b) {
  if (!a.isNumber() || !b.isNumber()) o.refuse(a, b);
  if (a.isInteger() && b.isInteger()) {
    return b.integer() == 0 ? Collection{} : Collection{Item::integer(a.integer() % b.integer())};
  }
  const auto left = a.number()->value;
  const auto right = b.number()->value;
  const auto exact = base::Rational::divide(left, right);
  if (!exact) return {};
  const auto whole = base::Rational::fraction(exact->numerator() / exact->denominator(), 1);
  const auto taken = whole ? base::Rational::multiply(*whole, right) : std::nullopt;
  const auto result = taken ? base::Rational::subtract(left, *taken) : std::nullopt;
  return result ? Collection{Item::decimal({*result, -1})} : Collection{};
}

using Arithmetic = Collection (*)(const Operands&, const Item&, const Item&);

Collection arithmetic(const Operands& o, Arithmetic apply) {
  if (o.left.empty() || o.right.empty()) return {};
  const Item* left = o.machine.single(o.left, o.syntax);
  const Item* right = o.machine.single(o.right, o.syntax);
  return apply(o, *left, *right);
}

/// Concatenation: empty counts as the empty text.
Collection joined(const Operands& o) {
  std::string text;
  for (const Collection* side : {&o.left, &o.right}) {
    const Item* item = o.machine.single(*side, o.syntax);
    if (!item) continue;
    const bool isPlain = item->isText();
    if (!isPlain) o.machine.fail(o.syntax, "& joins texts only", "make a text of it with toString()");
    o.machine.budget().text(item->text().size());
    text += item->text();
  }
  o.machine.budget().text(text.size());
  return {Item::text(std::move(text))};
}

Collection united(const Operands& o) {
  Collection all = o.left;
  all.insert(all.end(), o.right.begin(), o.right.end());
  return o.equality().distinct(all);
}

Collection membership(const Operands& o, const Collection& one, const Collection& all) {
  const Item* item = o.machine.single(one, o.syntax);
  if (!item) return {};
  return {Item::boolean(o.equality().contains(all, *item))};
}

}  // namespace

Collection applyOperator(Machine& machine, const Syntax& syntax, const Collection& left,
                         const Collection& right) {
  const Operands o{machine, syntax, left, right};
  const std::string& text = syntax.text;
  if (text == "and") return logical(o, truthAnd);
  if (text == "or") return logical(o, truthOr);
  if (text == "xor") return logical(o, truthXor);
  if (text == "implies") return logical(o, truthImplies);
  if (text == "=") return equals(o, false);
  if (text == "!=") return equals(o, true);
  if (text == "~") return equivalent(o, false);
  if (text == "!~") return equivalent(o, true);
  if (text == "+" || text == "-") return arithmetic(o, sum);
  if (text == "*") return arithmetic(o, product);
  if (text == "/") return arithmetic(o, quotient);
  if (text == "div") return arithmetic(o, division);
  if (text == "mod") return arithmetic(o, rest);
  if (text == "&") return joined(o);
  if (text == "|") return united(o);
  if (text == "in") return membership(o, left, right);
  if (text == "contains") return membership(o, right, left);
  return ordered(o);
}

}  // namespace stile::expression
