// Every answer that was given, for the annex of the summary.
#pragma once

#include <vector>

#include "documents/document.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// What was answered, by the part of the form that asks it and in the form's order; what no form asks
/// comes last. Known answers carry their value, their day when it was another one, and who gave them
/// when it was not the client; refused and unsure ones say so. What was never asked is left out.
std::vector<Row> answerRows(const screening::Screening& screening, const screening::Content& content);

}  // namespace stile::documents
