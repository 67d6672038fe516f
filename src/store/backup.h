// Copies of a clinic file, made while it is in use through the database's own backup call.
#pragma once

#include <string>
#include <vector>

#include "store/database.h"

namespace stile::store {

/// Copies to `target` by way of a temporary name; the copy is opened and its integrity checked
/// before it takes the name. Throws Trouble; an older file of that name then still stands.
void copyDatabase(Database& database, const std::string& target);

/// Backups of `stem` in `folder` ("<stem>-<stamp>.stile"), oldest first.
std::vector<std::string> backupsIn(const std::string& folder, const std::string& stem);

/// Removes the oldest until `keep` are left; returns what was removed.
std::vector<std::string> rotate(const std::string& folder, const std::string& stem, std::size_t keep);

}  // namespace stile::store
