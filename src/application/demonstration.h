// A clinic to look round in: invented, made afresh from rules/demonstration.json, gone afterwards.
#pragma once

#include <string>

#include "application/clinic.h"
#include "screening/content.h"

namespace stile::application {

struct Demonstration {
  std::string folder;  ///< of its own, holds nothing else
  ClinicAccess access;
};

/// Makes the clinic file with its people, each interviewed as the file says, on days before `today`.
base::Result<Demonstration> makeDemonstration(const std::string& contentFolder, const screening::Content& content, base::Date today);
/// Removes the folder; the clinic must be closed.
void removeDemonstration(const Demonstration& demonstration);

}  // namespace stile::application
