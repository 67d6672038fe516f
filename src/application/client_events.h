// What happened to a client, and what follows: the plan waits, replies of that scope end, a letter is
// drafted, a new screening is due.
#pragma once

#include <string>
#include <vector>

#include "application/client_records.h"

namespace stile::application {

struct FiledEvent {
  std::string entry;
  std::string letter;      ///< entry of the drafted letter
  std::string letterText;
  bool mayBeSent = false;  ///< the client agreed to share with the physician
};
/// `text`: an entry of the kind "event" as JSON. An event that is filed otherwise holds the plan and
/// ends replies as well; only the letter is drafted here.
base::Result<FiledEvent> fileEvent(Clinic& clinic, const std::string& id, const std::string& text, const std::string& file, base::Issues& issues);

/// Whether a reply about `rule`, given on `given`, was ended by an event on that day or later.
bool isEndedByEvent(const records::ClientRecord& record, const records::FollowUpPolicy& policy, const std::string& rule, base::Date given);

/// How the plan stands after the check-ins: the week, its doses, and why; or that it waits. "" when
/// none was begun.
std::string planStandInWords(const records::ClientRecord& record, const records::FollowUpPolicy& policy, base::Date today);

}  // namespace stile::application
