// The limits an item sets to its answers, and the values it starts with. For src/questionnaire only.
#pragma once

#include "json/reader.h"
#include "questionnaire/extension.h"
#include "questionnaire/item.h"

namespace stile::questionnaire {

/// minValue … maxQuantity, lengths, decimals, occurrences, regex, attachments and references. Reads
/// the units before it.
void readLimits(json::ObjectReader& reader, Extensions& extensions, Item& item, base::Issues& issues);

/// initial[x]; the standard's rules que-8 and que-13.
void readInitial(json::ObjectReader& reader, Item& item, base::Issues& issues);

}  // namespace stile::questionnaire
