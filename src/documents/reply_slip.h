// The part of a letter that comes back.
#pragma once

#include "documents/document.h"
#include "documents/letter.h"

namespace stile::documents {

/// The questions of the form clearance-reply in its own words, one line for each finding.
Section replySlipOf(const LetterRequest& request, const std::vector<std::size_t>& toClear);

/// A place for a result or an opinion, for services that give no clearance.
Section opinionSlipOf(const LetterRequest& request);

}  // namespace stile::documents
