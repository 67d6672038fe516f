// rules/doses.json read into purposes and doses; what needs the whole is checked by library_checker.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/issue.h"
#include "facts/dictionary.h"
#include "plan/doses.h"

namespace stile::plan {

/// nullptr when the text is not acceptable JSON; otherwise what could be read. Sources named
/// anywhere in the file are appended to `sources` with their place.
std::shared_ptr<Library::Doses> readDoses(const std::string& text, const std::string& file,
                                          const facts::Dictionary& dictionary, std::vector<Purpose>& purposes,
                                          std::vector<std::pair<std::string, base::Place>>& sources,
                                          base::Issues& issues);

}  // namespace stile::plan
