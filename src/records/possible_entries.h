// What can be recorded of a client today: entries that stand for themselves, and those that answer
// something that is open.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "records/client_record.h"

namespace stile::records {

struct PossibleEntry {
  std::string kind;   ///< of entryKinds()
  std::string words;  ///< "The letter to Dr Teale went out"
  std::vector<std::pair<std::string, std::string>> known;  ///< members that are settled already: what it refers to
};

/// What is open first, then what may happen at any time. Of a record that rests nothing.
std::vector<PossibleEntry> possibleEntries(const ClientRecord& record, base::Date today);

}  // namespace stile::records
