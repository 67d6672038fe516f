// The project's own figures, read once.
#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>

#include "movement/figure.h"

namespace stile::movement {

inline std::map<std::string, std::string> figureFiles() {
  std::map<std::string, std::string> files;
  const std::filesystem::path root = STILE_SOURCE_DIR;
  for (const auto& entry : std::filesystem::directory_iterator(root / "rules/movement")) {
    std::ifstream in(entry.path(), std::ios::binary);
    files["rules/movement/" + entry.path().filename().string()] = {std::istreambuf_iterator<char>(in), {}};
  }
  return files;
}

inline const Figures& realFigures() {
  static const Figures figures = [] {
    base::Issues issues;
    return readFigures(figureFiles(), issues);
  }();
  return figures;
}

}  // namespace stile::movement
