#include "expression/compiler.h"

#include <algorithm>
#include <utility>

namespace stile::expression {
namespace {

constexpr std::size_t kLongestName = 40;

std::optional<Relation> relationOf(const std::string& text) {
  if (text == "=") return Relation::Equal;
  if (text == "!=") return Relation::NotEqual;
  if (text == "<") return Relation::Less;
  if (text == "<=") return Relation::LessOrEqual;
  if (text == ">") return Relation::Greater;
  if (text == ">=") return Relation::GreaterOrEqual;
  return std::nullopt;
}

std::optional<Step> logicOf(const std::string& text) {
  if (text == "and") return Step::And;
  if (text == "or") return Step::Or;
  if (text == "xor") return Step::Xor;
  if (text == "implies") return Step::Implies;
  return std::nullopt;
}

Step slotStep(ValueKind kind) {
  switch (kind) {
    case ValueKind::Boolean:
      return Step::SlotTruth;
    case ValueKind::Number:
      return Step::SlotNumber;
    case ValueKind::Text:
    case ValueKind::Code:
      return Step::SlotText;
    case ValueKind::Date:
      return Step::SlotDate;
  }
  return Step::SlotTruth;
}

std::string comparisonAdvice(const Operand& operand) {
  switch (operand.type.kind) {
    case ValueKind::Number:
      return "compare it with a number, for example with >=";
    case ValueKind::Code:
      return operand.options.empty() ? "compare it with a code"
                                     : "compare it with one of its options: " + listed(operand.options, "or");
    case ValueKind::Date:
      return "compare it with a date such as @2026-01-05";
    default:
      return {};
  }
}

}  // namespace

std::string wordsFor(ValueKind kind) {
  switch (kind) {
    case ValueKind::Boolean:
      return "true or false";
    case ValueKind::Number:
      return "a number";
    case ValueKind::Text:
      return "a text";
    case ValueKind::Code:
      return "a code";
    case ValueKind::Date:
      return "a date";
  }
  return {};
}

std::string listed(const std::vector<std::string>& words, const std::string& last) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " " + last + " " : ", ";
    text += words[i];
  }
  return text;
}

std::optional<Instructions> Compiler::run(const Syntax& syntax, const std::optional<Type>& expected) {
  Operand whole = compile(syntax);
  if (!whole.isRefused() && expected) whole = expectedAs(std::move(whole), *expected);
  if (whole.isRefused()) return std::nullopt;
  code_.root = whole.node;
  code_.type = whole.type;
  code_.text = std::string(text_);
  collectSlots();
  return std::move(code_);
}

void Compiler::collectSlots() {
  // Operands are compiled from left to right, so the array has the slots in reading order.
  for (const Node& node : code_.nodes) {
    const bool isKnown = std::find(code_.slots.begin(), code_.slots.end(), node.a) != code_.slots.end();
    if (isSlot(node.step) && !isKnown) code_.slots.push_back(node.a);
  }
}

Operand Compiler::compile(const Syntax& syntax) {
  switch (syntax.kind) {
    case SyntaxKind::Boolean:
      return result(syntax, {}, {Step::Truth, {}, syntax.text == "true" ? 1 : 0, -1});
    case SyntaxKind::String:
      code_.texts.push_back(syntax.text);
      return result(syntax, {ValueKind::Text, {}, {}, false},
                    {Step::Text, {}, static_cast<int>(code_.texts.size()) - 1, -1});
    case SyntaxKind::Number:
    case SyntaxKind::Quantity:
      return number(syntax);
    case SyntaxKind::Date:
      return date(syntax);
    case SyntaxKind::Variable:
      return variable(syntax);
    case SyntaxKind::Identifier:
      return member(syntax);
    case SyntaxKind::Function:
      return function(syntax);
    case SyntaxKind::Unary:
      return sign(syntax);
    case SyntaxKind::Binary:
      return binary(syntax);
    default:
      return refuse(syntax, refusalOfKind(syntax));
  }
}

Operand Compiler::date(const Syntax& syntax) {
  const auto date = base::PartialDate::parse(syntax.text);
  if (!date) return refuse(syntax, "there is no such date");
  code_.dates.push_back(*date);
  return result(syntax, {ValueKind::Date, {}, {}, false},
                {Step::Date, {}, static_cast<int>(code_.dates.size()) - 1, -1});
}

Operand Compiler::variable(const Syntax& syntax) {
  const auto symbol = symbols_.lookup(syntax.text);
  if (!symbol) {
    std::vector<std::string> near = symbols_.similar(syntax.text);
    for (std::string& name : near) name = "%" + name;
    return refuse(
        syntax, "there is no fact %" + syntax.text,
        near.empty() ? "use a fact of the dictionary" : "perhaps " + listed(near, "or") + " is meant");
  }
  if (!symbol->usable.empty())
    return refuse(syntax, "%" + syntax.text + " cannot be used here: " + symbol->usable);
  Operand operand = result(syntax, symbol->type, {slotStep(symbol->type.kind), {}, symbol->slot, -1});
  if (operand.type.unit.text.empty()) operand.type.unit.text = "1";
  operand.options = symbol->options;
  return operand;
}

