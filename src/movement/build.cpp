#include "movement/build.h"

namespace stile::movement {

const char* idOf(Build build) {
  return build == Build::Slight ? "slight" : "sturdy";
}

std::optional<Build> buildOf(std::string_view id) {
  for (const Build build : {Build::Slight, Build::Sturdy})
    if (id == idOf(build)) return build;
  return std::nullopt;
}

}  // namespace stile::movement
