#include "json/reader.h"

#include <vector>

#include "base/near_names.h"

namespace stile::json {
namespace {

std::string_view kindName(Kind kind) {
  switch (kind) {
    case Kind::Null:
      return "null";
    case Kind::Boolean:
      return "true or false";
    case Kind::Number:
      return "a number";
    case Kind::String:
      return "a string";
    case Kind::Array:
      return "an array";
    case Kind::Object:
      return "an object";
  }
  return "";
}

std::string quoted(std::string_view key) {
  return "\"" + std::string(key) + "\"";
}

template <class Keys>
std::string remedyForUnknown(std::string_view key, const Keys& known) {
  std::string list;
  std::vector<std::string> names;
  for (const std::string& name : known) {
    list += (list.empty() ? "" : ", ") + name;
    // "_name" holds the extensions of "name": beside it, it is no other guess.
    if (name.starts_with('_') == key.starts_with('_')) names.push_back(name);
  }
  return base::didYouMean(key, names, list.empty() ? "remove it" : "remove it; the members known here are " + list);
}

std::string wrongKind(std::string_view key, std::string_view expected, Node found) {
  return quoted(key) + " must be " + std::string(expected) + ", not " + std::string(kindName(found.kind()));
}

}  // namespace

ObjectReader::ObjectReader(Node node, std::string subject, base::Issues& issues)
    : node_(node), subject_(std::move(subject)), issues_(issues), isObject_(node.isObject()) {
  if (!isObject_) {
    issue(node_, "this must be an object, not " + std::string(kindName(node_.kind())),
          "write it between { and }");
  }
}

std::optional<Node> ObjectReader::find(std::string_view key) {
  asked_.emplace(key);
  return node_.find(key);
}

std::optional<Node> ObjectReader::require(std::string_view key) {
  const auto found = find(key);
  if (!found && isObject_) issue(node_, "the member " + quoted(key) + " is missing", "add it");
  return found;
}

std::string ObjectReader::requireString(std::string_view key) {
  return require(key) ? string(key) : std::string();
}

std::string ObjectReader::string(std::string_view key, std::string otherwise) {
  const auto found = find(key);
  if (!found) return otherwise;
  if (found->isString()) return found->string();
  issue(*found, wrongKind(key, "a string", *found), "put it between double quotes");
  return otherwise;
}

std::optional<bool> ObjectReader::boolean(std::string_view key) {
  const auto found = find(key);
  if (!found) return std::nullopt;
  if (found->isBoolean()) return found->boolean();
  issue(*found, wrongKind(key, "true or false", *found), "write true or false without quotes");
  return std::nullopt;
}

std::optional<long long> ObjectReader::integer(std::string_view key) {
  const auto found = find(key);
  if (!found) return std::nullopt;
  if (!found->isNumber()) {
    issue(*found, wrongKind(key, "a whole number", *found), "write it as digits without quotes");
    return std::nullopt;
  }
  const auto value = found->integer();
  if (!value) issue(*found, quoted(key) + " must be a whole number", "remove the decimals or shorten it");
  return value;
}

std::optional<base::Rational> ObjectReader::number(std::string_view key) {
  const auto found = find(key);
  if (!found) return std::nullopt;
  if (found->isNumber()) return found->number();
  issue(*found, wrongKind(key, "a number", *found), "write it as digits without quotes");
  return std::nullopt;
}

std::vector<std::string> ObjectReader::strings(std::string_view key) {
  std::vector<std::string> result;
  for (const Node& element : array(key)) {
    if (element.isString()) {
      result.push_back(element.string());
    } else {
      issue(element, quoted(key) + " must hold strings only, not " + std::string(kindName(element.kind())),
            "put it between double quotes");
    }
  }
  return result;
}

std::vector<Node> ObjectReader::array(std::string_view key) {
  std::vector<Node> result;
  const auto found = find(key);
  if (!found) return result;
  if (!found->isArray()) {
    issue(*found, wrongKind(key, "an array", *found), "write it between [ and ]");
    return result;
  }
  result.reserve(found->size());
  for (std::size_t i = 0; i < found->size(); ++i) result.push_back(found->at(i));
  return result;
}

void ObjectReader::issue(Node at, std::string message, std::string remedy) {
  issues_.error(at.place(), subject_, std::move(message), std::move(remedy));
}

void ObjectReader::finish() {
  if (!isObject_) return;
  for (std::size_t i = 0; i < node_.size(); ++i) {
    const std::string& key = node_.keyAt(i);
    if (asked_.contains(key)) continue;
    issues_.error(node_.keyPlaceAt(i), subject_, "the member " + quoted(key) + " is not known here",
                  remedyForUnknown(key, asked_));
  }
}

}  // namespace stile::json
