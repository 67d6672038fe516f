// Forms that nobody here wrote: examples of the standard, where the folder is present. Which of them
// can be walked to the end is tested in tests/answers/standard_walk_test.cpp.
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "questionnaire/form.h"

using namespace stile;

namespace {

const std::filesystem::path kFolder =
    std::filesystem::path(STILE_SOURCE_DIR) / ".." / "shared" / "standards" / "forms";

std::string textOf(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

}  // namespace

TEST_CASE("Every example form is read to its end without a crash, under both sets of rules") {
  if (!std::filesystem::exists(kFolder)) {
    WARN("skipped: the standard's example forms are not here");
    return;
  }
  std::map<std::string, std::string> files;
  for (const auto& entry : std::filesystem::directory_iterator(kFolder)) {
    files[entry.path().filename().string()] = textOf(entry.path());
  }
  base::Issues issues;
  questionnaire::FormSet::load(files, issues);
  questionnaire::FormSet::loadAny(files, issues);
  CHECK(issues.hasErrors());
  for (const auto& issue : issues.all()) {
    CHECK_FALSE(issue.message.empty());
    CHECK(issue.place.line > 0);
  }
}
