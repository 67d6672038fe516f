// A document as plain text, for a terminal.
#pragma once

#include <string>

#include "documents/document.h"

namespace stile::documents {

/// Headings underlined, lines at most `columns` long, folded parts by their titles only. Ends with
/// a newline.
std::string toText(const Document& document, int columns = 80);

/// Every word a reader sees, folded parts included, without line breaks inside a sentence: for
/// checks that a sentence stands on a paper.
std::string wordsOf(const Document& document);

}  // namespace stile::documents
