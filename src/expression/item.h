// What the full evaluator computes with: collections of items, each with its type.
//
// An item is either a value of FHIRPath's own types, or an element of a resource, which keeps its
// place in the JSON document. An element that is a primitive carries its value as well.
// Items of a resource live as long as the json::Document they were read from.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "expression/decimal.h"
#include "expression/quantity.h"
#include "expression/temporal.h"
#include "expression/type_model.h"
#include "json/document.h"

namespace stile::expression {

/// What type() gives.
struct TypeName {
  std::string space;  ///< System or FHIR
  std::string name;
};

using SharedText = std::shared_ptr<const std::string>;
/// Nothing stands for an element without a value of its own: an object, or extensions only.
using ItemValue = std::variant<std::monostate, bool, long long, Decimal, SharedText, Temporal,
                               std::shared_ptr<const Quantity>, std::shared_ptr<const TypeName>>;

/// One element of a collection. `isElement` tells elements of a resource from values that were
/// written or computed. Only elements have `extras` or a `type`; a `node` tells where a value stands.
struct Item {
  ItemValue value;
  std::optional<json::Node> node;    ///< the JSON value; absent when there are extensions only
  std::optional<json::Node> extras;  ///< the value of the `_name` member beside a primitive
  const ModelType* type = nullptr;   ///< null: not known to the model
  bool isElement = false;

  static Item boolean(bool value) { return {value, {}, {}, nullptr, false}; }
  static Item integer(long long value) { return {value, {}, {}, nullptr, false}; }
  static Item decimal(Decimal value) { return {value, {}, {}, nullptr, false}; }
  static Item text(std::string value);
  static Item temporal(Temporal value) { return {value, {}, {}, nullptr, false}; }
  static Item quantity(Quantity value);

  bool isBoolean() const { return std::holds_alternative<bool>(value); }
  bool isInteger() const { return std::holds_alternative<long long>(value); }
  bool isDecimal() const { return std::holds_alternative<Decimal>(value); }
  bool isNumber() const { return isInteger() || isDecimal(); }
  bool isText() const { return std::holds_alternative<SharedText>(value); }
  bool isTemporal() const { return std::holds_alternative<Temporal>(value); }

  bool boolean() const { return std::get<bool>(value); }
  long long integer() const { return std::get<long long>(value); }
  const std::string& text() const { return *std::get<SharedText>(value); }
  const Temporal& temporal() const { return std::get<Temporal>(value); }
  /// An Integer counts as a Decimal; nullopt for what is no number.
  std::optional<Decimal> number() const;
  /// A Quantity, or a Quantity element of a resource; nullopt for all else, numbers included.
  std::optional<Quantity> quantity() const;

  /// System type of a value, FHIR type of an element, empty name when not known.
  TypeName typeName() const;
  /// The value as text as toString() gives it; nullopt for objects.
  std::optional<std::string> toText() const;
};

using Collection = std::vector<Item>;

/// One decimal, or nothing.
inline Collection decimalOr(const std::optional<Decimal>& value) {
  return value ? Collection{Item::decimal(*value)} : Collection{};
}

/// The items of a JSON value: the elements of an array, else the value itself. `type` is its type
/// in the model; null for a resource, whose type is looked up by `resourceType`, and for anything
/// else that is not known.
Collection itemsOf(json::Node node, const TypeModel& model, const ModelType* type = nullptr);

}  // namespace stile::expression
