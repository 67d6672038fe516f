#include "expression/type_test.h"

#include <algorithm>
#include <array>

#include "expression/function_table.h"

namespace stile::expression {
namespace {

constexpr std::array<std::string_view, 10> kSystemTypes{"Any",  "Boolean",  "String", "Integer",  "Decimal",
                                                        "Date", "DateTime", "Time",   "Quantity", "TypeInfo"};

bool isSystemType(std::string_view name) {
  return std::find(kSystemTypes.begin(), kSystemTypes.end(), name) != kSystemTypes.end();
}

/// `a.b` of an argument that was parsed as a path; empty when it is something else.
std::string pathOf(const Syntax& syntax) {
  if (syntax.kind != SyntaxKind::Identifier) return {};
  const Syntax* focus = syntax.children.front().get();
  if (!focus) return syntax.text;
  const std::string before = pathOf(*focus);
  return before.empty() ? std::string() : before + "." + syntax.text;
}

Collection is(Call& call) {
  const TypeSpecifier type = typeArgument(call.machine, call.at(0));
  const Item* item = call.single();
  return item ? Collection{Item::boolean(type.matches(*item))} : Collection{};
}

Collection as(Call& call) {
  const TypeSpecifier type = typeArgument(call.machine, call.at(0));
  const Item* item = call.single();
  return item && type.matches(*item) ? call.input : Collection{};
}

Collection ofType(Call& call) {
  const TypeSpecifier type = typeArgument(call.machine, call.at(0));
  Collection result;
  std::copy_if(call.input.begin(), call.input.end(), std::back_inserter(result),
               [&](const Item& item) { return type.matches(item); });
  return result;
}

Collection typeOf(Call& call) {
  Collection result;
  for (const Item& item : call.input) {
    Item type;
    type.value = std::make_shared<const TypeName>(item.typeName());
    result.push_back(std::move(type));
  }
  return result;
}

constexpr std::array<FunctionEntry, 4> kTypeTestFunctions{
    {{"is", 1, 1, is}, {"as", 1, 1, as}, {"ofType", 1, 1, ofType}, {"type", 0, 0, typeOf}}};

}  // namespace

bool TypeSpecifier::matches(const Item& item) const {
  if (item.isElement) return fhir && item.type && item.type->isKindOf(*fhir);
  return !system.empty() && (system == "Any" || item.typeName().name == system);
}

TypeSpecifier typeSpecifier(const Machine& machine, const Syntax& at, std::string_view name) {
  TypeSpecifier type;
  const std::string& space = machine.model().space();
  if (name.starts_with("System.")) {
    if (isSystemType(name.substr(7))) type.system = name.substr(7);
  } else if (name.starts_with(space + ".")) {
    type.fhir = machine.model().find(name.substr(space.size() + 1));
  } else {
    type.fhir = machine.model().find(name);
    if (isSystemType(name)) type.system = name;
  }
  if (!type.fhir && type.system.empty()) {
    machine.fail(at, "there is no type " + std::string(name),
                 "write a type such as Quantity or System.String");
  }
  return type;
}

TypeSpecifier typeArgument(const Machine& machine, const Syntax& argument) {
  std::string name = pathOf(argument);
  if (name.empty() && argument.kind == SyntaxKind::String) name = argument.text;
  if (name.empty()) machine.fail(argument, "the name of a type is needed here");
  return typeSpecifier(machine, argument, name);
}

std::span<const FunctionEntry> typeFunctions() {
  return kTypeTestFunctions;
}

}  // namespace stile::expression
