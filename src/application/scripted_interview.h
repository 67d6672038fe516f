// An interview answered out of a script: for the people of the demonstration.
#pragma once

#include "application/client_interview.h"
#include "json/document.h"

namespace stile::application {

/// Answers question after question: `says` is an object of fact id -> yes or no, an option's code, a
/// list of them, or words as they would be typed; a list of objects for questions that repeat. What it
/// does not name is answered no, or with the option "none of these", or "not sure". Ends with the last
/// question, or after `most` screens (0 = all).
base::Result<bool> answerAll(ClientInterview& interview, json::Node says, int most);

}  // namespace stile::application
