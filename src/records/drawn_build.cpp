#include "records/drawn_build.h"

namespace stile::records {

std::optional<movement::Build> readBuild(json::ObjectReader& reader, const char* key) {
  const auto node = reader.find(key);
  if (!node) return std::nullopt;
  const std::string id = reader.string(key);
  const auto build = movement::buildOf(id);
  if (!build) reader.issue(*node, "figures are not drawn \"" + id + "\"", "write slight or sturdy");
  return build;
}

}  // namespace stile::records
