// The words on the ladder, apart from their places: notices, the slab of an emergency, and the whole
// ladder told to someone who cannot see it.
#pragma once

#include <string>
#include <vector>

#include "screening/screening.h"

namespace stile::documents {

/// Below "shut": what opens the rung, and how many other keys are wanted besides.
std::vector<std::string> noticeLines(const screening::Screening& screening, const screening::RungView& view);
/// Below the "Shut" of a held ladder.
std::vector<std::string> heldLines(const screening::Screening& screening);

struct EmergencyWords {
  std::vector<std::string> what;       ///< titles of the findings that call for help, at most two
  std::string call;                    ///< "Call 112"
  std::vector<std::string> meanwhile;  ///< what to do until help is there
};
EmergencyWords emergencyWords(const screening::Screening& screening, const std::string& emergencyNumber);

/// What opens a finding, in words for a list: "until a physician's reply: Heart disease, not active".
std::string keyWords(const screening::Screening& screening, const screening::RungReason& reason);

/// The ladder rung by rung, in sentences.
std::string ladderDescription(const screening::Screening& screening, const std::string& emergencyNumber);

}  // namespace stile::documents
