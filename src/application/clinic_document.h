// What a clinic file says of the clinic itself: its settings, its logo, the content its lead adopted.
//
// They are entries of the one record of kind "clinic"; the newest of each kind counts, and what stood
// before stays. A short form is kept in memory, so reading them leaves no line in the journal.
#pragma once

#include <map>
#include <string>

#include "application/clinic.h"
#include "records/clinic_settings.h"
#include "screening/content.h"

namespace stile::application {

struct ClinicDocument {
  std::string record;          ///< id of the clinic's own record, "" while there is none
  std::string text;            ///< the settings as they were given, JSON, or ""
  records::ClinicSettings settings;
  std::string logoEntry;       ///< entry that holds the logo, or ""
  std::string adoptedContent;  ///< content version that the lead approved, or ""
};

/// Empty while the clinic has said nothing of itself.
ClinicDocument clinicDocument(const Clinic& clinic);

/// Puts settings in the place of those there are. `logoPng`: bytes, "" = no logo; the member "logo" of
/// the settings is then of no account. Assistants may not.
base::Result<bool> saveClinicSettings(Clinic& clinic, const std::string& text, const std::string& file, const std::string& logoPng, base::Date today,
                                      base::Issues& issues);
/// Puts other words into members of the settings that are texts, the paper size among them; "" takes a member away.
/// All else that stands there stays, the logo too.
base::Result<bool> changeClinicSettings(Clinic& clinic, const std::map<std::string, std::string>& members, base::Date today, base::Issues& issues);
/// The logo's bytes; "" when there is none.
base::Result<std::string> clinicLogo(Clinic& clinic);

/// The clinic's lead approves the content in use; signed. Until then, and again after every change of
/// the content, what is screened says that the lead has not approved it.
base::Result<bool> adoptContent(Clinic& clinic, const screening::Content& content, base::Date today);

}  // namespace stile::application
