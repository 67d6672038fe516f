#include "expression/equality.h"

#include <algorithm>

#include "expression/letter_case.h"

namespace stile::expression {
namespace {

using json::Node;

bool isSpace(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

/// Lower case, and every white space character as a blank (6.1.2 "String").
std::string normalised(const std::string& text) {
  std::string result = lowerCase(text);
  std::replace_if(result.begin(), result.end(), isSpace, ' ');
  return result;
}

bool areEquivalentNumbers(const Decimal& a, const Decimal& b) {
  const int decimals = std::min(a.decimals(), b.decimals());
  return a.rounded(decimals).value == b.rounded(decimals).value;
}

bool isQuantityLike(const Item& item) {
  return std::holds_alternative<std::shared_ptr<const Quantity>>(item.value) ||
         (std::holds_alternative<std::monostate>(item.value) && item.quantity().has_value());
}

/// A quantity, or a number taken as one (implicit conversion, 5.5).
std::optional<Quantity> asQuantity(const Item& item) {
  if (const auto number = item.number()) return Quantity{*number};
  return item.quantity();
}

std::optional<json::Node> objectOf(const Item& item) {
  return std::holds_alternative<std::monostate>(item.value) && item.node ? item.node : std::nullopt;
}

const TypeName* typeOf(const Item& item) {
  const auto* type = std::get_if<std::shared_ptr<const TypeName>>(&item.value);
  return type ? type->get() : nullptr;
}

}  // namespace

std::optional<bool> Equality::areEqual(const Item& a, const Item& b) {
  budget_.compare();
  if (a.isText() && b.isText()) {
    if (a.text().size() == b.text().size()) budget_.compare(a.text().size());
    return a.text() == b.text();
  }
  if (a.isBoolean() && b.isBoolean()) return a.boolean() == b.boolean();
  if (a.isNumber() && b.isNumber()) return a.number()->value == b.number()->value;
  if (a.isTemporal() && b.isTemporal()) {
    const bool isMixed =
        (a.temporal().kind == TemporalKind::Time) != (b.temporal().kind == TemporalKind::Time);
    if (isMixed) return false;
    const auto order = compare(a.temporal(), b.temporal(), localZone_);
    return order ? std::optional(std::is_eq(*order)) : std::nullopt;
  }
  if (isQuantityLike(a) || isQuantityLike(b)) {
    const auto left = asQuantity(a);
    const auto right = asQuantity(b);
    return left && right ? expression::areEqual(*left, *right) : std::optional(false);
  }
  if (typeOf(a) && typeOf(b))
    return typeOf(a)->space == typeOf(b)->space && typeOf(a)->name == typeOf(b)->name;
  const auto left = objectOf(a);
  const auto right = objectOf(b);
  return left && right && sameJson(*left, *right);
}

std::optional<bool> Equality::areEqual(const Collection& a, const Collection& b) {
  if (a.size() != b.size()) return false;
  std::optional<bool> result = true;
  for (std::size_t i = 0; i < a.size(); ++i) {
    const auto one = areEqual(a[i], b[i]);
    if (one == false) return false;
    if (!one) result = std::nullopt;
  }
  return result;
}

bool Equality::areEquivalent(const Item& a, const Item& b) {
  budget_.compare();
  if (a.isText() && b.isText()) {
    budget_.compare(a.text().size() + b.text().size());
    return normalised(a.text()) == normalised(b.text());
  }
  if (a.isNumber() && b.isNumber()) return areEquivalentNumbers(*a.number(), *b.number());
  if (a.isTemporal() && b.isTemporal()) {
    return expression::areEquivalent(a.temporal(), b.temporal(), localZone_);
  }
  if (isQuantityLike(a) || isQuantityLike(b)) {
    const auto left = asQuantity(a);
    const auto right = asQuantity(b);
    return left && right && expression::areEquivalent(*left, *right);
  }
  const auto left = objectOf(a);
  const auto right = objectOf(b);
  if (left && right) return similarJson(*left, *right);
  return areEqual(a, b) == true;
}

bool Equality::areEquivalent(const Collection& a, const Collection& b) {
  if (a.size() != b.size()) return false;
  std::vector<bool> used(b.size());
  for (const Item& item : a) {
    bool isFound = false;
    for (std::size_t i = 0; i < b.size() && !isFound; ++i) {
      if (used[i] || !areEquivalent(item, b[i])) continue;
      used[i] = true;
      isFound = true;
    }
    if (!isFound) return false;
  }
  return true;
}

bool Equality::contains(const Collection& items, const Item& item) {
  return std::any_of(items.begin(), items.end(),
                     [&](const Item& candidate) { return areEqual(candidate, item) == true; });
}

Collection Equality::distinct(const Collection& items) {
  Collection result;
  for (const Item& item : items) {
    if (!contains(result, item)) result.push_back(item);
  }
  return result;
}

/// Numbers by value, members in any order, elements in order.
bool Equality::sameJson(Node a, Node b) {
  budget_.compare();
  if (a.kind() != b.kind()) return false;
  switch (a.kind()) {
    case json::Kind::Null:
      return true;
    case json::Kind::Boolean:
      return a.boolean() == b.boolean();
    case json::Kind::Number:
      return a.number() == b.number();
    case json::Kind::String:
      budget_.compare(a.string().size());
      return a.string() == b.string();
    case json::Kind::Array:
      if (a.size() != b.size()) return false;
      for (std::size_t i = 0; i < a.size(); ++i) {
        if (!sameJson(a.at(i), b.at(i))) return false;
      }
      return true;
    case json::Kind::Object:
      if (a.size() != b.size()) return false;
      for (std::size_t i = 0; i < a.size(); ++i) {
        const auto other = b.find(a.keyAt(i));
        if (!other || !sameJson(a.at(i), *other)) return false;
      }
      return true;
  }
  return false;
}

/// As `~` asks of the parts of an object: lists in any order, identifiers of elements left out.
bool Equality::similarJson(Node a, Node b) {
  budget_.compare();
  if (a.isString() && b.isString()) {
    budget_.compare(a.string().size() + b.string().size());
    return normalised(a.string()) == normalised(b.string());
  }
  if (a.isNumber() && b.isNumber()) {
    const auto left = Decimal::parse(a.numberText());
    const auto right = Decimal::parse(b.numberText());
    return left && right && areEquivalentNumbers(*left, *right);
  }
  if (a.kind() != b.kind() || a.size() != b.size()) return false;
  if (a.isObject()) {
    for (std::size_t i = 0; i < a.size(); ++i) {
      const auto other = b.find(a.keyAt(i));
      if (!other || !similarJson(a.at(i), *other)) return false;
    }
    return true;
  }
  if (!a.isArray()) return sameJson(a, b);
  std::vector<bool> used(b.size());
  for (std::size_t i = 0; i < a.size(); ++i) {
    bool isFound = false;
    for (std::size_t k = 0; k < b.size() && !isFound; ++k) {
      if (used[k] || !similarJson(a.at(i), b.at(k))) continue;
      used[k] = true;
      isFound = true;
    }
    if (!isFound) return false;
  }
  return true;
}

Ordering orderOf(const Item& a, const Item& b, int localZone) {
  if (a.isText() && b.isText()) {
    // Bytes of UTF-8 stand in the order of their code points.
    const int order = a.text().compare(b.text());
    return {true, order <=> 0};
  }
  if (a.isNumber() && b.isNumber()) return {true, a.number()->value <=> b.number()->value};
  if (a.isTemporal() && b.isTemporal()) {
    const bool isMixed =
        (a.temporal().kind == TemporalKind::Time) != (b.temporal().kind == TemporalKind::Time);
    if (isMixed) return {};
    return {true, compare(a.temporal(), b.temporal(), localZone)};
  }
  if (isQuantityLike(a) || isQuantityLike(b)) {
    const auto left = asQuantity(a);
    const auto right = asQuantity(b);
    if (left && right) return {true, compare(*left, *right)};
  }
  return {};
}

}  // namespace stile::expression
