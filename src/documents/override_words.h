// What a clinician decided in place of a computed line, in words.
#pragma once

#include <string>

#include "records/decision_notes.h"

namespace stile::documents {

/// "Set by I. Calloway on 25 November 2026: light strength. Why: …", and the second signature where
/// one is wanted.
std::string overrideWords(const records::OverrideNote& note);

}  // namespace stile::documents
