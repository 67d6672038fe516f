#include "store/write_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

#include "store/trouble.h"

namespace stile::store {
namespace {

using base::FailureKind;

std::string contentOf(int file) {
  char text[400];
  const ssize_t size = ::pread(file, text, sizeof text, 0);
  std::string who(text, size > 0 ? static_cast<std::size_t>(size) : 0);
  while (!who.empty() && who.back() == '\n') who.pop_back();
  return who.empty() ? "another session" : who;
}

}  // namespace

WriteLock::WriteLock(const std::string& clinicFile, const std::string& handle, const std::string& since) : path_(clinicFile + ".lock") {
  file_ = ::open(path_.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
  if (file_ < 0)
    fail(FailureKind::File, path_ + ": the lock cannot be written (" + std::strerror(errno) + "); ask whoever looks after the machine for the right to write in this folder");
  if (::flock(file_, LOCK_EX | LOCK_NB) != 0) {
    const std::string who = contentOf(file_);
    ::close(file_);
    fail(FailureKind::Secret, clinicFile + ": in use by " + who + ". You may verify it and back it up meanwhile; a client's record opens once the other session has ended");
  }
  char host[256] = "this machine";
  ::gethostname(host, sizeof host - 1);
  const std::string text = handle + " on " + host + ", process " + std::to_string(::getpid()) + ", since " + since + "\n";
  // What the file says is only for reading, and may be lost on a full disk; the lock is the kernel's.
  [[maybe_unused]] const bool isTold = ::ftruncate(file_, 0) == 0 && ::pwrite(file_, text.data(), text.size(), 0) > 0;
}

WriteLock::~WriteLock() {
  // Emptied, not removed: a second session may be waiting on this very file.
  [[maybe_unused]] const int emptied = ::ftruncate(file_, 0);
  ::close(file_);
}

}  // namespace stile::store
