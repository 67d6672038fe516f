#include "application/save_file.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

namespace stile::application {
namespace {

base::Failure failureAt(const std::string& path, const char* what) {
  return {base::FailureKind::File, path + ": " + what + ": " + std::strerror(errno) + "; check the folder and the disk"};
}

bool writeAll(int file, const std::string& text) {
  for (std::size_t done = 0; done < text.size();) {
    const ssize_t written = ::write(file, text.data() + done, text.size() - done);
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    done += static_cast<std::size_t>(written);
  }
  return true;
}

}  // namespace

std::optional<base::Failure> saveFile(const std::string& path, const std::string& text) {
  // Only the owner may read it: it is about a person.
  const std::string temporary = path + ".new-" + std::to_string(::getpid());
  const int file = ::open(temporary.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
  if (file < 0) return failureAt(path, "cannot be written");
  const bool isWritten = writeAll(file, text) && ::fsync(file) == 0;
  const auto trouble = isWritten ? std::nullopt : std::optional(failureAt(path, "cannot be written"));
  ::close(file);
  if (trouble) {
    ::unlink(temporary.c_str());
    return trouble;
  }
  if (::rename(temporary.c_str(), path.c_str()) != 0) {
    const auto failure = failureAt(path, "cannot be replaced");
    ::unlink(temporary.c_str());
    return failure;
  }
  // The name is on the disk only once its folder is.
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  const int directory = ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (directory >= 0) {
    ::fsync(directory);
    ::close(directory);
  }
  return std::nullopt;
}

}  // namespace stile::application
