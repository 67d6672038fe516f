// Type names in expressions, and whether an item is of such a type (FHIRPath 2.0.0, 6.3).
// For src/expression only.
#pragma once

#include <string>
#include <string_view>

#include "expression/machine.h"

namespace stile::expression {

/// A type that was named. Without a namespace it may be a FHIR type and a System type of one name
/// (Quantity).
struct TypeSpecifier {
  const ModelType* fhir = nullptr;
  std::string system;  ///< empty: none

  bool matches(const Item& item) const;
};

/// The type called `name` (`Patient`, `System.String`, `FHIR.code`); an error at `at` when there is none.
TypeSpecifier typeSpecifier(const Machine& machine, const Syntax& at, std::string_view name);
/// The same for an argument that is the name of a type.
TypeSpecifier typeArgument(const Machine& machine, const Syntax& argument);

}  // namespace stile::expression
