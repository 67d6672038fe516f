// One session writes; whoever comes second is told who holds the file.
#pragma once

#include <string>

namespace stile::store {

/// Held by the kernel, so a killed program leaves nothing behind that must be cleared away.
/// The lock's file ("<clinic file>.lock") says in clear words who holds it: sign-in name, machine,
/// process, since when.
class WriteLock {
 public:
  /// Throws Trouble (kind Secret) when another session holds it.
  WriteLock(const std::string& clinicFile, const std::string& handle, const std::string& since);
  ~WriteLock();
  WriteLock(const WriteLock&) = delete;
  WriteLock& operator=(const WriteLock&) = delete;

 private:
  std::string path_;
  int file_ = -1;
};

}  // namespace stile::store
