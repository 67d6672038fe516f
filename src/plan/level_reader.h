// The starting-level table of doses.json.
#pragma once

#include <vector>

#include "json/reader.h"
#include "plan/content_reading.h"
#include "plan/doses.h"

namespace stile::plan {

std::vector<Level> readLevels(json::ObjectReader& root, ContentReading& content);

}  // namespace stile::plan
