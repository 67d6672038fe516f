// The answers and units an item offers. For src/questionnaire only.
#pragma once

#include "json/reader.h"
#include "questionnaire/extension.h"
#include "questionnaire/item.h"
#include "questionnaire/value_set.h"

namespace stile::questionnaire {

/// answerOption and answerValueSet; value sets that the form holds become options.
void readOptions(json::ObjectReader& reader, Extensions& extensions, const ContainedValueSets& valueSets,
                 Item& item, base::Issues& issues);

/// questionnaire-unit, unitOption, unitValueSet and unitOpen.
void readUnits(json::ObjectReader& reader, Extensions& extensions, const ContainedValueSets& valueSets,
               Item& item, base::Issues& issues);

}  // namespace stile::questionnaire
