// Equality, equivalence and order of items (FHIRPath 2.0.0, 6.1 and 6.2). For src/expression only.
#pragma once

#include <compare>
#include <optional>

#include "expression/budget.h"
#include "expression/item.h"

namespace stile::expression {

/// Compares items within one evaluation: counts what it does, and knows the local time zone.
class Equality {
 public:
  Equality(Budget& budget, int localZone) : budget_(budget), localZone_(localZone) {}

  /// `=`; nullopt where it is undecided.
  std::optional<bool> areEqual(const Item& a, const Item& b);
  std::optional<bool> areEqual(const Collection& a, const Collection& b);
  /// `~`.
  bool areEquivalent(const Item& a, const Item& b);
  bool areEquivalent(const Collection& a, const Collection& b);

  /// True when an item equal to this one is among `items`.
  bool contains(const Collection& items, const Item& item);
  /// Each item once, in order.
  Collection distinct(const Collection& items);

 private:
  bool sameJson(json::Node a, json::Node b);
  bool similarJson(json::Node a, json::Node b);

  Budget& budget_;
  int localZone_;
};

/// The order of two items. `isComparable` is false when their types have no common order.
struct Ordering {
  bool isComparable = false;
  std::optional<std::partial_ordering> order;  ///< nullopt: undecided
};
Ordering orderOf(const Item& a, const Item& b, int localZone);

}  // namespace stile::expression
