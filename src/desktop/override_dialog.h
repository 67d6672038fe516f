// Asks how a clinician decides against a finding: which, what holds instead, and why. New evidence is no
// override: the dialog says so and leads to the questions.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "application/client_signing.h"

class wxWindow;

namespace stile::desktop {

class Theme;

struct OverrideWanted {
  bool isEvidence = false;  ///< it goes in as an answer instead; the rest is then empty
  std::string rule, instead, reason;
};

/// nullopt when it was called off. `isFiled`: whether the screening is on record already.
std::optional<OverrideWanted> askOverride(wxWindow& parent, const Theme& theme, const std::vector<application::Overridable>& findings, bool isFiled);

}  // namespace stile::desktop
