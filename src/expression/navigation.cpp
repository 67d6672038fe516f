#include "expression/navigation.h"

#include <algorithm>

namespace stile::expression {
namespace {

using json::Node;

/// A value without an owner: it lives in the document.
SharedText sharedText(Node node) {
  return SharedText(std::shared_ptr<void>(), &node.string());
}

ItemValue textValue(Node node, const ModelType* type) {
  const std::string& text = node.string();
  std::optional<Temporal> temporal;
  const std::string_view name = type ? std::string_view(type->name) : std::string_view();
  if (name == "date") temporal = Temporal::parseDate(text);
  if (name == "dateTime" || name == "instant") temporal = Temporal::parseDateTime(text);
  if (name == "time") temporal = Temporal::parseTime(text);
  // What is no date stays a text: a check of the resource is somebody else's business.
  if (temporal) return *temporal;
  return sharedText(node);
}

ItemValue numberValue(Node node, const ModelType* type) {
  const std::string& text = node.numberText();
  const bool isWhole = text.find_first_of(".eE") == std::string::npos;
  const bool isDecimalType = type && type->name == "decimal";
  if (isWhole && !isDecimalType) {
    if (const auto whole = node.integer()) return *whole;
  }
  if (const auto decimal = Decimal::parse(text)) return *decimal;
  return {};
}

const ModelType* typeOf(Node node, const TypeModel& model, const ModelType* declared) {
  // A resource says itself what it is; the element that holds it only says Resource.
  if (const auto name = node.find("resourceType")) {
    if (name->isString()) {
      const ModelType* type = model.find(name->string());
      if (type && type->isResource) return type;
    }
  }
  return declared;
}

Item itemOf(std::optional<Node> node, std::optional<Node> extras, const TypeModel& model,
            const ModelType* declared) {
  Item item;
  // An id is a System.String, although it stands in the resource.
  item.isElement = !declared || !declared->isSystem;
  if (item.isElement) item.type = declared;
  if (extras && extras->isObject()) item.extras = extras;
  if (!node || node->isNull()) return item;
  item.node = node;
  switch (node->kind()) {
    case json::Kind::Boolean:
      item.value = node->boolean();
      break;
    case json::Kind::Number:
      item.value = numberValue(*node, declared);
      break;
    case json::Kind::String:
      item.value = textValue(*node, declared);
      break;
    case json::Kind::Object:
      item.type = typeOf(*node, model, declared);
      break;
    case json::Kind::Array:
    case json::Kind::Null:
      break;
  }
  return item;
}

void append(std::optional<Node> node, std::optional<Node> extras, const TypeModel& model,
            const ModelType* type, Collection& into) {
  const bool isList = (node && node->isArray()) || (!node && extras && extras->isArray());
  if (!isList) {
    if ((node && !node->isNull()) || (extras && extras->isObject())) {
      into.push_back(itemOf(node, extras, model, type));
    }
    return;
  }
  const std::size_t values = node && node->isArray() ? node->size() : 0;
  const std::size_t others = extras && extras->isArray() ? extras->size() : 0;
  for (std::size_t i = 0; i < std::max(values, others); ++i) {
    const auto value = i < values ? std::optional(node->at(i)) : std::nullopt;
    const auto other = i < others ? std::optional(extras->at(i)) : std::nullopt;
    const bool hasValue = value && !value->isNull();
    if (hasValue || (other && other->isObject())) into.push_back(itemOf(value, other, model, type));
  }
}

void appendNamed(Node object, const std::string& key, const TypeModel& model, const ModelType* type,
                 Collection& into) {
  append(object.find(key), object.find("_" + key), model, type, into);
}

/// The object in which an item's members stand.
std::optional<Node> objectOf(const Item& item) {
  if (item.node && item.node->isObject()) return item.node;
  if (item.extras) return item.extras;
  return std::nullopt;
}

void appendTypeNameMember(const TypeName& type, std::string_view name, Collection& into) {
  if (name == "namespace") into.push_back(Item::text(type.space));
  if (name == "name") into.push_back(Item::text(type.name));
}

/// The type whose name stands behind `element`'s in a JSON member; null when it is none of its own.
const ModelType* choiceOf(const ModelElement& element, std::string_view key) {
  if (!key.starts_with(element.name) || key.size() == element.name.size()) return nullptr;
  for (const ModelType* type : element.types) {
    if (key.substr(element.name.size()) == type->capitalised) return type;
  }
  return nullptr;
}

/// Goes by the members that are there: an open choice has more than sixty types.
void appendChoice(Node object, const ModelElement& element, const TypeModel& model, Collection& into) {
  for (std::size_t i = 0; i < object.size(); ++i) {
    std::string_view key = object.keyAt(i);
    if (key.starts_with('_')) {
      key.remove_prefix(1);
      if (object.find(key)) continue;
    }
    if (const ModelType* type = choiceOf(element, key))
      appendNamed(object, std::string(key), model, type, into);
  }
}

/// The element a JSON member stands for; its type, chosen where there is a choice, into `type`.
const ModelElement* elementOfKey(const ModelType& owner, const std::string& key, const ModelType*& type) {
  if (const ModelElement* element = owner.element(key); element && !element->isChoice) {
    type = element->types.front();
    return element;
  }
  for (const ModelType* level = &owner; level; level = level->base) {
    for (const ModelElement& element : level->elements) {
      if (!element.isChoice) continue;
      type = choiceOf(element, key);
      if (type) return &element;
    }
  }
  return nullptr;
}

}  // namespace

void appendMember(const Item& item, std::string_view name, const TypeModel& model, Collection& into) {
  if (const auto* type = std::get_if<std::shared_ptr<const TypeName>>(&item.value)) {
    return appendTypeNameMember(**type, name, into);
  }
  const auto object = objectOf(item);
  if (!object || name == "resourceType") return;
  const ModelElement* element = item.type ? item.type->element(name) : nullptr;
  if (element && element->isChoice) return appendChoice(*object, *element, model, into);
  if (item.type && !element) {
    // A typed choice (`valueQuantity`) is no element of the model (R4, "Using FHIR types").
    const ModelType* type = nullptr;
    if (elementOfKey(*item.type, std::string(name), type)) return;
  }
  appendNamed(*object, std::string(name), model, element ? element->types.front() : nullptr, into);
}

void appendChildren(const Item& item, const TypeModel& model, Collection& into) {
  const auto object = objectOf(item);
  if (!object) return;
  for (std::size_t i = 0; i < object->size(); ++i) {
    std::string key = object->keyAt(i);
    if (key == "resourceType") continue;
    if (key.starts_with('_')) {
      // Read together with its value; on its own only where there is no value.
      if (object->find(std::string_view(key).substr(1))) continue;
      key.erase(0, 1);
    }
    const ModelType* type = nullptr;
    if (item.type) elementOfKey(*item.type, key, type);
    appendNamed(*object, key, model, type, into);
  }
}

bool isUnknownMember(const Item& item, std::string_view name) {
  return item.type && !item.type->element(name);
}

Collection itemsOf(Node node, const TypeModel& model, const ModelType* type) {
  Collection items;
  append(node, std::nullopt, model, type, items);
  return items;
}

}  // namespace stile::expression
