// Why the scalar profile refuses a part of FHIRPath, in words. For src/expression only.
#pragma once

#include <string>

#include "expression/syntax.h"

namespace stile::expression {

struct Refusal {
  std::string message;
  std::string remedy;
};

/// For a function other than not().
Refusal refusalOfFunction(const std::string& name);
/// For an operator the profile does not have.
Refusal refusalOfOperator(const std::string& text);
/// For any other kind of node that is no part of the profile.
Refusal refusalOfKind(const Syntax& syntax);

}  // namespace stile::expression
