// The last touches to a PDF: what cairo 1.16 cannot write.
#pragma once

#include <string>

#include "base/result.h"
#include "documents/pdf_notes.h"

namespace stile::documents {

/// Adds the language, shows the title in the window, gives figures their alternative words and
/// header cells their scope, and takes ornaments out of the structure. The same bytes each time.
base::Result<std::string> withStructure(const std::string& pdf, const std::string& language, const TagNotes& notes);

}  // namespace stile::documents
