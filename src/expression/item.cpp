#include "expression/item.h"

namespace stile::expression {
namespace {

constexpr std::string_view kUcum = "http://unitsofmeasure.org";

std::string memberText(json::Node node, std::string_view name) {
  const auto member = node.find(name);
  return member && member->isString() ? member->string() : std::string();
}

std::optional<Quantity> quantityOf(const Item& item) {
  const bool isQuantity =
      item.node && item.node->isObject() && item.type &&
      (item.type->name == "Quantity" || (item.type->base && item.type->base->name == "Quantity"));
  if (!isQuantity) return std::nullopt;
  const json::Node node = *item.node;
  const auto number = node.find("value");
  // With a comparator the number is only a bound.
  if (!number || !number->isNumber() || node.find("comparator")) return std::nullopt;
  const auto value = Decimal::parse(number->numberText());
  if (!value) return std::nullopt;
  std::string code = memberText(node, "code");
  if (memberText(node, "system") == kUcum && !code.empty())
    return Quantity{*value, std::move(code), false, true};
  std::string unit = memberText(node, "unit");
  if (unit.empty()) unit = std::move(code);
  return unit.empty() ? Quantity{*value} : Quantity{*value, std::move(unit), false, false};
}

struct SystemName {
  std::string operator()(std::monostate) const { return {}; }
  std::string operator()(bool) const { return "Boolean"; }
  std::string operator()(long long) const { return "Integer"; }
  std::string operator()(const Decimal&) const { return "Decimal"; }
  std::string operator()(const SharedText&) const { return "String"; }
  std::string operator()(const Temporal& value) const {
    return value.kind == TemporalKind::Date ? "Date" : value.kind == TemporalKind::Time ? "Time" : "DateTime";
  }
  std::string operator()(const std::shared_ptr<const Quantity>&) const { return "Quantity"; }
  std::string operator()(const std::shared_ptr<const TypeName>&) const { return "TypeInfo"; }
};

}  // namespace

Item Item::text(std::string value) {
  return {std::make_shared<const std::string>(std::move(value)), {}, {}, nullptr, false};
}

Item Item::quantity(Quantity value) {
  return {std::make_shared<const Quantity>(std::move(value)), {}, {}, nullptr, false};
}

std::optional<Decimal> Item::number() const {
  if (const auto* whole = std::get_if<long long>(&value)) return Decimal{*whole, 0};
  if (const auto* decimal = std::get_if<Decimal>(&value)) return *decimal;
  return std::nullopt;
}

std::optional<Quantity> Item::quantity() const {
  if (const auto* known = std::get_if<std::shared_ptr<const Quantity>>(&value)) return **known;
  return quantityOf(*this);
}

TypeName Item::typeName() const {
  if (isElement) return {"FHIR", type ? type->name : ""};
  return {"System", std::visit(SystemName{}, value)};
}

std::optional<std::string> Item::toText() const {
  if (isText()) return text();
  if (isBoolean()) return boolean() ? "true" : "false";
  if (isInteger()) return std::to_string(integer());
  if (isTemporal()) return temporal().toText();
  if (const auto decimal = number()) return decimal->toText();
  if (const auto known = quantity()) return known->toText();
  return std::nullopt;
}

}  // namespace stile::expression
