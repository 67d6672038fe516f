// The dictionary as a table to read and as JSON to work with.
#pragma once

#include <string>

#include "facts/dictionary.h"

namespace stile::facts {

/// One Markdown table per topic, in the order of the files. Option facts stand with their choice.
std::string factTable(const Dictionary& dictionary);

/// `{"groups": [...], "facts": [...]}`, one object per fact, option facts and policies included.
std::string factTableJson(const Dictionary& dictionary);

}  // namespace stile::facts
