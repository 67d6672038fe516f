// The build of drawn figures as settings and records write it.
#pragma once

#include <optional>

#include "json/reader.h"
#include "movement/build.h"

namespace stile::records {

/// The member `key`, or nothing where it is left out. A word that is no build is an issue.
std::optional<movement::Build> readBuild(json::ObjectReader& reader, const char* key);

}  // namespace stile::records
