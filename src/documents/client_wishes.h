// What the limits ask of a client, sentence by sentence: gates, checks, what to keep to.
#pragma once

#include <string>
#include <vector>

#include "documents/client_paper.h"

namespace stile::documents {

/// What must be measured before the first session, and when not to start.
std::vector<std::string> gateSentences(const ClientRequest& request);
/// Checks of every session, and values at which to stop.
std::vector<std::string> checkSentences(const ClientRequest& request);
/// Loads, heart rate, times, supervision.
std::vector<std::string> keepToSentences(const ClientRequest& request);
/// What is measured at the sessions, in the client's words, each once.
std::vector<std::string> measuresOf(const ClientRequest& request);

}  // namespace stile::documents
