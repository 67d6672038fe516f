// What stands where, and how long files may be.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <set>

#include "arrow_table.h"

using stile::architecture::fileText;
namespace fs = std::filesystem;

namespace {

constexpr long kMaxLines = 400;

/// Those of `names` that may not stand at the top of the project.
std::vector<std::string> strangers(const std::vector<std::string>& names) {
  static const std::set<std::string> kAllowed = {"CMakeLists.txt", "CMakePresets.json",
                                                 "README.md",      "DEVELOPERS.md",
                                                 "LICENSE",        "src",
                                                 "questionnaires", "rules",
                                                 "tests",          "build",
                                                 "papers"};
  std::vector<std::string> found;
  std::copy_if(names.begin(), names.end(), std::back_inserter(found),
               [](const std::string& name) { return name[0] != '.' && !kAllowed.contains(name); });
  return found;
}

bool isTooLong(const std::string& text) {
  return std::count(text.begin(), text.end(), '\n') > kMaxLines;
}

}  // namespace

TEST_CASE("no source file is longer than 400 lines") {
  for (const auto& entry : fs::recursive_directory_iterator(fs::path(STILE_SOURCE_DIR) / "src")) {
    if (!entry.is_regular_file()) continue;
    if (isTooLong(fileText(entry.path().string()))) {
      FAIL_CHECK(entry.path().string() + " is longer than 400 lines: split it by noun");
    }
  }
}

TEST_CASE("the top of the project holds only what belongs there") {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(STILE_SOURCE_DIR)) {
    names.push_back(entry.path().filename().string());
  }
  for (const std::string& name : strangers(names))
    FAIL_CHECK(name + " does not belong at the top of the project");
}

TEST_CASE("a file that is too long and a stranger at the top are caught") {
  std::string text;
  for (long i = 0; i < kMaxLines; ++i) text += "x\n";
  CHECK_FALSE(isTooLong(text));
  CHECK(isTooLong(text + "x\n"));
  CHECK(strangers({"src", ".gitignore", "notes.txt", "scripts"}) ==
        std::vector<std::string>{"notes.txt", "scripts"});
}
