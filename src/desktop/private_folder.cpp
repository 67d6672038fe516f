#include "desktop/private_folder.h"

#include <cstdlib>
#include <filesystem>

namespace stile::desktop {

PrivateFolder::PrivateFolder() {
  const char* const runtime = std::getenv("XDG_RUNTIME_DIR");
  std::error_code ignored;
  for (const std::string& place : {std::string(runtime == nullptr ? "" : runtime), std::string("/dev/shm"), std::filesystem::temp_directory_path(ignored).string()}) {
    if (place.empty()) continue;
    std::string name = place + "/stile-XXXXXX";
    if (mkdtemp(name.data()) == nullptr) continue;
    path_ = name;
    return;
  }
}

PrivateFolder::~PrivateFolder() {
  std::error_code ignored;
  if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
}

}  // namespace stile::desktop
