// The style sheet of the papers, made from the colour table.
#pragma once

#include <string>

#include "documents/document.h"

namespace stile::documents {

/// CSS for one document: its reader's sizes, its page margins with title and page number.
std::string paperStyle(const Document& document);

}  // namespace stile::documents
