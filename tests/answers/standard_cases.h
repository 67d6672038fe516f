// Reference material of the standard that lies beside the project, where it is present.
#pragma once

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace stile::sample {

inline std::filesystem::path standards() {
  return std::filesystem::path(STILE_SOURCE_DIR) / ".." / "shared" / "standards";
}

/// False, and a visible warning, when it is not here.
inline bool isHere(const std::filesystem::path& path) {
  if (std::filesystem::exists(path)) return true;
  WARN("skipped: " + path.filename().string() + " of the standard is not beside the project");
  return false;
}

inline std::string textOf(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE(file);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

}  // namespace stile::sample
