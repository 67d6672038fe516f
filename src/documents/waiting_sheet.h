// The waiting sheet: for a client who cannot start yet. What may go on, when to call for help, who
// will call. It holds nothing of a held plan.
#pragma once

#include <optional>

#include "documents/client_paper.h"
#include "documents/document.h"

namespace stile::documents {

/// nullopt when a plan was made.
std::optional<Document> waitingSheetOf(const ClientRequest& request);

}  // namespace stile::documents
