// One connection to the SQLite file, with the settings everything here relies on, and its troubles
// in words. Nobody outside this room sees SQL.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace SQLite {
class Database;
class Statement;
}  // namespace SQLite

namespace stile::store {

enum class Access { Read, Write };

/// File systems on which locks cannot be trusted, by the number statfs() gives.
bool isNetworkFileSystem(std::uint64_t kind);
/// Throws Trouble when `path` lies on such a file system.
void refuseNetworkFileSystem(const std::string& path);

class Database {
 public:
  /// Opens an existing file, or makes one with Access::Write and `create`. Throws Trouble.
  Database(const std::string& path, Access access, bool create = false);
  ~Database();
  Database(const Database&) = delete;
  Database& operator=(const Database&) = delete;

  const std::string& path() const { return path_; }
  SQLite::Database& sql() { return *database_; }
  void run(const std::string& statements);
  long long numberOf(const std::string& query);
  /// What SQLite itself finds wrong with the file; empty when nothing.
  std::string integrityTrouble();
  /// Moves the write-ahead log into the file and empties it.
  void checkpoint();

 private:
  std::string path_;
  std::unique_ptr<SQLite::Database> database_;
};

/// A statement with its values bound in order; numbers, texts and blobs.
class Query {
 public:
  Query(Database& database, const std::string& text);
  ~Query();
  Query(const Query&) = delete;
  Query& operator=(const Query&) = delete;
  Query& number(long long value);
  Query& text(const std::string& value);
  Query& blob(const std::string& value);
  bool next();   ///< steps to the next row
  int run();     ///< runs to the end; rows changed
  void again();  ///< takes the same statement from the start, values unbound
  long long numberAt(int column) const;
  std::string textAt(int column) const;  ///< also for blobs

 private:
  std::unique_ptr<SQLite::Statement> statement_;
  int bound_ = 0;
};

/// Rolls back unless commit() was reached.
class Transaction {
 public:
  explicit Transaction(Database& database, Access access = Access::Write);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit();

 private:
  Database& database_;
  bool done_ = false;
};

/// The failure of whatever exception is in flight; `path` is named in it.
base::Failure failureInFlight(const std::string& path);

/// Runs `work` and turns everything thrown into a failure.
template <class Work>
auto guarded(const std::string& path, Work work) -> base::Result<decltype(work())> {
  try {
    return work();
  } catch (...) {
    return failureInFlight(path);
  }
}

}  // namespace stile::store
