// The project's own content and test data, for tests that go through the real entry points.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <string>
#include <vector>

#include "application/content_folder.h"
#include "json/document.h"
#include "scale.h"
#include "screening/content.h"

namespace stile::test {

/// Loaded once; a content error ends the test program with the issues.
inline const screening::Content& content() {
  static const screening::Content loaded = [] {
    base::Issues issues;
    auto files = application::readContentFolder(STILE_SOURCE_DIR);
    if (!files) throw std::runtime_error(files.failure().message);
    auto result = screening::Content::load(files.value(), issues);
    std::string all;
    for (const auto& issue : issues.all()) all += toText(issue) + "\n";
    if (issues.hasErrors()) throw std::runtime_error(all);
    return result;
  }();
  return loaded;
}

/// "clinic" or "telephone".
inline const questionnaire::Form& formNamed(const char* name) { return *content().forms.byName(name); }

/// JSON files of a folder under tests/, sorted.
inline std::vector<std::filesystem::path> jsonFiles(const std::string& folder) {
  std::vector<std::filesystem::path> files;
  const std::filesystem::path path = std::filesystem::path(STILE_SOURCE_DIR) / "tests" / folder;
  if (std::filesystem::is_directory(path))
    for (const auto& entry : std::filesystem::directory_iterator(path))
      if (entry.path().extension() == ".json") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

inline std::string textOf(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

inline std::shared_ptr<const json::Document> parsed(const std::string& text, const std::string& name) {
  base::Issues issues;
  auto document = json::Document::parse(text, name, issues);
  std::string all;
  for (const auto& issue : issues.all()) all += toText(issue) + "\n";
  if (!document) throw std::runtime_error(all);
  return document;
}

}  // namespace stile::test
