// What one user chose for the window, kept for the next start. Nothing personal: look, text size, the
// clinic file last used, the sign-in name.
#pragma once

#include <string>

#include "desktop/look.h"

namespace stile::desktop {

struct Preferences {
  Look look = Look::Light;
  int textPercent = 100;  ///< 100, 115, 130 or 150
  std::string givenFile;  ///< at the start of this run: it comes first, and is not kept
  std::string clinicFile;
  std::string handle;
  std::string papersFolder;  ///< in which each client's papers get a folder; "" = the user's documents
  double lockMinutes = 10;  ///< without a key or a move of the mouse; 3 seconds to an hour
  int width = 1280, height = 800;

  /// From the user's configuration folder; what is missing or odd there has its default.
  static Preferences load();
  void save() const;
};

/// Where a new clinic file is put unless the user says otherwise; the folder is made.
std::string proposedClinicFile();

}  // namespace stile::desktop
