#include "desktop/preferences.h"

#include <wx/fileconf.h>
#include <wx/filename.h>
#include <wx/utils.h>

#include "desktop/text.h"

namespace stile::desktop {
namespace {

/// A desk that stays open for longer with nobody at it is open to anybody.
constexpr double kShortestIdle = 0.05, kLongestIdle = 60;

wxString folderFor(const char* variable, const wxString& otherwise) {
  wxString folder;
  if (!wxGetEnv(variable, &folder) || folder.empty()) folder = wxGetHomeDir() + otherwise;
  folder += "/stile";
  wxFileName::Mkdir(folder, 0700, wxPATH_MKDIR_FULL);
  return folder;
}

wxString file() { return folderFor("XDG_CONFIG_HOME", "/.config") + "/desk.conf"; }

const char* nameOf(Look look) {
  return look == Look::Dark ? "dark" : look == Look::HighContrast ? "contrast" : "light";
}

}  // namespace

Preferences Preferences::load() {
  Preferences chosen;
  wxFileConfig config(wxEmptyString, wxEmptyString, file(), wxEmptyString, wxCONFIG_USE_LOCAL_FILE);
  const wxString look = config.Read("look", "light");
  chosen.look = look == "dark" ? Look::Dark : look == "contrast" ? Look::HighContrast : Look::Light;
  const long percent = config.ReadLong("textPercent", 100);
  chosen.textPercent = percent >= 100 && percent <= 150 ? static_cast<int>(percent) : 100;
  chosen.clinicFile = plain(config.Read("clinicFile", ""));
  chosen.handle = plain(config.Read("handle", ""));
  chosen.papersFolder = plain(config.Read("papersFolder", ""));
  const double minutes = config.ReadDouble("lockMinutes", chosen.lockMinutes);
  chosen.lockMinutes = minutes >= kShortestIdle && minutes <= kLongestIdle ? minutes : chosen.lockMinutes;
  chosen.width = static_cast<int>(config.ReadLong("width", chosen.width));
  chosen.height = static_cast<int>(config.ReadLong("height", chosen.height));
  return chosen;
}

void Preferences::save() const {
  wxFileConfig config(wxEmptyString, wxEmptyString, file(), wxEmptyString, wxCONFIG_USE_LOCAL_FILE);
  config.Write("look", nameOf(look));
  config.Write("textPercent", static_cast<long>(textPercent));
  config.Write("clinicFile", shown(clinicFile));
  config.Write("handle", shown(handle));
  config.Write("papersFolder", shown(papersFolder));
  config.Write("lockMinutes", lockMinutes);
  config.Write("width", static_cast<long>(width));
  config.Write("height", static_cast<long>(height));
}

std::string proposedClinicFile() { return plain(folderFor("XDG_DATA_HOME", "/.local/share")) + "/clinic.stile"; }

}  // namespace stile::desktop
