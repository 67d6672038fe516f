// Existence (FHIRPath 2.0.0, 5.1) and logic.
#include <algorithm>
#include <array>

#include "expression/equality.h"
#include "expression/function_table.h"

namespace stile::expression {
namespace {

Equality equalityOf(Call& call) {
  return {call.machine.budget(), call.machine.localZone()};
}

Collection answer(bool value) {
  return {Item::boolean(value)};
}

Collection empty(Call& call) {
  return answer(call.input.empty());
}

Collection notTrue(Call& call) {
  const auto value = call.machine.truth(call.input, call.syntax);
  return value ? answer(!*value) : Collection{};
}

Collection exists(Call& call) {
  if (call.count() == 0) return answer(!call.input.empty());
  for (std::size_t i = 0; i < call.input.size(); ++i) {
    if (call.criterion(0, call.input[i], i) == true) return answer(true);
  }
  return answer(false);
}

Collection all(Call& call) {
  for (std::size_t i = 0; i < call.input.size(); ++i) {
    if (call.criterion(0, call.input[i], i) != true) return answer(false);
  }
  return answer(true);
}

/// Whether some item is `wanted`; all items must be Booleans.
bool hasBoolean(Call& call, bool wanted) {
  bool isFound = false;
  for (const Item& item : call.input) {
    if (!item.isBoolean()) call.fail(call.syntax.text + "() is asked of Booleans only");
    if (item.boolean() == wanted) isFound = true;
  }
  return isFound;
}

Collection allTrue(Call& call) {
  return answer(!hasBoolean(call, false));
}
Collection anyTrue(Call& call) {
  return answer(hasBoolean(call, true));
}
Collection allFalse(Call& call) {
  return answer(!hasBoolean(call, true));
}
Collection anyFalse(Call& call) {
  return answer(hasBoolean(call, false));
}

bool areAllIn(Call& call, const Collection& some, const Collection& all_) {
  Equality equality = equalityOf(call);
  return std::all_of(some.begin(), some.end(),
                     [&](const Item& item) { return equality.contains(all_, item); });
}

Collection subsetOf(Call& call) {
  return answer(areAllIn(call, call.input, call.argument(0)));
}
Collection supersetOf(Call& call) {
  return answer(areAllIn(call, call.argument(0), call.input));
}

Collection count(Call& call) {
  return {Item::integer(static_cast<long long>(call.input.size()))};
}

Collection distinct(Call& call) {
  return equalityOf(call).distinct(call.input);
}

Collection isDistinct(Call& call) {
  return answer(equalityOf(call).distinct(call.input).size() == call.input.size());
}

constexpr std::array<FunctionEntry, 13> kExistenceFunctions{{{"empty", 0, 0, empty},
                                                    {"not", 0, 0, notTrue},
                                                    {"exists", 0, 1, exists},
                                                    {"all", 1, 1, all},
                                                    {"allTrue", 0, 0, allTrue},
                                                    {"anyTrue", 0, 0, anyTrue},
                                                    {"allFalse", 0, 0, allFalse},
                                                    {"anyFalse", 0, 0, anyFalse},
                                                    {"subsetOf", 1, 1, subsetOf},
                                                    {"supersetOf", 1, 1, supersetOf},
                                                    {"count", 0, 0, count},
                                                    {"distinct", 0, 0, distinct},
                                                    {"isDistinct", 0, 0, isDistinct}}};

}  // namespace

std::span<const FunctionEntry> existenceFunctions() {
  return kExistenceFunctions;
}

}  // namespace stile::expression
