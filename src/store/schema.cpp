#include "store/schema.h"

#include "store/backup.h"
#include "store/trouble.h"

namespace stile::store {
namespace {

constexpr const char* kTables = R"sql(
CREATE TABLE clinician(
  handle TEXT PRIMARY KEY NOT NULL, revision INTEGER NOT NULL, state TEXT NOT NULL, public_key BLOB NOT NULL,
  salt BLOB NOT NULL, operations INTEGER NOT NULL, memory INTEGER NOT NULL, vault BLOB NOT NULL, sealed BLOB NOT NULL) STRICT;
CREATE TABLE data_key(
  generation INTEGER NOT NULL, handle TEXT NOT NULL REFERENCES clinician(handle), wrapped BLOB NOT NULL,
  PRIMARY KEY(generation, handle)) STRICT;
CREATE TABLE record(
  id TEXT PRIMARY KEY NOT NULL, revision INTEGER NOT NULL, generation INTEGER NOT NULL, sealed BLOB NOT NULL) STRICT;
CREATE TABLE entry(
  record TEXT NOT NULL REFERENCES record(id), id TEXT NOT NULL, revision INTEGER NOT NULL, generation INTEGER NOT NULL,
  written INTEGER NOT NULL, sealed BLOB NOT NULL, PRIMARY KEY(record, id)) STRICT;
CREATE TABLE journal(number INTEGER PRIMARY KEY NOT NULL, generation INTEGER NOT NULL, sealed BLOB NOT NULL) STRICT;
CREATE TABLE head(
  one INTEGER PRIMARY KEY CHECK(one = 1), clinic TEXT NOT NULL, revision INTEGER NOT NULL, generation INTEGER NOT NULL,
  sealed BLOB NOT NULL) STRICT;
)sql";

std::string named(int version) { return "version " + std::to_string(version); }

}  // namespace

const std::vector<Migration>& releasedMigrations() {
  static const std::vector<Migration> kSteps;  // version 1 is the first
  return kSteps;
}

int versionAfter(const std::vector<Migration>& migrations) { return migrations.empty() ? 1 : migrations.back().from + 1; }

void createSchema(Database& database) {
  Transaction transaction(database);
  database.run(kTables);
  database.run("PRAGMA application_id=" + std::to_string(kApplicationId) + "; PRAGMA user_version=1;");
  transaction.commit();
}

int versionOf(Database& database, int newest) {
  if (database.numberOf("PRAGMA application_id") != kApplicationId)
    fail(base::FailureKind::Refused, database.path() + ": this is no clinic file; name the file that \"stile clinic create\" made");
  const auto version = static_cast<int>(database.numberOf("PRAGMA user_version"));
  if (version > newest)
    fail(base::FailureKind::Refused, database.path() + ": this clinic file has " + named(version) + " of the format, and this program reads up to " +
                                         named(newest) + "; install the newer program. Nothing was changed");
  if (version < 1) failDamaged(database.path() + ": the file says it has " + named(version) + " of the format");
  return version;
}

std::string migrate(Database& database, const std::vector<Migration>& migrations) {
  const int newest = versionAfter(migrations);
  int version = versionOf(database, newest);
  if (version == newest) return {};
  const std::string copy = database.path() + ".before-version-" + std::to_string(newest);
  copyDatabase(database, copy);
  for (const Migration& migration : migrations) {
    if (migration.from != version) continue;
    Transaction transaction(database);
    migration.step(database);
    ++version;
    database.run("PRAGMA user_version=" + std::to_string(version));
    transaction.commit();
  }
  if (version != newest) fail(base::FailureKind::File, database.path() + ": there is no step from " + named(version) + " of the format; the copy " + copy + " is as it was");
  return copy;
}

}  // namespace stile::store
