// The client handout: what to do, how much, what to leave out, when to stop. In plain words.
//
// It goes out only with a plan that was made. It never says of a client or an exercise that it is
// cleared, safe or fit.
#pragma once

#include <optional>

#include "documents/document.h"
#include "documents/handout_texts.h"
#include "records/clinic_settings.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// nullopt unless a plan was made.
std::optional<Document> handoutOf(const screening::Screening& screening, const screening::Content& content,
                                  const records::ClinicSettings& settings, const records::PaperClient& client,
                                  const HandoutTexts& texts);

/// Checks, gates and bans of the limits whose words are missing on the handout, each an error.
base::Issues checkHandout(const screening::Screening& screening, const Document& handout,
                          const rules::RuleSet& rules);

}  // namespace stile::documents
