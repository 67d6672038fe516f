// Combining (FHIRPath 2.0.0, 5.4), coalesce() and defineVariable().
#include <array>

#include "expression/equality.h"
#include "expression/function_table.h"

namespace stile::expression {
namespace {

Collection joined(Call& call) {
  Collection all = call.input;
  const Collection other = call.argument(0);
  all.insert(all.end(), other.begin(), other.end());
  return all;
}

Collection unite(Call& call) {
  return Equality(call.machine.budget(), call.machine.localZone()).distinct(joined(call));
}

Collection combine(Call& call) {
  if (call.count() > 1) call.booleanArgument(1);  // preserveOrder: the order is kept anyway
  return joined(call);
}

Collection coalesce(Call& call) {
  for (std::size_t i = 0; i < call.count(); ++i) {
    Collection value = call.argument(i);
    if (!value.empty()) return value;
  }
  return {};
}

Collection defineVariable(Call& call) {
  const auto name = call.textArgument(0);
  if (!name) call.fail("defineVariable() needs a name");
  Collection value = call.input;
  if (call.count() > 1) {
    const Scope inner{&call.input, call.scope.index, call.scope.total};
    value = call.machine.evaluateApart(call.at(1), inner);
  }
  call.machine.define(call.syntax, *name, std::move(value));
  return call.input;
}

constexpr std::array<FunctionEntry, 4> kCombiningFunctions{{{"union", 1, 1, unite},
                                                   {"combine", 1, 2, combine},
                                                   {"coalesce", 1, 16, coalesce},
                                                   {"defineVariable", 1, 2, defineVariable}}};

}  // namespace

std::span<const FunctionEntry> combiningFunctions() {
  return kCombiningFunctions;
}

}  // namespace stile::expression
