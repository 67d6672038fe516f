// The dictionary as a table to read and as JSON to work with.
#pragma once

#include <string>

#include "facts/dictionary.h"
#include "facts/fact_display.h"

namespace stile::facts {

/// One Markdown table per topic, in the order of the files. Option facts stand with their choice.
std::string tableAsText(const Dictionary& dictionary);

/// `{"groups": [...], "facts": [...]}`, one object per fact, option facts and policies included.
std::string tableAsJson(const Dictionary& dictionary);

}  // namespace stile::facts