Operand Compiler::member(const Syntax& syntax) {
  if (syntax.children[0]) {
    compile(*syntax.children[0]);
    return refuse(syntax, "a fact has no part named " + syntax.text, "name another fact with a percent sign");
  }
  if (symbols_.lookup(syntax.text)) {
    return refuse(syntax, syntax.text + " stands here without a percent sign", "write %" + syntax.text);
  }
  return refuse(syntax, syntax.text + " is neither a fact nor a text",
                "write facts with a percent sign, texts and codes in single quotes");
}

Operand Compiler::function(const Syntax& syntax) {
  if (syntax.text != "not") return refuse(syntax, refusalOfFunction(syntax.text));
  if (!syntax.children[0] || syntax.children.size() > 1) {
    return refuse(syntax, "not() stands behind what it negates and takes nothing", "write (…).not()");
  }
  const Operand operand = compile(*syntax.children[0]);
  if (operand.isRefused() || !needBoolean(operand, "not() negates a condition")) return {};
  return result(syntax, {}, {Step::Not, {}, operand.node, -1});
}

Operand Compiler::binary(const Syntax& syntax) {
  if (const auto logic = logicOf(syntax.text)) return logical(syntax, *logic);
  if (const auto relation = relationOf(syntax.text)) return comparison(syntax, *relation);
  if (syntax.text == "in") return membership(syntax);
  if (syntax.text == "+" || syntax.text == "-" || syntax.text == "*" || syntax.text == "/") {
    return arithmetic(syntax);
  }
  // The tree does not keep the operator's place; it is the first such text behind the left side.
  const Syntax& left = *syntax.children[0];
  const std::size_t found = text_.find(syntax.text, left.offset + left.length);
  Refusal refusal = refusalOfOperator(syntax.text);
  issues_.error(origin_.placeOf(std::min(found, syntax.children[1]->offset)), subject_,
                std::move(refusal.message), std::move(refusal.remedy));
  return {};
}

Operand Compiler::logical(const Syntax& syntax, Step step) {
  const Operand left = compile(*syntax.children[0]);
  const Operand right = compile(*syntax.children[1]);
  const std::string user = syntax.text + " joins conditions";
  const bool isLeftGood = !left.isRefused() && needBoolean(left, user);
  const bool isRightGood = !right.isRefused() && needBoolean(right, user);
  if (!isLeftGood || !isRightGood) return {};
  return result(syntax, {}, {step, {}, left.node, right.node});
}

bool Compiler::needBoolean(const Operand& operand, const std::string& user) {
  if (operand.type.kind == ValueKind::Boolean) return true;
  refuse(*operand.syntax, user + ", and " + named(*operand.syntax) + " is " + wordsFor(operand.type.kind),
         comparisonAdvice(operand));
  return false;
}

Operand Compiler::expectedAs(Operand operand, const Type& expected) {
  if (expected.kind == ValueKind::Code && isWrittenText(operand)) operand.type.kind = ValueKind::Code;
  const Syntax& syntax = *operand.syntax;
  if (operand.type.kind != expected.kind) {
    const std::string need = expected.kind == ValueKind::Boolean
                                 ? "a condition must be true or false"
                                 : wordsFor(expected.kind) + " is needed here";
    return refuse(syntax, need + ", and this is " + wordsFor(operand.type.kind),
                  expected.kind == ValueKind::Boolean ? comparisonAdvice(operand) : "");
  }
  if (expected.kind != ValueKind::Number) return operand;
  return inUnitOf(std::move(operand), expected);
}

int Compiler::add(const Node& node) {
  code_.nodes.push_back(node);
  return static_cast<int>(code_.nodes.size()) - 1;
}

Operand Compiler::result(const Syntax& syntax, Type type, const Node& node) {
  return {add(node), std::move(type), &syntax, {}};
}

Operand Compiler::refuse(const Syntax& at, std::string message, std::string remedy) {
  issues_.error(origin_.placeOf(at.offset), subject_, std::move(message), std::move(remedy));
  return {};
}

Operand Compiler::refuse(const Syntax& at, Refusal refusal) {
  return refuse(at, std::move(refusal.message), std::move(refusal.remedy));
}

std::string Compiler::named(const Syntax& syntax) const {
  const std::string_view source = text_.substr(syntax.offset, syntax.length);
  const bool isShort = source.size() <= kLongestName && source.find('\n') == std::string_view::npos;
  return isShort ? std::string(source) : "this part";
}

bool Compiler::isWrittenText(const Operand& operand) const {
  return !operand.isRefused() && code_.at(operand.node).step == Step::Text;
}

}  // namespace stile::expression
