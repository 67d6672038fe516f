#include "application/content_folder.h"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>

namespace stile::application {
namespace {

namespace fs = std::filesystem;
using base::Failure;
using base::FailureKind;

Failure failure(const std::string& message) { return {FailureKind::File, message}; }

bool looksLikeContent(const fs::path& folder) {
  std::error_code ignored;
  return fs::is_directory(folder / "questionnaires", ignored) && fs::is_directory(folder / "rules", ignored);
}

}  // namespace

base::Result<std::string> readFile(const std::string& path) {
  if (path == "-") return std::string(std::istreambuf_iterator<char>(std::cin), {});
  std::error_code ignored;
  if (fs::is_directory(path, ignored)) return failure(path + ": this is a folder; name a file");
  std::ifstream in(path, std::ios::binary);
  if (!in) return failure(path + ": cannot be opened (" + std::strerror(errno) + "); check the name and the rights");
  std::string text(std::istreambuf_iterator<char>(in), {});
  if (in.bad()) return failure(path + ": cannot be read to its end; check the disk");
  return text;
}

base::Result<std::map<std::string, std::string>> readContentFolder(const std::string& folder) {
  if (!looksLikeContent(folder))
    return failure(folder + ": there are no questionnaires/ and rules/ here; name the content folder with --content");
  std::map<std::string, std::string> files;
  try {
    for (const char* part : {"questionnaires", "rules"}) {
      for (const auto& entry : fs::recursive_directory_iterator(fs::path(folder) / part, fs::directory_options::follow_directory_symlink)) {
        if (!entry.is_regular_file() || entry.path().extension() != ".json") continue;
        auto text = readFile(entry.path().string());
        if (!text) return text.failure();
        // Not fs::relative(): it follows links, and the parts of a content folder may be links.
        files[entry.path().lexically_relative(folder).generic_string()] = std::move(text).value();
      }
    }
  } catch (const fs::filesystem_error& trouble) {
    return failure(folder + ": cannot be read (" + trouble.code().message() + ")");
  }
  return files;
}

std::string contentFolder(const std::string& named, const std::string& installed) {
  if (!named.empty()) return named;
  std::error_code trouble;
  const fs::path program = fs::read_symlink("/proc/self/exe", trouble);
  if (!trouble) {
    const fs::path beside = program.parent_path().parent_path() / "share" / "stile";
    if (looksLikeContent(beside)) return beside.string();
  }
  return installed;
}

base::Result<bool> writeFile(const std::string& path, const std::string& text) {
  const std::string temporary = path + ".part";
  const int file = ::open(temporary.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  if (file < 0) return failure(path + ": cannot be written (" + std::strerror(errno) + "); check the folder and the rights");
  std::size_t done = 0;
  int error = 0;
  while (done < text.size() && error == 0) {
    const ssize_t written = ::write(file, text.data() + done, text.size() - done);
    if (written >= 0)
      done += static_cast<std::size_t>(written);
    else if (errno != EINTR)
      error = errno;
  }
  if (error == 0 && ::fsync(file) != 0 && errno != EINVAL) error = errno;
  if (::close(file) != 0 && error == 0) error = errno;
  if (error == 0 && std::rename(temporary.c_str(), path.c_str()) != 0) error = errno;
  if (error == 0) return true;
  std::error_code ignored;
  fs::remove(temporary, ignored);
  return failure(path + ": cannot be written (" + std::strerror(error) + "); what stood there before is unchanged");
}

}  // namespace stile::application
