// The commands on good input: exit 0 and what a user looks for.
#include <catch2/catch.hpp>

#include "../support/content.h"
#include "run_program.h"

using namespace stile::test;

TEST_CASE("An empty response opens nothing, asks for answers and writes to nobody") {
  const Folder folder;
  for (const char* form : {"clinic", "telephone"}) {
    const Ran blank = run(std::string("blank ") + form + " --date 2026-11-25");
    REQUIRE(blank.exit == 0);
    const Ran ran = run("screen " + folder.file("blank.json", blank.out) + " --date 2026-11-25 --json");
    INFO(form << ran.err);
    REQUIRE(ran.exit == 0);
    const auto result = parsed(ran.out, "out");
    const auto root = result->root();
    CHECK(root.find("action")->string() == "none");
    CHECK(root.find("couldBecome")->string() == "emergency");
    CHECK(root.find("planState")->string() == "none");
    CHECK(contains(root.find("planBecause")->string(), "for want of answers"));
    const auto floor = *root.find("floor")->find("limits");
    CHECK(floor.find("clearance")->find("aerobic")->string() == "beforeAny");
    CHECK(floor.find("clearance")->find("strength")->string() == "beforeAny");
    CHECK_FALSE(floor.find("referrals"));
    CHECK_FALSE(root.find("reach")->find("limits")->find("referrals"));
    CHECK(root.find("floor")->find("usable")->find("aerobic")->string() == "none");
    CHECK(root.find("reach")->find("usable")->find("aerobic")->string() == "vigorous");
    CHECK(root.find("openQuestions")->at(0).find("couldBecome")->string() == "emergency");
  }
}

TEST_CASE("An empty object of facts says the same as an empty response") {
  const Folder folder;
  const Ran ran = run("screen " + folder.file("none.json", "{}") + " --date 2026-11-25");
  CHECK(ran.exit == 0);
  CHECK(contains(ran.out, "for want of answers"));
}

TEST_CASE("Papers are written, and a paper that no longer holds is taken away") {
  const Folder folder;
  const std::string client = std::string(STILE_SOURCE_DIR) + "/tests/cases/responses/maren-oakshott.json";
  const std::string settings = std::string(STILE_SOURCE_DIR) + "/tests/data/tarnside-settings.json";
  const std::string papers = " --date 2026-11-25 --settings " + settings + " --client 'Maren Oakshott' --into " + folder / "papers";
  const Ran made = run("papers " + client + papers);
  INFO(made.err);
  REQUIRE(made.exit == 0);
  CHECK(std::filesystem::exists(folder / "papers/summary.html"));
  CHECK(std::filesystem::exists(folder / "papers/handout.html"));
  CHECK_FALSE(std::filesystem::exists(folder / "papers/waiting-sheet.html"));
  CHECK(contains(slurp(folder / "papers/handout.html"), "Maren Oakshott"));
  const std::string sturdy = slurp(folder / "papers/handout.html");
  REQUIRE(run("papers " + client + papers + " --build sturdy").exit == 0);
  CHECK(slurp(folder / "papers/handout.html") == sturdy);
  REQUIRE(run("papers " + client + papers + " --build slight").exit == 0);
  CHECK(slurp(folder / "papers/handout.html") != sturdy);
  CHECK(run("papers " + client + papers + " --build heavy").exit == 2);
  const Ran held = run("papers " + folder.file("none.json", "{}") + papers);
  REQUIRE(held.exit == 0);
  CHECK_FALSE(std::filesystem::exists(folder / "papers/handout.html"));
  CHECK(std::filesystem::exists(folder / "papers/waiting-sheet.html"));
}

TEST_CASE("The content check says what it checked") {
  const Ran ran = run("check");
  CHECK(ran.exit == 0);
  CHECK(contains(ran.out, "rules"));
}

TEST_CASE("The dictionary is printed whole, each fact with its concern and how unknown counts") {
  const Ran ran = run("facts --json");
  REQUIRE(ran.exit == 0);
  const auto table = parsed(ran.out, "facts");
  const auto rows = *table->root().find("facts");
  REQUIRE(rows.size() > 100);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto row = rows.at(i);
    INFO(row.find("id")->string());
    CHECK_FALSE(row.find("concern")->string().empty());
    CHECK_FALSE(row.find("unknownAs")->string().empty());
  }
}

TEST_CASE("A content folder may be made of links, as beside the program in the build tree") {
  const Folder folder;
  std::filesystem::create_directory_symlink(std::string(STILE_SOURCE_DIR) + "/questionnaires", folder / "questionnaires");
  std::filesystem::create_directory_symlink(std::string(STILE_SOURCE_DIR) + "/rules", folder / "rules");
  const std::string command = std::string(STILE_BINARY) + " check --content " + folder.path() + " >" + folder / "out" + " 2>&1";
  INFO(slurp(folder / "out"));
  CHECK(std::system(command.c_str()) == 0);
}
