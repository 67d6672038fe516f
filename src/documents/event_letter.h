// The letter about something that happened to a client: a fall, a faint, chest pain.
#pragma once

#include <string>

#include "base/date.h"
#include "documents/document.h"
#include "documents/letter_texts.h"
#include "records/clinic_settings.h"
#include "screening/content.h"

namespace stile::documents {

struct EventLetter {
  base::Date date;
  std::string recipient;  ///< name and place
  std::string text;       ///< as it was drafted
};

/// One page, for the physician.
Document eventLetterOf(const EventLetter& letter, const screening::Content& content, const records::ClinicSettings& settings,
                       const records::PaperClient& client, const LetterTexts& texts);

}  // namespace stile::documents
