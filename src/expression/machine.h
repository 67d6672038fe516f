// Walks a syntax tree and computes collections. For src/expression only.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "expression/budget.h"
#include "expression/environment.h"
#include "expression/syntax.h"

namespace stile::expression {

/// What $this, $index and $total are in a part of the expression.
struct Scope {
  const Collection* self = nullptr;
  std::optional<long long> index;
  const Collection* total = nullptr;
};

class Machine {
 public:
  Machine(const Collection& focus, const Environment& environment)
      : focus_(focus), environment_(environment), budget_(environment.limits) {}

  Collection evaluate(const Syntax& syntax, const Scope& scope);
  /// The same, and what defineVariable() added within is forgotten.
  Collection evaluateApart(const Syntax& syntax, const Scope& scope);

  void define(const Syntax& at, std::string name, Collection value);

  [[noreturn]] void fail(const Syntax& at, std::string message, std::string remedy = {}) const;
  /// The only item; null when there is none, an error when there are several.
  const Item* single(const Collection& items, const Syntax& at) const;
  /// Singleton evaluation (FHIRPath 2.0.0, 4.5): one item that is no Boolean counts as true.
  std::optional<bool> truth(const Collection& items, const Syntax& at) const;

  Budget& budget() { return budget_; }
  const Environment& environment() const { return environment_; }
  const TypeModel& model() const { return *environment_.model; }
  int localZone() const { return environment_.clock.zoneMinutes(); }
  /// The variable of that name, or an error at `at`.
  Collection variable(const std::string& name, const Syntax& at) const;
  bool hasVariable(const std::string& name) const;

 private:
  Collection compute(const Syntax& syntax, const Scope& scope);
  Collection literal(const Syntax& syntax);
  Collection member(const Syntax& syntax, const Scope& scope);
  Collection indexer(const Syntax& syntax, const Scope& scope);
  Collection sign(const Syntax& syntax, const Scope& scope);
  Collection typeOperator(const Syntax& syntax, const Scope& scope);
  Collection function(const Syntax& syntax, const Scope& scope);

  const Collection& focus_;
  const Environment& environment_;
  Budget budget_;
  std::vector<std::pair<std::string, Collection>> defined_;
};

/// Operators of two operands; operator_table.cpp.
Collection applyOperator(Machine& machine, const Syntax& syntax, const Collection& left,
                         const Collection& right);

}  // namespace stile::expression
