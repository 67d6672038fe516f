#include "json/reader.h"

#include <algorithm>
#include <numeric>

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

/// Levenshtein distance: how many letters to change, add or drop.
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, changed});
    }
  }
  return row[b.size()];
}

template <class Keys>
std::string remedyForUnknown(std::string_view key, const Keys& known) {
  constexpr std::size_t kLongestCompared = 60;
  const std::string* nearest = nullptr;
  std::size_t best = std::max<std::size_t>(2, key.size() / 3) + 1;
  std::string list;
  for (const std::string& name : known) {
    list += (list.empty() ? "" : ", ") + name;
    const std::size_t apart = key.size() > kLongestCompared ? best : distance(key, name);
    if (apart < best) {
      best = apart;
      nearest = &name;
    }
  }
  if (nearest) return "did you mean " + quoted(*nearest) + "?";
  if (list.empty()) return "remove it";
  return "remove it; the members known here are " + list;
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
