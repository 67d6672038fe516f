// The client handout: what to do, how much, what to leave out, when to stop. In plain words.
//
// It goes out only with a plan that was made. It never says of a client or an exercise that it is
// cleared, safe or fit.
#pragma once

#include <optional>

#include "base/issue.h"
#include "documents/client_paper.h"
#include "documents/document.h"

namespace stile::documents {

/// nullopt unless a plan was made.
std::optional<Document> handoutOf(const ClientRequest& request);

/// Checks, gates and bans of the limits whose words are missing on the handout, each an error.
base::Issues checkHandout(const screening::Screening& screening, const Document& handout,
                          const rules::RuleSet& rules);

}  // namespace stile::documents
