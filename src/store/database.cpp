#include "store/database.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <sys/vfs.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <set>

#include "store/trouble.h"

namespace stile::store {
namespace {

using base::Failure;
using base::FailureKind;

constexpr int kBusyMilliseconds = 5000;

Failure failureOf(const SQLite::Exception& trouble, const std::string& path) {
  const auto file = [&path](const std::string& message) { return Failure{FailureKind::File, path + ": " + message}; };
  switch (trouble.getErrorCode()) {
    case SQLITE_FULL:
      return file("the disk is full; what was not yet saved is not in the file, everything before it is. Make room and save again");
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {FailureKind::Secret, path + ": another program holds the file; close it and try again"};
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return file("this file or its folder may only be read; ask whoever looks after the machine for the right to write");
    case SQLITE_CANTOPEN:
      return file("cannot be opened; check the name, and that the folder may be written (a log stands beside the file)");
    case SQLITE_NOTADB:
      return file("this is no clinic file, or its beginning was overwritten; go back to the last backup that verifies");
    case SQLITE_CORRUPT:
      return file("the file is damaged; keep it as it is and go back to the last backup that verifies");
    case SQLITE_IOERR:
      return file("the disk gives an error (" + std::string(trouble.what()) + "); check the disk and its room");
    default:
      return file("the database says: " + std::string(trouble.what()) + "; verify the file, or go back to the last backup that verifies");
  }
}

}  // namespace

bool isNetworkFileSystem(std::uint64_t kind) {
  // Numbers of linux/magic.h and of the file systems' own sources: NFS, SMB, CIFS, SMB2, Coda,
  // AFS (two), 9P, Ceph, Lustre, OCFS2, GFS2; FUSE carries sshfs and its like and cannot be told apart.
  static const std::set<std::uint64_t> kKinds{0x6969,     0x517B,     0xFF534D42, 0xFE534D42, 0x73757245, 0x5346414F, 0x6B414653,
                                              0x01021997, 0x00C36400, 0x0BD00BD3, 0x7461636F, 0x01161970, 0x65735546};
  return kKinds.count(kind) > 0;
}

void refuseNetworkFileSystem(const std::string& path) {
  const std::filesystem::path folder = std::filesystem::absolute(path).parent_path();
  struct statfs about {};
  if (::statfs(folder.c_str(), &about) != 0)
    fail(FailureKind::File, path + ": the folder cannot be read (" + std::strerror(errno) + "); check its name and rights");
  if (isNetworkFileSystem(static_cast<std::uint64_t>(about.f_type) & 0xFFFFFFFFu))
    fail(FailureKind::File, path + ": this folder lies on a network file system, where locks cannot be trusted and records can be lost; "
                                   "keep the clinic file on a disk of this machine and put backups on the network");
}

Database::Database(const std::string& path, Access access, bool create) : path_(path) {
  int flags = access == Access::Read ? SQLite::OPEN_READONLY : SQLite::OPEN_READWRITE;
  if (create) flags |= SQLite::OPEN_CREATE;
  std::error_code ignored;
  if (!create && !std::filesystem::exists(path, ignored))
    fail(FailureKind::File, path + ": there is no such file, or its folder may not be looked into; check the name");
  const mode_t before = ::umask(0077);  // nobody else reads the file or its log
  try {
    database_ = std::make_unique<SQLite::Database>(path, flags, kBusyMilliseconds);
    // The file may have been written by anyone: no functions from its schema, cells checked.
    run("PRAGMA trusted_schema=OFF; PRAGMA cell_size_check=ON; PRAGMA temp_store=MEMORY; PRAGMA foreign_keys=ON;");
    if (access == Access::Write) run("PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA secure_delete=ON;");
  } catch (...) {
    ::umask(before);
    throw;
  }
  ::umask(before);
}

Database::~Database() = default;

void Database::run(const std::string& statements) { database_->exec(statements); }

long long Database::numberOf(const std::string& query) { return database_->execAndGet(query).getInt64(); }

std::string Database::integrityTrouble() {
  SQLite::Statement statement(*database_, "PRAGMA integrity_check(1)");
  if (!statement.executeStep()) return "the integrity check gave no answer";
  const std::string answer = statement.getColumn(0).getString();
  if (answer != "ok") return answer;
  SQLite::Statement keys(*database_, "PRAGMA foreign_key_check");
  return keys.executeStep() ? "a row refers to one that is not there" : "";
}

void Database::checkpoint() { run("PRAGMA wal_checkpoint(TRUNCATE)"); }

Query::Query(Database& database, const std::string& text) : statement_(std::make_unique<SQLite::Statement>(database.sql(), text)) {}
Query::~Query() = default;

Query& Query::number(long long value) {
  statement_->bind(++bound_, static_cast<std::int64_t>(value));
  return *this;
}

Query& Query::text(const std::string& value) {
  statement_->bind(++bound_, value);
  return *this;
}

Query& Query::blob(const std::string& value) {
  statement_->bind(++bound_, value.data(), static_cast<int>(value.size()));
  return *this;
}

bool Query::next() { return statement_->executeStep(); }
int Query::run() { return statement_->exec(); }

void Query::again() {
  statement_->reset();
  statement_->clearBindings();
  bound_ = 0;
}

long long Query::numberAt(int column) const { return statement_->getColumn(column).getInt64(); }
std::string Query::textAt(int column) const { return statement_->getColumn(column).getString(); }

Transaction::Transaction(Database& database, Access access) : database_(database) {
  database_.run(access == Access::Write ? "BEGIN IMMEDIATE" : "BEGIN");
}

Transaction::~Transaction() {
  if (!done_) database_.sql().tryExec("ROLLBACK");
}

void Transaction::commit() {
  database_.run("COMMIT");
  done_ = true;
}

Failure failureInFlight(const std::string& path) {
  try {
    throw;
  } catch (const Trouble& trouble) {
    return trouble.failure;
  } catch (const SQLite::Exception& trouble) {
    return failureOf(trouble, path);
  } catch (const std::bad_alloc&) {
    return {FailureKind::File, path + ": memory ran out; close other programs and try again"};
  } catch (const std::exception& trouble) {
    return {FailureKind::File, path + ": " + trouble.what()};
  }
}

}  // namespace stile::store
