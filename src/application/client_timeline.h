// What happened to a client and when, newest first, in words for reading.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "application/client_records.h"

namespace stile::application {

struct TimelineLine {
  std::string entry, kind;
  base::Date date;    ///< of what happened, not of the writing
  std::string title;  ///< of the kind
  std::string words;  ///< what it says, on one line; "" when nothing
  std::string by;     ///< name of who wrote it
  std::vector<std::pair<std::string, std::string>> details;  ///< term and text, one for each thing it says
};

/// Drafts and corrections of names are left out.
std::vector<TimelineLine> timelineOf(const Clinic& clinic, const std::vector<records::Entry>& entries);
/// The same as text, a line each.
base::Result<std::string> clientTimeline(Clinic& clinic, const std::string& id, base::Date today);

}  // namespace stile::application
