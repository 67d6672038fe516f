// The facts of a screening as JSON: every known fact, and every unknown one that was asked.
#pragma once

#include "facts/fact_set.h"
#include "json/document.h"

namespace stile::exchange {

/// An array, in dictionary order; facts that were never asked are left out (the open questions
/// name those that matter).
void writeFacts(json::Writer& writer, const facts::FactSet& facts);

}  // namespace stile::exchange
