// The waiting sheet: for a client who cannot start yet. What may go on, when to call for help, who
// will call. It holds nothing of a held plan.
#pragma once

#include <optional>

#include "documents/document.h"
#include "documents/handout_texts.h"
#include "records/clinic_settings.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// nullopt when a plan was made.
std::optional<Document> waitingSheetOf(const screening::Screening& screening,
                                       const screening::Content& content,
                                       const records::ClinicSettings& settings,
                                       const records::PaperClient& client, const HandoutTexts& texts);

}  // namespace stile::documents
