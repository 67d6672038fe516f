#include "json/node_path.h"

#include <utility>

namespace stile::json {
namespace {

bool isNotAfter(const base::Place& a, const base::Place& b) {
  return std::pair(a.line, a.column) <= std::pair(b.line, b.column);
}

}  // namespace

std::string pathAt(Node root, const base::Place& place) {
  const auto type = root.find("resourceType");
  std::string path = type && type->isString() ? type->string() : "$";
  Node at = root;
  while (at.isObject() || at.isArray()) {
    // The last child that begins at or before the place holds it; children stand in text order.
    std::size_t found = at.size();
    for (std::size_t i = 0; i < at.size(); ++i) {
      if (!isNotAfter(at.isObject() ? at.keyPlaceAt(i) : at.at(i).place(), place)) break;
      found = i;
    }
    if (found == at.size()) break;
    path += at.isObject() ? "." + at.keyAt(found) : "[" + std::to_string(found) + "]";
    at = at.at(found);
  }
  return path;
}

}  // namespace stile::json
