// The tables of a clinic file, its version, and one step from each version to the next.
//
// What stays readable in the file without any passphrase: the names of tables and columns, the
// random ids of records and entries, which entry belongs to which record, revision and generation
// numbers, sizes, counts, the time of writing of an entry, and the sign-in name and public key of
// each clinician. Everything else is sealed. `tests/store/readable_test.cpp` holds this list.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "store/database.h"

namespace stile::store {

inline constexpr int kApplicationId = 0x5374696C;  ///< marks the file as a clinic file

/// Makes version `from` into `from + 1`, on raw rows, inside a transaction.
struct Migration {
  int from = 0;
  std::function<void(Database&)> step;
};

/// The steps of every released version, oldest first. The version of the program is the last
/// step's target, or 1.
const std::vector<Migration>& releasedMigrations();
int versionAfter(const std::vector<Migration>& migrations);

/// Makes the tables of version 1 in an empty file.
void createSchema(Database& database);

/// Reads the version before anything else. Throws Trouble when the file is not a clinic file or
/// newer than `newest`; the sentence names both versions.
int versionOf(Database& database, int newest);

/// Brings an open file up to date. Before the first step a copy is made beside it through the
/// database's own backup call, opened and checked; its path is returned, "" when nothing was to do.
std::string migrate(Database& database, const std::vector<Migration>& migrations);

}  // namespace stile::store
