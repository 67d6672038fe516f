// Whether two clients could be one and the same person. Only ever a question to a person.
#pragma once

#include <string>
#include <vector>

#include "records/worklist.h"

namespace stile::records {

/// Why these could be the same, a sentence part; "" when nothing speaks for it.
/// Same born and a name that differs by at most two letters or by the order of its parts; or the
/// same name with a day of birth that differs in one place; or the same record number.
std::string couldBeSame(const Card& one, const Card& other);

}  // namespace stile::records
