// What stands on every paper: clinic, client, date, content version, caution.
#pragma once

#include <string>

#include "documents/document.h"
#include "records/clinic_settings.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// A paper with its head and foot; sections are added by its maker. The foot says so when rules of
/// the content have not been reviewed by a licensed clinician.
Document startPaper(const std::string& title, Reader reader, const screening::Screening& screening,
                    const screening::Content& content, const records::ClinicSettings& settings,
                    const records::PaperClient& client);

/// The same for a paper that no screening stands behind.
Document startPaper(const std::string& title, Reader reader, base::Date date, const screening::Content& content,
                    const records::ClinicSettings& settings, const records::PaperClient& client);

/// A telephone number that stays on one line: its spaces are no-break spaces.
std::string unbroken(const std::string& number);

/// "Ines Calloway, physiotherapist, Tarnside Movement Clinic"; "" when the settings name neither.
std::string clinicianAndClinic(const records::ClinicSettings& settings);

/// A date of birth in English words; what is no whole date stays as it is.
std::string bornWords(const std::string& born);

/// A name as it may stand in any line: one written from the right does not turn what follows it.
std::string isolated(const std::string& name);

/// True unless every rule was reviewed by a licensed clinician.
bool hasUnreviewedRules(const screening::Content& content);

}  // namespace stile::documents
