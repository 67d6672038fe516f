// Every include under src/ against the table of arrows.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <set>

#include "arrow_table.h"

using stile::architecture::ArrowTable;
using stile::architecture::fileText;
namespace fs = std::filesystem;

namespace {

const fs::path kSource = fs::path(STILE_SOURCE_DIR) / "src";

ArrowTable table() {
  return ArrowTable::parse(fileText(std::string(STILE_SOURCE_DIR) + "/tests/architecture/arrows.txt"));
}

std::vector<std::string> forbidden(const std::string& room, const std::string& text) {
  return table().forbidden(room, "made_up.cpp", text);
}

}  // namespace

TEST_CASE("no file under src includes what its room may not") {
  const ArrowTable arrows = table();
  std::size_t files = 0;
  for (const auto& entry : fs::recursive_directory_iterator(kSource)) {
    const std::string extension = entry.path().extension().string();
    if (extension != ".h" && extension != ".cpp") continue;
    ++files;
    const fs::path relative = fs::relative(entry.path(), kSource);
    const std::string room = relative.begin()->string();
    for (const std::string& line :
         arrows.forbidden(room, "src/" + relative.generic_string(), fileText(entry.path().string()))) {
      FAIL_CHECK(line);
    }
  }
  CHECK(files > 0);
}

TEST_CASE("every folder of src is a room of the table, and only the set-up stands beside them") {
  const ArrowTable arrows = table();
  const std::set<std::string> setUp{"start.sh", "install-packages.sh", "packages.txt"};
  for (const auto& entry : fs::directory_iterator(kSource)) {
    if (entry.is_regular_file() && setUp.contains(entry.path().filename().string())) continue;
    CAPTURE(entry.path().string());
    CHECK(entry.is_directory());
    CHECK(arrows.knows(entry.path().filename().string()));
  }
}

TEST_CASE("the arrows of the table have no circle") {
  // Rooms are taken away once nothing they may include is left; what remains is a circle.
  auto left = table().rooms();
  for (bool isMoving = true; isMoving;) {
    isMoving = false;
    for (auto row = left.begin(); row != left.end();) {
      const bool waits = std::any_of(row->second.begin(), row->second.end(),
                                     [&](const std::string& other) { return left.contains(other); });
      isMoving = isMoving || !waits;
      row = waits ? std::next(row) : left.erase(row);
    }
  }
  for (const auto& [room, others] : left) FAIL_CHECK(room + " is in a circle");
}

TEST_CASE("every room named on the right of the table stands on the left") {
  const ArrowTable arrows = table();
  for (const auto& [room, others] : arrows.rooms()) {
    for (const std::string& other : others) {
      CAPTURE(room, other);
      CHECK(arrows.knows(other));
    }
  }
}

TEST_CASE("a forbidden include in a made-up text is caught at its line") {
  const auto found = forbidden("rules", "#include <string>\n\n#include \"store/database.h\"\n");
  REQUIRE(found.size() == 1);
  CHECK(found[0] == "made_up.cpp:3: \"store/database.h\": rules may not include store");
}

TEST_CASE("forbidden includes are caught however they are written") {
  CHECK(forbidden("base", "#include \"json/document.h\"\n").size() == 1);
  CHECK(forbidden("expression", "  #  include   \"rules/rule.h\"\n").size() == 1);
  CHECK(forbidden("desktop", "#include \"store/database.h\"").size() == 1);
  CHECK(forbidden("cli", "#include <wx/frame.h>\n").size() == 1);
  CHECK(forbidden("rules", "#include <boost/json/value.hpp>\n").size() == 1);
  CHECK(forbidden("json", "#include <boost/algorithm/string.hpp>\n").size() == 1);
  CHECK(forbidden("screening", "#include <fstream>\n").size() == 1);
  CHECK(forbidden("plan", "#include <z3++.h>\n").size() == 1);
  CHECK(forbidden("documents", "#include <sqlite3.h>\n").size() == 1);
  CHECK(forbidden("rules", "#include \"rule.h\"\n").size() == 1);
  CHECK(forbidden("rules", "#include \"utils/text.h\"\n").size() == 1);
  CHECK(forbidden("rules", "#include SOME_MACRO\n").size() == 1);
  CHECK(forbidden("unknown", "#include \"base/date.h\"\n").size() == 1);
}

TEST_CASE("allowed includes pass") {
  CHECK(forbidden("rules", "#include \"rules/rule.h\"\n#include \"facts/fact.h\"\n#include <vector>\n")
            .empty());
  CHECK(forbidden("json", "#include <boost/json/parse.hpp>\n").empty());
  CHECK(forbidden("desktop", "#include <wx/frame.h>\n#include \"application/open.h\"\n").empty());
  CHECK(forbidden("documents", "#include <cairo/cairo-pdf.h>\n#include <pango/pangocairo.h>\n").empty());
  CHECK(forbidden("rules", "// #include \"store/database.h\"\nint includes;\n#pragma once\n").empty());
}
