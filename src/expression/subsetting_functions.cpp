// Subsetting (FHIRPath 2.0.0, 5.3).
#include <algorithm>
#include <array>

#include "expression/equality.h"
#include "expression/function_table.h"

namespace stile::expression {
namespace {

Collection part(const Collection& items, std::size_t from, std::size_t to) {
  return {items.begin() + static_cast<std::ptrdiff_t>(std::min(from, items.size())),
          items.begin() + static_cast<std::ptrdiff_t>(std::min(std::max(from, to), items.size()))};
}

Collection single(Call& call) {
  const Item* item = call.single();
  return item ? Collection{*item} : Collection{};
}
Collection first(Call& call) {
  return part(call.input, 0, 1);
}
Collection last(Call& call) {
  return call.input.empty() ? Collection{} : Collection{call.input.back()};
}
Collection tail(Call& call) {
  return part(call.input, 1, call.input.size());
}

std::size_t howMany(Call& call) {
  const auto count = call.integerArgument(0);
  if (!count) return 0;
  return *count <= 0 ? 0 : static_cast<std::size_t>(*count);
}

Collection skip(Call& call) {
  return part(call.input, howMany(call), call.input.size());
}
Collection take(Call& call) {
  return part(call.input, 0, howMany(call));
}

Collection intersect(Call& call) {
  Equality equality(call.machine.budget(), call.machine.localZone());
  const Collection other = call.argument(0);
  Collection result;
  for (const Item& item : call.input) {
    if (equality.contains(other, item) && !equality.contains(result, item)) result.push_back(item);
  }
  return result;
}

Collection exclude(Call& call) {
  Equality equality(call.machine.budget(), call.machine.localZone());
  const Collection other = call.argument(0);
  Collection result;
  std::copy_if(call.input.begin(), call.input.end(), std::back_inserter(result),
               [&](const Item& item) { return !equality.contains(other, item); });
  return result;
}

constexpr std::array<FunctionEntry, 8> kSubsettingFunctions{{{"single", 0, 0, single},
                                                   {"first", 0, 0, first},
                                                   {"last", 0, 0, last},
                                                   {"tail", 0, 0, tail},
                                                   {"skip", 1, 1, skip},
                                                   {"take", 1, 1, take},
                                                   {"intersect", 1, 1, intersect},
                                                   {"exclude", 1, 1, exclude}}};

}  // namespace

std::span<const FunctionEntry> subsettingFunctions() {
  return kSubsettingFunctions;
}

}  // namespace stile::expression
