#include "store/backup.h"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/Database.h>
#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>

#include "store/trouble.h"

namespace stile::store {
namespace {

namespace fs = std::filesystem;

constexpr int kPagesAtOnce = 256;

void sync(const std::string& path) {
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) return;
  ::fsync(file);
  ::close(file);
}

void copyPages(Database& from, Database& to) {
  SQLite::Backup backup(to.sql(), from.sql());
  // One step of all pages would hold the reader for long; a writer that comes in between only
  // makes the call begin again.
  while (backup.executeStep(kPagesAtOnce) != SQLITE_DONE) {
  }
}

}  // namespace

void copyDatabase(Database& database, const std::string& target) {
  const std::string part = target + ".part";
  std::error_code ignored;
  const auto removePart = [&part, &ignored] {
    for (const char* tail : {"", "-wal", "-shm", "-journal"}) fs::remove(part + tail, ignored);
  };
  removePart();
  try {
    {
      Database copy(part, Access::Write, true);
      copyPages(database, copy);
      copy.run("PRAGMA journal_mode=DELETE");  // one file, nothing beside it
      const std::string trouble = copy.integrityTrouble();
      if (!trouble.empty()) failDamaged(target + ": the copy does not pass the integrity check (" + trouble + ")");
    }
    sync(part);
    fs::rename(part, target);
    sync(fs::absolute(target).parent_path().string());
  } catch (...) {
    removePart();
    throw;
  }
}

std::vector<std::string> backupsIn(const std::string& folder, const std::string& stem) {
  std::vector<std::string> found;
  for (const auto& entry : fs::directory_iterator(folder)) {
    const std::string name = entry.path().filename().string();
    // Stem, hyphen, 8 digits, hyphen, 9 digits: nothing else in the folder is ever rotated away.
    const std::size_t length = stem.size() + 1 + 18 + 6;
    if (name.size() != length || name.rfind(stem + "-", 0) != 0 || name.substr(length - 6) != ".stile") continue;
    const std::string stamp = name.substr(stem.size() + 1, 18);
    if (stamp.find_first_not_of("0123456789-") == std::string::npos && stamp[8] == '-') found.push_back(entry.path().string());
  }
  std::sort(found.begin(), found.end());
  return found;
}

std::vector<std::string> rotate(const std::string& folder, const std::string& stem, std::size_t keep) {
  auto all = backupsIn(folder, stem);
  std::vector<std::string> removed;
  while (all.size() > std::max<std::size_t>(keep, 1)) {
    fs::remove(all.front());
    removed.push_back(all.front());
    all.erase(all.begin());
  }
  return removed;
}

}  // namespace stile::store
