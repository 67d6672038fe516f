// Filtering and projection (FHIRPath 2.0.0, 5.2), iif() and sort().
#include <algorithm>
#include <array>
#include <numeric>

#include "expression/equality.h"
#include "expression/function_table.h"

namespace stile::expression {
namespace {

Collection where(Call& call) {
  Collection result;
  for (std::size_t i = 0; i < call.input.size(); ++i) {
    if (call.criterion(0, call.input[i], i) == true) result.push_back(call.input[i]);
  }
  return result;
}

Collection select(Call& call) {
  Collection result;
  for (std::size_t i = 0; i < call.input.size(); ++i) {
    Collection part = call.onItem(0, call.input[i], i);
    result.insert(result.end(), std::make_move_iterator(part.begin()), std::make_move_iterator(part.end()));
    call.machine.budget().items(result.size());
  }
  return result;
}

/// Projects what it found again and again. With `isDistinct` an item equal to one found before is
/// left out, so that it ends where the items repeat; otherwise only a limit ends it.
Collection repeated(Call& call, bool isDistinct) {
  Equality equality(call.machine.budget(), call.machine.localZone());
  Collection found;
  Collection open = call.input;
  while (!open.empty()) {
    Collection next;
    for (std::size_t i = 0; i < open.size(); ++i) {
      for (Item& item : call.onItem(0, open[i], i)) {
        if (isDistinct && equality.contains(found, item)) continue;
        found.push_back(item);
        next.push_back(std::move(item));
        call.machine.budget().items(found.size());
      }
    }
    open = std::move(next);
  }
  return found;
}

Collection repeat(Call& call) {
  return repeated(call, true);
}
Collection repeatAll(Call& call) {
  return repeated(call, false);
}

Collection iif(Call& call) {
  const Item* item = call.single();
  const Collection self = item ? Collection{*item} : Collection{};
  // Without a focus $this stays what it is outside.
  const bool hasFocus = call.syntax.children.front() != nullptr;
  const Scope inner{&self, hasFocus ? std::optional<long long>(0) : call.scope.index, call.scope.total};
  const Scope& scope = hasFocus ? inner : call.scope;
  const Collection criterion = call.machine.evaluateApart(call.at(0), scope);
  const bool isTrue = call.machine.truth(criterion, call.at(0)) == true;
  if (isTrue) return call.machine.evaluateApart(call.at(1), scope);
  return call.count() > 2 ? call.machine.evaluateApart(call.at(2), scope) : Collection{};
}

/// A key of sort(): `-` before it turns the order round. The syntax below the sign is the key.
struct SortKey {
  const Syntax* syntax;
  bool isDescending;
};

std::vector<SortKey> sortKeys(const Call& call) {
  std::vector<SortKey> keys;
  for (std::size_t i = 0; i < call.count(); ++i) {
    const Syntax& syntax = call.at(i);
    const bool isDescending = syntax.kind == SyntaxKind::Unary && syntax.text == "-";
    keys.push_back({isDescending ? syntax.children.front().get() : &syntax, isDescending});
  }
  return keys;
}

/// Less than zero when `a` comes first. Empty comes before everything.
int orderOfKeys(Call& call, const Collection& a, const Collection& b, const Syntax& at) {
  const Item* left = call.machine.single(a, at);
  const Item* right = call.machine.single(b, at);
  if (!left || !right) return (left ? 1 : 0) - (right ? 1 : 0);
  call.machine.budget().compare(left->isText() ? left->text().size() : 1);
  const Ordering ordering = orderOf(*left, *right, call.machine.localZone());
  if (!ordering.isComparable) call.machine.fail(at, "items of these types have no order");
  if (!ordering.order) call.machine.fail(at, "the order of two of these items is undecided");
  return std::is_lt(*ordering.order) ? -1 : std::is_gt(*ordering.order) ? 1 : 0;
}

Collection sort(Call& call) {
  const std::vector<SortKey> keys = sortKeys(call);
  std::vector<std::vector<Collection>> values(call.input.size());
  for (std::size_t i = 0; i < call.input.size(); ++i) {
    const Collection self{call.input[i]};
    if (keys.empty()) values[i].push_back(self);
    for (const SortKey& key : keys) {
      values[i].push_back(
          call.machine.evaluateApart(*key.syntax, {&self, static_cast<long long>(i), call.scope.total}));
    }
  }
  std::vector<std::size_t> order(call.input.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  // Merging by hand instead of std::stable_sort: an error may be thrown out of a comparison.
  const auto isBefore = [&](std::size_t a, std::size_t b) {
    for (std::size_t k = 0; k < values[a].size(); ++k) {
      const int result =
          orderOfKeys(call, values[a][k], values[b][k], keys.empty() ? call.syntax : *keys[k].syntax);
      if (result != 0) return keys.empty() || !keys[k].isDescending ? result < 0 : result > 0;
    }
    return false;
  };
  for (std::size_t width = 1; width < order.size(); width *= 2) {
    std::vector<std::size_t> merged;
    for (std::size_t start = 0; start < order.size(); start += 2 * width) {
      std::size_t left = start;
      const std::size_t middle = std::min(start + width, order.size());
      std::size_t right = middle;
      const std::size_t end = std::min(start + 2 * width, order.size());
      while (left < middle || right < end) {
        const bool takeRight = left == middle || (right < end && isBefore(order[right], order[left]));
        merged.push_back(order[takeRight ? right++ : left++]);
      }
    }
    order = std::move(merged);
  }
  Collection result;
  for (const std::size_t i : order) result.push_back(call.input[i]);
  return result;
}

constexpr std::array<FunctionEntry, 6> kFilteringFunctions{{{"where", 1, 1, where},
                                                   {"select", 1, 1, select},
                                                   {"repeat", 1, 1, repeat},
                                                   {"repeatAll", 1, 1, repeatAll},
                                                   {"iif", 2, 3, iif},
                                                   {"sort", 0, 8, sort}}};

}  // namespace

std::span<const FunctionEntry> filteringFunctions() {
  return kFilteringFunctions;
}

}  // namespace stile::expression
