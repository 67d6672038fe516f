// The purposes of doses.json, sorted by priority.
#pragma once

#include <vector>

#include "json/reader.h"
#include "plan/content_reading.h"
#include "plan/library.h"

namespace stile::plan {

std::vector<Purpose> readPurposes(json::ObjectReader& root, ContentReading& content);

}  // namespace stile::plan
