// A document as PDF: tagged, with language, title, bookmarks, alternative words and embedded fonts.
#pragma once

#include <string>

#include "base/result.h"
#include "documents/document.h"

namespace stile::documents {

/// The bytes of the file; the same document gives the same bytes. A missing typeface is a failure
/// that names its package; nothing is written anywhere.
base::Result<std::string> toPdf(const Document& document);

}  // namespace stile::documents
