// Tree navigation (FHIRPath 2.0.0, 5.8) and trace() (5.9).
#include <array>

#include "expression/function_table.h"
#include "expression/navigation.h"

namespace stile::expression {
namespace {

Collection childrenOf(Call& call, const Collection& items) {
  Collection result;
  for (const Item& item : items) {
    call.machine.budget().step();
    appendChildren(item, call.machine.model(), result);
    call.machine.budget().items(result.size());
  }
  return result;
}

Collection children(Call& call) {
  return childrenOf(call, call.input);
}

Collection descendants(Call& call) {
  Collection all;
  Collection level = childrenOf(call, call.input);
  // A document is at most json::kMaxDepth deep, so this ends.
  while (!level.empty()) {
    all.insert(all.end(), level.begin(), level.end());
    call.machine.budget().items(all.size());
    level = childrenOf(call, level);
  }
  return all;
}

Collection trace(Call& call) {
  const auto name = call.textArgument(0);
  Collection told;
  if (call.count() > 1) {
    for (std::size_t i = 0; i < call.input.size(); ++i) {
      const Collection part = call.onItem(1, call.input[i], i);
      told.insert(told.end(), part.begin(), part.end());
      call.machine.budget().items(told.size());
    }
  } else {
    told = call.input;
  }
  if (call.machine.environment().traces) {
    call.machine.environment().traces->push_back({name.value_or(""), std::move(told)});
  }
  return call.input;
}

constexpr std::array<FunctionEntry, 3> kTreeFunctions{
    {{"children", 0, 0, children}, {"descendants", 0, 0, descendants}, {"trace", 1, 2, trace}}};

}  // namespace

std::span<const FunctionEntry> treeFunctions() {
  return kTreeFunctions;
}

}  // namespace stile::expression
