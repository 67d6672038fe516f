// A document as one HTML file: styles and drawings inside, no scripts, nothing fetched; prints on A4.
#pragma once

#include <string>

#include "documents/document.h"

namespace stile::documents {

/// Headings, landmarks and table scopes are in place for readers who listen. The same document gives
/// the same bytes.
std::string toHtml(const Document& document);

}  // namespace stile::documents
