// aggregate() (FHIRPath 2.0.0, 7) and sum(), min(), max(), avg() (3.0.0, trial use).
#include <array>

#include "expression/equality.h"
#include "expression/function_table.h"

namespace stile::expression {
namespace {

Collection aggregate(Call& call) {
  Collection total = call.count() > 1 ? call.argument(1) : Collection{};
  for (std::size_t i = 0; i < call.input.size(); ++i) {
    total = call.onItem(0, call.input[i], i, &total);
  }
  return total;
}

/// An operator between two items, as the expression `a + b` would have it.
Collection applied(Call& call, const char* text, const Item& a, const Item& b) {
  Syntax syntax;
  syntax.kind = SyntaxKind::Binary;
  syntax.text = text;
  syntax.offset = call.syntax.offset;
  syntax.length = call.syntax.length;
  try {
    return applyOperator(call.machine, syntax, {a}, {b});
  } catch (EvaluationError& error) {
    // The node above dies with this function.
    error.at = &call.syntax;
    throw;
  }
}

Collection sum(Call& call) {
  if (call.input.empty()) return {};
  for (const Item& item : call.input) {
    if (!item.number() && !item.quantity())
      call.fail(call.syntax.text + "() is asked of numbers and quantities only");
  }
  Collection total{call.input.front()};
  for (std::size_t i = 1; i < call.input.size() && !total.empty(); ++i) {
    call.machine.budget().step();
    total = applied(call, "+", total.front(), call.input[i]);
  }
  return total;
}

Collection extreme(Call& call, bool isLargest) {
  if (call.input.empty()) return {};
  const Item* best = &call.input.front();
  for (const Item& item : call.input) {
    call.machine.budget().compare(item.isText() ? item.text().size() : 1);
    const Ordering ordering = orderOf(item, *best, call.machine.localZone());
    if (!ordering.isComparable) call.fail("items of these types have no order");
    if (!ordering.order) return {};
    if (isLargest ? std::is_gt(*ordering.order) : std::is_lt(*ordering.order)) best = &item;
  }
  return {*best};
}

Collection min(Call& call) {
  return extreme(call, false);
}
Collection max(Call& call) {
  return extreme(call, true);
}

Collection avg(Call& call) {
  const Collection total = sum(call);
  if (total.empty()) return {};
  return applied(call, "/", total.front(), Item::integer(static_cast<long long>(call.input.size())));
}

constexpr std::array<FunctionEntry, 5> kAggregateFunctions{{{"aggregate", 1, 2, aggregate},
                                                   {"sum", 0, 0, sum},
                                                   {"min", 0, 0, min},
                                                   {"max", 0, 0, max},
                                                   {"avg", 0, 0, avg}}};

}  // namespace

std::span<const FunctionEntry> aggregateFunctions() {
  return kAggregateFunctions;
}

}  // namespace stile::expression
