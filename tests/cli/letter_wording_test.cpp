// stile papers --wording, and --letter: a letter's words are changed before it goes out.
#include <catch2/catch.hpp>

#include "run_program.h"

using namespace stile::test;

namespace {

namespace fs = std::filesystem;

std::string papersOfWaiting(const Folder& folder, const std::string& more) {
  fs::copy_file(std::string(STILE_SOURCE_DIR) + "/tests/documents/people/waiting.json",
                folder / "person.json", fs::copy_options::overwrite_existing);
  return "papers " + folder / "person.json" + " --into " + folder / "into" + " --format html " + more;
}

}  // namespace

TEST_CASE("The wording of a letter is written alone, changed in a file, and printed in the letter") {
  const Folder folder;
  Ran ran = run(papersOfWaiting(folder, "--date 2026-11-25 --wording"));
  INFO(ran.err);
  REQUIRE(ran.exit == 0);
  CHECK(contains(ran.out, "clearance-letter.txt"));
  CHECK_FALSE(fs::exists(folder / "into/clearance-letter.html"));
  std::string wording = slurp(folder / "into/clearance-letter.txt");
  REQUIRE(contains(wording, "[Added by us]\n"));
  const std::string changed = folder.file("changed.txt", wording + "He is keen to walk\nagain.\n");
  ran = run(papersOfWaiting(folder, "--date 2026-11-25 --letter " + changed));
  INFO(ran.err);
  REQUIRE(ran.exit == 0);
  const std::string letter = slurp(folder / "into/clearance-letter.html");
  CHECK(contains(letter, "He is keen to walk again."));
  CHECK(contains(letter, "Reworded by who sends it: Added by us."));

  // Three weeks on the day to reply by is another one: the wording fits no longer.
  ran = run(papersOfWaiting(folder, "--date 2026-12-16 --letter " + changed));
  CHECK(ran.exit == 3);
  CHECK(contains(ran.err, "write the wording anew"));
  ran =
      run(papersOfWaiting(folder, "--date 2026-11-25 --letter " + folder.file("other.txt", "Dear Rowan\n")));
  CHECK(ran.exit == 3);
  CHECK(contains(ran.err, "this is no wording of a letter"));
  wording.replace(wording.find("clearance-letter"), 16, "outcome-letter");
  ran = run(papersOfWaiting(folder, "--date 2026-11-25 --letter " + folder.file("outcome.txt", wording)));
  CHECK(ran.exit == 3);
  CHECK(contains(ran.err, "this letter is not written"));
}
