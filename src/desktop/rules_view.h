// What the page of rules shows: rules found by words and topic. No window in it.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "records/client_record.h"
#include "screening/content.h"

namespace stile::desktop {

/// Topics of the rules with their words, in the order of the book.
std::vector<std::pair<std::string, std::string>> ruleTopicsOf(const screening::Content& content);

/// Rules of the topic ("" = all) in which every one of the words stands: in title, id, condition or sentences.
std::vector<const rules::Rule*> rulesFound(const screening::Content& content, const std::string& topic, const std::string& words);

/// When the rule last fired for this client: "25 November 2026", or "".
std::string lastFired(const records::ClientRecord& record, const std::string& rule);

}  // namespace stile::desktop
