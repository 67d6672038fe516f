// The screening summary for the clinician: what was decided and why on one or two pages, and behind it
// an annex with everything it rests on.
#pragma once

#include "base/issue.h"
#include "documents/document.h"
#include "records/clinic_settings.h"
#include "records/decision_notes.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// The heading of the part that starts on a page of its own.
inline constexpr const char* kAnnexHeading = "Annex: everything this summary rests on";

/// The whole screening on paper. `askedBack`: issues of the input that a person should confirm.
/// `notes`: what clinicians decided otherwise, and who signed.
Document summaryOf(const screening::Screening& screening, const screening::Content& content,
                   const records::ClinicSettings& settings, const records::PaperClient& client,
                   const base::Issues& askedBack, const records::DecisionNotes& notes = {});

}  // namespace stile::documents
