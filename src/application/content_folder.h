// Finds and reads the content folder: the one with questionnaires/ and rules/ in it.
#pragma once

#include <map>
#include <string>

#include "base/result.h"

namespace stile::application {

/// Paths relative to the folder ("rules/facts/acute.json") and their text: every .json file under
/// questionnaires/ and rules/. A folder without them, or a file that cannot be read, is a failure.
base::Result<std::map<std::string, std::string>> readContentFolder(const std::string& folder);

/// The folder named by the user if not empty, else the one installed beside the program, else
/// `installed`.
std::string contentFolder(const std::string& named, const std::string& installed);

/// The whole text of a file; "-" reads the standard input.
base::Result<std::string> readFile(const std::string& path);

/// Writes all or nothing: to a temporary name beside it, synced, then renamed.
base::Result<bool> writeFile(const std::string& path, const std::string& text);

}  // namespace stile::application
