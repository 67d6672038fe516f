// The screening summary: what was decided, why, and what is still open, for the clinician.
#pragma once

#include "base/issue.h"
#include "documents/document.h"
#include "records/clinic_settings.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// The whole screening on paper. `askedBack`: issues of the input that a person should confirm.
Document summaryOf(const screening::Screening& screening, const screening::Content& content,
                   const records::ClinicSettings& settings, const records::PaperClient& client,
                   const base::Issues& askedBack);

}  // namespace stile::documents
