// An interview's answers and ways out, in words.
#pragma once

#include <string>
#include <vector>

#include "interview/session.h"

namespace stile::cli {

/// "yes", "170 cm", "Angina; Pacemaker", "not sure".
std::string inWords(const interview::FormQuestion& question, const answers::Answered& answered);

/// What to do now, from the certain rules whose action is an emergency or the same day; and where the
/// client is, if the form asked.
std::vector<std::string> urgentWords(interview::Session& session, limits::Action from);

/// How the interview stands, in a sentence.
const char* inWords(interview::Closing closing);

/// One line: the action, and up to which intensity each bay is open.
std::string decisionInWords(const interview::Session& session);

}  // namespace stile::cli
