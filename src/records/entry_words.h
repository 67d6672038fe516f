// What the members of entries are called where people fill them in or read them. Interface words only.
#pragma once

#include <string>
#include <string_view>

namespace stile::records {

/// "Pain the next morning, 0 to 10"; the name itself when it has no words of its own.
std::string memberWords(std::string_view member);
/// "chestPain" -> "chest pain"; a word without an own saying comes back as it is.
std::string choiceWords(std::string_view word);

}  // namespace stile::records
