// Papers when something is in the way: a message that says what, and never half a file.
#include <catch2/catch.hpp>

#include "run_program.h"

using namespace stile::test;

namespace {

namespace fs = std::filesystem;

std::string papers(const Folder& folder, const std::string& into) {
  const std::string person = std::string(STILE_SOURCE_DIR) + "/tests/documents/people/healthy.json";
  fs::copy_file(person, folder / "healthy.json", fs::copy_options::overwrite_existing);
  return "papers " + folder / "healthy.json" + " --date 2026-11-25 --into " + into;
}

/// Papers that are there are whole, and nothing else is.
void checkWhole(const std::string& into) {
  std::error_code ignored;
  for (const auto& entry : fs::directory_iterator(into, ignored)) {
    const std::string name = entry.path().filename().string(), text = slurp(entry.path().string());
    INFO(name);
    if (name.ends_with(".pdf"))
      CHECK(text.find("%%EOF", text.size() - std::min<std::size_t>(text.size(), 16)) != std::string::npos);
    else if (name.ends_with(".html"))
      CHECK(text.ends_with("</html>\n"));
    else
      FAIL_CHECK("a file nobody asked for");
  }
}

}  // namespace

TEST_CASE("A missing typeface is named with its package, and no paper is written") {
  const Folder folder;
  const std::string none = folder.file("fonts.conf", "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig></fontconfig>\n");
  const Ran ran = run(papers(folder, folder / "into"), "FONTCONFIG_FILE=" + none);
  INFO(ran.err);
  CHECK(ran.exit == 4);
  CHECK(contains(ran.err, "Clear Sans"));
  CHECK(contains(ran.err, "fonts-clear-sans"));
  CHECK_FALSE(fs::exists(folder / "into"));
}

TEST_CASE("A disk that fills up is told, with what was written, and every file is whole") {
  const Folder folder;
  // Writing past the limit fails as on a full disk.
  const Ran ran = run(papers(folder, folder / "into"), "trap '' XFSZ; ulimit -f 80;");
  INFO(ran.err);
  CHECK(ran.exit == 4);
  CHECK(contains(ran.err, "cannot be written"));
  CHECK(contains(ran.err, "papers were written, each of them whole"));
  checkWhole(folder / "into");
}

TEST_CASE("A folder that cannot be made, and a name that is taken, are told by their paths") {
  const Folder folder;
  const std::string file = folder.file("file", "not a folder");
  Ran ran = run(papers(folder, file + "/into"));
  INFO(ran.err);
  CHECK(ran.exit == 4);
  CHECK(contains(ran.err, file));
  CHECK(contains(ran.err, "choose another folder"));
  fs::create_directories(folder / "taken/handout.html/inside");
  ran = run(papers(folder, folder / "taken") + " --format html");
  CHECK(ran.exit == 4);
  CHECK(contains(ran.err, "handout.html: cannot be written"));
  for (const auto& entry : fs::directory_iterator(folder / "taken")) CHECK(entry.path().extension() == ".html");
}
