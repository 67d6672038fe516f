#include "expression/machine.h"

#include <algorithm>

#include "base/near_names.h"
#include "expression/function_table.h"
#include "expression/navigation.h"
#include "expression/type_test.h"

namespace stile::expression {
namespace {

constexpr std::string_view kStructureDefinition = "http://hl7.org/fhir/StructureDefinition/";
constexpr std::string_view kValueSet = "http://hl7.org/fhir/ValueSet/";

/// Variables that are the same everywhere (FHIR R4, "FHIRPath: environment variables").
std::optional<std::string> fixedVariable(const std::string& name) {
  if (name == "ucum") return "http://unitsofmeasure.org";
  if (name == "sct") return "http://snomed.info/sct";
  if (name == "loinc") return "http://loinc.org";
  if (name.starts_with("vs-")) return std::string(kValueSet) + name.substr(3);
  if (name.starts_with("ext-")) return std::string(kStructureDefinition) + name.substr(4);
  return std::nullopt;
}

bool isFocusName(const std::string& name) {
  return name == "context" || name == "resource" || name == "rootResource";
}

}  // namespace

void Machine::fail(const Syntax& at, std::string message, std::string remedy) const {
  throw EvaluationError{std::move(message), std::move(remedy), &at};
}

const Item* Machine::single(const Collection& items, const Syntax& at) const {
  if (items.size() > 1) {
    fail(at, "one item is needed here, and there are " + std::to_string(items.size()),
         "choose one with first() or where()");
  }
  return items.empty() ? nullptr : &items.front();
}

std::optional<bool> Machine::truth(const Collection& items, const Syntax& at) const {
  const Item* item = single(items, at);
  if (!item) return std::nullopt;
  return item->isBoolean() ? item->boolean() : true;
}

bool Machine::hasVariable(const std::string& name) const {
  const bool isDefined =
      std::any_of(defined_.begin(), defined_.end(), [&](const auto& entry) { return entry.first == name; });
  return isDefined || environment_.variables.contains(name) || isFocusName(name) || fixedVariable(name);
}

void Machine::define(const Syntax& at, std::string name, Collection value) {
  if (hasVariable(name)) {
    fail(at, "%" + name + " is defined already", "choose another name");
  }
  defined_.emplace_back(std::move(name), std::move(value));
}

Collection Machine::variable(const std::string& name, const Syntax& at) const {
  for (auto entry = defined_.rbegin(); entry != defined_.rend(); ++entry) {
    if (entry->first == name) return entry->second;
  }
  const auto given = environment_.variables.find(name);
  if (given != environment_.variables.end()) return given->second;
  if (isFocusName(name)) return focus_;
  if (const auto fixed = fixedVariable(name)) return {Item::text(*fixed)};
  std::vector<std::string> known{"context", "resource", "rootResource", "ucum", "sct", "loinc"};
  for (const auto& entry : environment_.variables) known.push_back(entry.first);
  for (const auto& entry : defined_) known.push_back(entry.first);
  fail(at, "there is no variable %" + name, base::didYouMean(name, known, ""));
}

Collection Machine::evaluateApart(const Syntax& syntax, const Scope& scope) {
  const std::size_t before = defined_.size();
  Collection result = evaluate(syntax, scope);
  defined_.resize(before);
  return result;
}

Collection Machine::evaluate(const Syntax& syntax, const Scope& scope) {
  budget_.at = &syntax;
  budget_.step();
  Collection result = compute(syntax, scope);
  budget_.at = &syntax;
  budget_.items(result.size());
  budget_.step(result.size());
  return result;
}

Collection Machine::compute(const Syntax& syntax, const Scope& scope) {
  switch (syntax.kind) {
    case SyntaxKind::Null:
      return {};
    case SyntaxKind::Boolean:
    case SyntaxKind::String:
    case SyntaxKind::Number:
    case SyntaxKind::Date:
    case SyntaxKind::DateTime:
    case SyntaxKind::Time:
    case SyntaxKind::Quantity:
      return literal(syntax);
    case SyntaxKind::Variable:
      return variable(syntax.text, syntax);
    case SyntaxKind::Identifier:
      return member(syntax, scope);
    case SyntaxKind::Function:
      return function(syntax, scope);
    case SyntaxKind::This:
    case SyntaxKind::Index:
    case SyntaxKind::Total:
      if (syntax.children.front()) {
        fail(syntax, "$this, $index and $total cannot be asked of something", "remove what stands before it");
      }
      if (syntax.kind == SyntaxKind::This) return *scope.self;
      if (syntax.kind == SyntaxKind::Total) return scope.total ? *scope.total : Collection{};
      return scope.index ? Collection{Item::integer(*scope.index)} : Collection{};
    case SyntaxKind::Indexer:
      return indexer(syntax, scope);
    case SyntaxKind::Unary:
      return sign(syntax, scope);
    case SyntaxKind::TypeOperator:
      return typeOperator(syntax, scope);
    case SyntaxKind::Binary: {
      const Collection left = evaluateApart(*syntax.children[0], scope);
      const Collection right = evaluateApart(*syntax.children[1], scope);
      budget_.at = &syntax;
      return applyOperator(*this, syntax, left, right);
    }
  }
  return {};
}

Collection Machine::literal(const Syntax& syntax) {
  switch (syntax.kind) {
    case SyntaxKind::Boolean:
      return {Item::boolean(syntax.text == "true")};
    case SyntaxKind::String:
      budget_.text(syntax.text.size());
      return {Item::text(syntax.text)};
    case SyntaxKind::Date:
      if (const auto date = Temporal::parseDate(syntax.text)) return {Item::temporal(*date)};
      break;
    case SyntaxKind::DateTime:
      if (const auto time = Temporal::parseDateTime(syntax.text)) return {Item::temporal(*time)};
      break;
    case SyntaxKind::Time:
      if (const auto time = Temporal::parseTime(syntax.text)) return {Item::temporal(*time)};
      break;
    default: {
      const auto value = Decimal::parse(syntax.text);
      if (!value) fail(syntax, "this number has too many digits", "write at most 34");
      if (syntax.kind == SyntaxKind::Quantity) {
        return {Item::quantity(Quantity::ofUnit(*value, syntax.unit, syntax.isCalendarWord))};
      }
      if (syntax.text.find('.') != std::string::npos) return {Item::decimal(*value)};
      const auto whole = value->truncated();
      if (!whole) {
        fail(syntax, "this is larger than the largest Integer, " + std::to_string(kLargestInteger),
             "write it with a decimal point");
      }
      return {Item::integer(*whole)};
    }
  }
  fail(syntax, "there is no such date or time");
}

Collection Machine::member(const Syntax& syntax, const Scope& scope) {
  const bool isStart = syntax.children.front() == nullptr;
  const Collection focus = isStart ? *scope.self : evaluate(*syntax.children.front(), scope);
  budget_.at = &syntax;
  // At the start a path may name the type of the resource: `Patient.name`.
  const ModelType* named = isStart ? model().find(syntax.text) : nullptr;
  Collection result;
  for (const Item& item : focus) {
    budget_.step();
    if (named && item.type && item.type->isKindOf(*named) && (named->isResource || !item.node)) {
      result.push_back(item);
      continue;
    }
    // A resource of a model that does not know it still names itself.
    if (isStart && item.node && item.node->isObject() && !item.type) {
      const auto name = item.node->find("resourceType");
      if (name && name->isString() && name->string() == syntax.text) {
        result.push_back(item);
        continue;
      }
    }
    if (environment_.isStrict && isUnknownMember(item, syntax.text)) {
      std::vector<std::string> known;
      for (const ModelType* type = item.type; type; type = type->base) {
        for (const ModelElement& element : type->elements) known.push_back(element.name);
      }
      fail(syntax, item.type->name + " has no element " + syntax.text,
           base::didYouMean(syntax.text, known, ""));
    }
    appendMember(item, syntax.text, model(), result);
    budget_.items(result.size());
  }
  return result;
}

Collection Machine::indexer(const Syntax& syntax, const Scope& scope) {
  const Collection focus = evaluate(*syntax.children[0], scope);
  const Collection index = evaluateApart(*syntax.children[1], scope);
  const Item* item = single(index, *syntax.children[1]);
  if (!item) return {};
  if (!item->isInteger()) fail(*syntax.children[1], "an index is an Integer");
  const long long at = item->integer();
  if (at < 0 || at >= static_cast<long long>(focus.size())) return {};
  return {focus[static_cast<std::size_t>(at)]};
}

Collection Machine::sign(const Syntax& syntax, const Scope& scope) {
  const Collection operand = evaluate(*syntax.children[0], scope);
  const Item* item = single(operand, syntax);
  if (!item) return {};
  const bool isMinus = syntax.text == "-";
  if (item->isInteger()) return {Item::integer(isMinus ? -item->integer() : item->integer())};
  if (const auto number = item->number()) {
    return {Item::decimal({isMinus ? number->value.negated() : number->value, number->scale})};
  }
  if (auto quantity = item->quantity()) {
    if (isMinus) quantity->value.value = quantity->value.value.negated();
    return {Item::quantity(*quantity)};
  }
  fail(syntax, "a sign stands only before a number or a quantity",
       "a sign binds looser than a point: write (-1).abs()");
}

Collection Machine::typeOperator(const Syntax& syntax, const Scope& scope) {
  const Collection operand = evaluate(*syntax.children[0], scope);
  const TypeSpecifier type = typeSpecifier(*this, syntax, syntax.unit);
  const Item* item = single(operand, syntax);
  if (!item) return {};
  const bool isOfType = type.matches(*item);
  if (syntax.text == "is") return {Item::boolean(isOfType)};
  return isOfType ? operand : Collection{};
}

Collection Machine::function(const Syntax& syntax, const Scope& scope) {
  const FunctionEntry* entry = findFunction(syntax.text);
  const bool hasFocus = syntax.children.front() != nullptr;
  Call call{*this, syntax, scope, hasFocus ? evaluate(*syntax.children.front(), scope) : *scope.self};
  budget_.at = &syntax;
  return entry->run(call);
}

}  // namespace stile::expression
