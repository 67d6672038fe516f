// The use case "write the papers of a client's last screening": a record in, files in a folder out.
#pragma once

#include "application/client_records.h"
#include "application/write_papers.h"

namespace stile::application {

/// Screens what was filed once more and writes the papers, with what clinicians decided otherwise and
/// signed since. Name, date of birth, record number and physician come from the record. Refused when
/// nothing was screened yet, and when the content has changed since: then the client is screened again.
base::Result<std::string> writeClientPapers(Clinic& clinic, const std::string& id, const screening::Content& content,
                                            const std::string& contentFolder, PaperOptions options, base::Issues& issues);

}  // namespace stile::application
