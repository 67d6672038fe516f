// A folder nobody else can look into, in memory where the machine has such a place; gone with the object.
#pragma once

#include <string>

namespace stile::desktop {

class PrivateFolder {
 public:
  PrivateFolder();
  ~PrivateFolder();
  PrivateFolder(const PrivateFolder&) = delete;
  PrivateFolder& operator=(const PrivateFolder&) = delete;
  /// "" when none could be made.
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

}  // namespace stile::desktop
