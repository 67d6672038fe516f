// The comparison part of the compiler: = != < <= > >= and in.
#include <algorithm>
#include <utility>

#include "expression/compiler.h"

namespace stile::expression {
namespace {

bool isTextual(const Operand& operand) {
  return operand.type.kind == ValueKind::Text || operand.type.kind == ValueKind::Code;
}

bool isWritten(const Syntax& syntax) {
  switch (syntax.kind) {
    case SyntaxKind::Boolean:
    case SyntaxKind::String:
    case SyntaxKind::Number:
    case SyntaxKind::Quantity:
    case SyntaxKind::Date:
      return true;
    case SyntaxKind::Unary:
      return isWritten(*syntax.children[0]);
    default:
      return false;
  }
}

/// The elements of a | b | c, in reading order.
std::vector<const Syntax*> elementsOf(const Syntax& list) {
  std::vector<const Syntax*> elements;
  const Syntax* rest = &list;
  while (rest->kind == SyntaxKind::Binary && rest->text == "|") {
    elements.push_back(rest->children[1].get());
    rest = rest->children[0].get();
  }
  elements.push_back(rest);
  std::reverse(elements.begin(), elements.end());
  return elements;
}

std::string kindAdvice(const Operand& left, const Operand& right) {
  const auto is = [](const Operand& operand, ValueKind kind) { return operand.type.kind == kind; };
  const Operand* code = is(left, ValueKind::Code) ? &left : is(right, ValueKind::Code) ? &right : nullptr;
  if (code && !code->options.empty()) return "its options are " + listed(code->options, "and");
  if (is(left, ValueKind::Date) || is(right, ValueKind::Date))
    return "write dates as @2026-01-05, without quotes";
  if (is(left, ValueKind::Boolean) || is(right, ValueKind::Boolean)) {
    return "a fact that is true or false needs no comparison; join conditions with and or or";
  }
  return {};
}

}  // namespace

Operand Compiler::comparison(const Syntax& syntax, Relation relation) {
  Operand left = compile(*syntax.children[0]);
  Operand right = compile(*syntax.children[1]);
  if (left.isRefused() || right.isRefused()) return {};
  return compared(syntax, std::move(left), relation, std::move(right));
}

Operand Compiler::compared(const Syntax& syntax, Operand left, Relation relation, Operand right) {
  const bool isEquality = relation == Relation::Equal || relation == Relation::NotEqual;
  if (isTextual(left) && isTextual(right)) {
    if (!isEquality) {
      return refuse(*left.syntax, "texts and codes have no order here", "compare them with =, != or in");
    }
    if (!checkCodes(left, right)) return {};
    return result(syntax, {}, {Step::CompareTexts, relation, left.node, right.node});
  }
  if (left.type.kind != right.type.kind) return refuseKinds(left, right);
  switch (left.type.kind) {
    case ValueKind::Number:
      if (!unify(left, right, "compared")) return {};
      return result(syntax, {}, {Step::CompareNumbers, relation, left.node, right.node});
    case ValueKind::Date:
      return result(syntax, {}, {Step::CompareDates, relation, left.node, right.node});
    default:
      break;
  }
  if (!isEquality) return refuse(*left.syntax, "true and false have no order", "compare them with = or !=");
  const Operand same = result(syntax, {}, {Step::SameTruth, {}, left.node, right.node});
  return relation == Relation::Equal ? same : result(syntax, {}, {Step::Not, {}, same.node, -1});
}

/// A list is a chain of equalities: unknown if the fact is, true if one is, false if none is.
Operand Compiler::membership(const Syntax& syntax) {
  const Operand left = compile(*syntax.children[0]);
  Operand chain;
  bool isRefused = left.isRefused();
  for (const Syntax* element : elementsOf(*syntax.children[1])) {
    if (!isWritten(*element)) {
      refuse(*element, "in needs a list of written values", "write %fact in ('a' | 'b')");
      return {};
    }
    Operand right = compile(*element);
    if (right.isRefused() || left.isRefused()) {
      isRefused = true;
      continue;
    }
    const Operand equal = compared(syntax, left, Relation::Equal, std::move(right));
    if (equal.isRefused()) {
      isRefused = true;
    } else {
      chain = chain.isRefused() ? equal : result(syntax, {}, {Step::Or, {}, chain.node, equal.node});
    }
  }
  return isRefused ? Operand{} : chain;
}

bool Compiler::checkCodes(const Operand& left, const Operand& right) {
  if (left.type.kind == ValueKind::Code && isWrittenText(right)) return isOption(left, right);
  if (right.type.kind == ValueKind::Code && isWrittenText(left)) return isOption(right, left);
  if (left.type.kind != right.type.kind) {
    refuseKinds(left, right);
    return false;
  }
  if (left.type.kind == ValueKind::Text || left.options.empty() || right.options.empty()) return true;
  const bool canMeet = std::any_of(left.options.begin(), left.options.end(), [&](const std::string& option) {
    return std::find(right.options.begin(), right.options.end(), option) != right.options.end();
  });
  if (!canMeet) {
    refuse(*right.syntax, named(*left.syntax) + " and " + named(*right.syntax) + " have no option in common",
           "compare each with its own options");
  }
  return canMeet;
}

bool Compiler::isOption(const Operand& code, const Operand& text) {
  const std::string& written = Instructions::item(code_.texts, code_.at(text.node).a);
  const bool isGood = code.options.empty() ||
                      std::find(code.options.begin(), code.options.end(), written) != code.options.end();
  if (!isGood) {
    refuse(*text.syntax, named(*text.syntax) + " is not an option of " + named(*code.syntax),
           "its options are " + listed(code.options, "and"));
  }
  return isGood;
}

Operand Compiler::refuseKinds(const Operand& left, const Operand& right) {
  return refuse(*right.syntax,
                named(*left.syntax) + " is " + wordsFor(left.type.kind) + " and " + named(*right.syntax) +
                    " is " + wordsFor(right.type.kind) + ": they cannot be compared",
                kindAdvice(left, right));
}

}  // namespace stile::expression
