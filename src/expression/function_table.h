// The functions of FHIRPath by name. For src/expression only.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "expression/machine.h"

namespace stile::expression {

/// A function being called on `input`.
struct Call {
  Machine& machine;
  const Syntax& syntax;
  const Scope& scope;
  Collection input;

  std::size_t count() const { return syntax.children.size() - 1; }  ///< of arguments
  const Syntax& at(std::size_t i) const { return *syntax.children[i + 1]; }
  /// An argument that is a value: evaluated where the function is called.
  Collection argument(std::size_t i) { return machine.evaluateApart(at(i), scope); }
  /// An argument that is a projection or criterion: evaluated on one item of the input.
  Collection onItem(std::size_t i, const Item& item, std::size_t index, const Collection* total = nullptr);
  std::optional<bool> criterion(std::size_t i, const Item& item, std::size_t index) {
    return machine.truth(onItem(i, item, index), at(i));
  }

  /// The only item of the input; null when it is empty.
  const Item* single() const { return machine.single(input, syntax); }
  /// The only item as text; null when the input is empty, an error when it is no text.
  const std::string* text() const;
  std::optional<std::string> textArgument(std::size_t i);
  std::optional<long long> integerArgument(std::size_t i);
  std::optional<bool> booleanArgument(std::size_t i);

  [[noreturn]] void fail(std::string message, std::string remedy = {}) const {
    machine.fail(syntax, std::move(message), std::move(remedy));
  }
};

struct FunctionEntry {
  std::string_view name;
  std::size_t fewest;  ///< arguments
  std::size_t most;
  Collection (*run)(Call& call);
};

std::span<const FunctionEntry> existenceFunctions();
std::span<const FunctionEntry> filteringFunctions();
std::span<const FunctionEntry> subsettingFunctions();
std::span<const FunctionEntry> combiningFunctions();
std::span<const FunctionEntry> conversionFunctions();
std::span<const FunctionEntry> textFunctions();
std::span<const FunctionEntry> matchingFunctions();
std::span<const FunctionEntry> encodingFunctions();
std::span<const FunctionEntry> mathFunctions();
std::span<const FunctionEntry> aggregateFunctions();
std::span<const FunctionEntry> temporalFunctions();
std::span<const FunctionEntry> boundaryFunctions();
std::span<const FunctionEntry> typeFunctions();
std::span<const FunctionEntry> treeFunctions();
std::span<const FunctionEntry> fhirFunctions();

/// null when there is no such function.
const FunctionEntry* findFunction(std::string_view name);
std::vector<std::string_view> functionNames();

}  // namespace stile::expression
