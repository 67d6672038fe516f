// The number part of the compiler: units, which are all settled here, and arithmetic.
#include <utility>

#include "expression/compiler.h"

namespace stile::expression {
namespace {

using base::Analyte;
using base::Rational;
using base::Unit;

/// No unit at all: 3 and not 3 %.
bool isBare(const Unit& unit) {
  return unit.isPureNumber() && unit.factor == Rational(1) && unit.offset == Rational();
}

/// Sums and products mean nothing where zero is not "none of it": temperatures, and HbA1c, whose
/// two units have no common zero.
bool isProportional(const Type& type) {
  return type.unit.offset == Rational() && type.analyte != Analyte::HbA1c;
}

Type pureNumber() {
  return {ValueKind::Number, {"1"}, Analyte::None, false};
}

const char* substance(Analyte analyte) {
  switch (analyte) {
    case Analyte::Glucose:
      return "glucose";
    case Analyte::HbA1c:
      return "HbA1c";
    case Analyte::Cholesterol:
      return "cholesterol";
    case Analyte::Triglycerides:
      return "triglycerides";
    case Analyte::None:
      break;
  }
  return "another substance";
}

}  // namespace

Operand Compiler::number(const Syntax& syntax) {
  const auto value = Rational::parse(syntax.text);
  if (!value) return refuse(syntax, "this number has too many digits");
  Type type = pureNumber();
  type.isWhole = value->isWhole() && syntax.text.find('.') == std::string::npos;
  if (syntax.kind == SyntaxKind::Quantity) {
    auto unit = base::parseUnit(syntax.unit);
    if (!unit) {
      return refuse(syntax, "'" + syntax.unit + "' is not a unit known here",
                    "write a UCUM unit such as 'mm[Hg]', 'kg' or '/min'");
    }
    type.unit = std::move(*unit);
  }
  return result(syntax, std::move(type), {Step::Number, {}, addNumber(*value), -1});
}

int Compiler::addNumber(const Rational& value) {
  code_.numbers.push_back(value);
  return static_cast<int>(code_.numbers.size()) - 1;
}

const Rational* Compiler::constantOf(const Operand& operand) const {
  const Node& node = code_.at(operand.node);
  return node.step == Step::Number ? &Instructions::item(code_.numbers, node.a) : nullptr;
}

Operand Compiler::sign(const Syntax& syntax) {
  Operand operand = compile(*syntax.children[0]);
  if (operand.isRefused()) return {};
  if (operand.type.kind != ValueKind::Number) {
    return refuse(syntax, "a sign needs a number, and this is " + wordsFor(operand.type.kind));
  }
  if (syntax.text == "+") return operand;
  if (!constantOf(operand) && !needProportional(operand)) return {};
  return numeric(syntax, operand.type, {Step::Negate, {}, operand.node, -1});
}

Operand Compiler::arithmetic(const Syntax& syntax) {
  Operand left = compile(*syntax.children[0]);
  Operand right = compile(*syntax.children[1]);
  if (left.isRefused() || right.isRefused() || refuseNonNumbers(left, right)) return {};
  if (!needProportional(left) || !needProportional(right)) return {};
  if (syntax.text == "+") return addition(syntax, Step::Add, std::move(left), std::move(right));
  if (syntax.text == "-") return addition(syntax, Step::Subtract, std::move(left), std::move(right));
  return scaling(syntax, syntax.text == "*" ? Step::Multiply : Step::Divide, std::move(left),
                 std::move(right));
}

bool Compiler::refuseNonNumbers(const Operand& left, const Operand& right) {
  if (left.type.kind == ValueKind::Date || right.type.kind == ValueKind::Date) {
    const Operand& date = left.type.kind == ValueKind::Date ? left : right;
    refuse(*date.syntax,
           "dates cannot be calculated with: FHIRPath cuts the duration to the precision of the date, which "
           "gives "
           "false certainty for a date known in part",
           "use a derived fact of the kind elapsed and compare it with the duration");
    return true;
  }
  bool isAnyRefused = false;
  for (const Operand* operand : {&left, &right}) {
    if (operand->type.kind == ValueKind::Number) continue;
    refuse(*operand->syntax, "only numbers can be calculated with, and " + named(*operand->syntax) + " is " +
                                 wordsFor(operand->type.kind));
    isAnyRefused = true;
  }
  return isAnyRefused;
}

bool Compiler::needProportional(const Operand& operand) {
  if (isProportional(operand.type)) return true;
  const bool isTemperature = operand.type.unit.offset != Rational();
  refuse(*operand.syntax,
         std::string(isTemperature ? "temperatures" : "HbA1c values") +
             " can only be compared, not calculated with",
         "write the comparison without arithmetic");
  return false;
}

Operand Compiler::addition(const Syntax& syntax, Step step, Operand left, Operand right) {
  if (!unify(left, right, step == Step::Add ? "added" : "subtracted")) return {};
  Type type = left.type;
  type.isWhole = left.type.isWhole && right.type.isWhole;
  return numeric(syntax, std::move(type), {step, {}, left.node, right.node});
}

Operand Compiler::scaling(const Syntax& syntax, Step step, Operand left, Operand right) {
  const bool isProduct = step == Step::Multiply;
  const Rational* divisor = isProduct ? nullptr : constantOf(right);
  if (divisor && *divisor == Rational()) return refuse(*right.syntax, "this divides by zero");
  auto unit = isProduct ? base::multiply(left.type.unit, right.type.unit)
                        : base::divide(left.type.unit, right.type.unit);
  if (!unit) {
    return refuse(syntax,
                  "the unit of this " + std::string(isProduct ? "product" : "quotient") + " does not fit");
  }
  Type type = pureNumber();
  type.unit = *unit;
  type.isWhole = isProduct && left.type.isWhole && right.type.isWhole;
  if (isBare(right.type.unit)) type.analyte = left.type.analyte;
  if (isProduct && isBare(left.type.unit)) type.analyte = right.type.analyte;
  Operand whole = numeric(syntax, type, {step, {}, left.node, right.node});
  // Units that cancel leave a pure number: cm/m is 1/100 and no unit any more.
  const bool hasCancelled = type.unit.isPureNumber() && !left.type.unit.isPureNumber();
  if (whole.isRefused() || !hasCancelled) return whole;
  if (!convert(whole, pureNumber().unit, Analyte::None)) return refuse(syntax, "the number does not fit");
  return whole;
}

Operand Compiler::numeric(const Syntax& syntax, Type type, const Node& node) {
  const auto constant = [&](int index) -> const Rational* {
    if (index < 0 || code_.at(index).step != Step::Number) return nullptr;
    return &Instructions::item(code_.numbers, code_.at(index).a);
  };
  const Rational* a = constant(node.a);
  const Rational* b = constant(node.b);
  if (!a || (hasTwoOperands(node.step) && !b)) return result(syntax, std::move(type), node);
  std::optional<Rational> value;
  switch (node.step) {
    case Step::Negate:
      value = a->negated();
      break;
    case Step::Add:
      value = Rational::add(*a, *b);
      break;
    case Step::Subtract:
      value = Rational::subtract(*a, *b);
      break;
    case Step::Multiply:
      value = Rational::multiply(*a, *b);
      break;
    default:
      value = Rational::divide(*a, *b);
      break;
  }
  if (!value) return refuse(syntax, "the number does not fit");
  return result(syntax, std::move(type), {Step::Number, {}, addNumber(*value), -1});
}

bool Compiler::unify(Operand& left, Operand& right, const std::string& verb) {
  if (isBare(left.type.unit) != isBare(right.type.unit)) {
    return isBare(left.type.unit) ? refuseBare(left, right, verb) : refuseBare(right, left, verb);
  }
  const Analyte a = left.type.analyte;
  const Analyte b = right.type.analyte;
  // A written value takes the substance of the fact it is compared with; between facts each must say.
  const bool hasWritten = constantOf(left) || constantOf(right);
  if (a != b && !hasWritten && a != Analyte::None && b != Analyte::None) {
    refuse(*right.syntax, named(*left.syntax) + " is " + substance(a) + " and " + named(*right.syntax) +
                              " is " + substance(b) + ": they cannot be " + verb);
    return false;
  }
  const bool isShared = a == b || hasWritten;
  const Analyte shared = !isShared ? Analyte::None : a != Analyte::None ? a : b;
  const bool isHbA1cApart = !isShared && (a == Analyte::HbA1c || b == Analyte::HbA1c);
  const bool areComparable = base::comparable(left.type.unit, right.type.unit, shared) &&
                             (!isHbA1cApart || left.type.unit.factor == right.type.unit.factor);
  const bool isLeftWritten = constantOf(left) && !constantOf(right);
  if (!areComparable) {
    refuse(*(isLeftWritten ? left : right).syntax,
           left.type.unit.text + " and " + right.type.unit.text + " cannot be " + verb +
               "; FHIRPath would silently yield nothing",
           "give it in " + (isLeftWritten ? right : left).type.unit.text);
    return false;
  }
  Operand& moved = isLeftWritten ? left : right;
  const Operand& fixed = isLeftWritten ? right : left;
  if (convert(moved, fixed.type.unit, shared)) return true;
  refuse(*moved.syntax, "the number does not fit when turned into " + fixed.type.unit.text);
  return false;
}

bool Compiler::refuseBare(const Operand& bare, const Operand& other, const std::string& verb) {
  const std::string& unit = other.type.unit.text;
  if (constantOf(bare)) {
    refuse(*bare.syntax,
           named(*other.syntax) + " is in " + unit + " and " + named(*bare.syntax) + " has no unit",
           "write " + named(*bare.syntax) + " '" + unit + "' if that is what it means");
  } else {
    refuse(*(constantOf(other) ? other : bare).syntax,
           named(*bare.syntax) + " is a pure number and " + named(*other.syntax) + " is in " + unit +
               ": they cannot be " + verb,
           "write both with the same kind of unit");
  }
  return false;
}

Operand Compiler::inUnitOf(Operand operand, const Type& expected) {
  Type wanted = expected;
  if (wanted.unit.text.empty()) wanted.unit.text = "1";
  const Syntax& syntax = *operand.syntax;
  const std::string need = isBare(wanted.unit) ? "a pure number is needed here"
                                               : "a number in " + wanted.unit.text + " is needed here";
  if (isBare(wanted.unit) != isBare(operand.type.unit)) {
    return refuse(syntax,
                  need + ", and this " +
                      (isBare(operand.type.unit) ? "has no unit" : "is in " + operand.type.unit.text),
                  isBare(wanted.unit) ? "" : "write it with a unit, for example '" + wanted.unit.text + "'");
  }
  const Analyte given = operand.type.analyte;
  if (given != Analyte::None && wanted.analyte != Analyte::None && given != wanted.analyte) {
    return refuse(
        syntax, std::string(substance(wanted.analyte)) + " is needed here, and this is " + substance(given));
  }
  const Analyte shared = given != Analyte::None ? given
                         : constantOf(operand)  ? wanted.analyte
                                                : Analyte::None;
  if (!base::comparable(operand.type.unit, wanted.unit, shared)) {
    return refuse(syntax, need + ", and this is in " + operand.type.unit.text,
                  "write it in a unit of the same kind");
  }
  if (!convert(operand, wanted.unit, shared)) {
    return refuse(syntax, "the number does not fit when turned into " + wanted.unit.text);
  }
  operand.type.analyte = wanted.analyte;
  return operand;
}

bool Compiler::convert(Operand& operand, const Unit& unit, Analyte analyte) {
  const Unit from = operand.type.unit;
  operand.type.analyte = analyte;
  operand.type.unit = unit;
  if (from.factor == unit.factor && from.offset == unit.offset && from.dimension == unit.dimension)
    return true;
  operand.type.isWhole = false;
  if (const Rational* constant = constantOf(operand)) {
    const auto value = base::convert(*constant, from, unit, analyte);
    if (!value) return false;
    operand.node = add({Step::Number, {}, addNumber(*value), -1});
    return true;
  }
  const auto scale = scaleBetween(from, unit, analyte);
  if (!scale) return false;
  code_.scales.push_back(*scale);
  operand.node = add({Step::Convert, {}, operand.node, static_cast<int>(code_.scales.size()) - 1});
  return true;
}

/// Every conversion of unit.h is a straight line, so two points give all of it.
std::optional<Scale> Compiler::scaleBetween(const Unit& from, const Unit& to, Analyte analyte) const {
  const auto atZero = base::convert(0, from, to, analyte);
  const auto atOne = base::convert(1, from, to, analyte);
  const auto slope = atZero && atOne ? Rational::subtract(*atOne, *atZero) : std::nullopt;
  if (!slope) return std::nullopt;
  return Scale{*slope, *atZero};
}

}  // namespace stile::expression
