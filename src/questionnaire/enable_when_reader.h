// The conditions of one item, read from JSON. For src/questionnaire only.
#pragma once

#include "json/reader.h"
#include "questionnaire/form.h"

namespace stile::questionnaire {

/// Reads `enableWhen` and `enableBehavior` of the item's object into `item`.
void readEnableWhen(json::ObjectReader& reader, Item& item, base::Issues& issues);

}  // namespace stile::questionnaire
