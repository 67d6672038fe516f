// Writing a file so that a crash leaves the old one or the new one, never half of one.
#pragma once

#include <optional>
#include <string>

#include "base/result.h"

namespace stile::application {

/// Writes a temporary file beside `path`, flushes it to the disk and renames it over `path`.
/// nullopt when all went well.
std::optional<base::Failure> saveFile(const std::string& path, const std::string& text);

}  // namespace stile::application
