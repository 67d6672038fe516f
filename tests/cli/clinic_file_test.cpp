// The commands on a clinic file, through the real binary: what is printed, and the exit codes.
#include <catch2/catch.hpp>
#include <cstdlib>

#include "../support/content.h"
#include "clinic_folder.h"

using namespace stile::test;

TEST_CASE("From a new clinic file to a signed screening and a verified backup") {
  const ClinicFolder clinic;
  REQUIRE(clinic.made.exit == 0);
  CHECK(contains(clinic.made.out, "Recovery phrase"));
  CHECK(contains(clinic.stile("client find", "oaks").out, clinic.id));
  const std::string answers = clinic.folder.file("answers", "{\"fallsLastYear\": 2}\n{\"nonsense\": 1}\n{\"desiredIntensity\": \"light\"}\n");
  const Ran saved = clinic.stile("client answers", "maren --date 2026-11-25 <" + answers);
  CHECK(saved.exit == 3);
  CHECK(saved.out == "Saved\nSaved\n");
  CHECK(contains(saved.err, "nonsense"));
  const Ran screened = clinic.stile("client screen", "maren --date 2026-11-25");
  REQUIRE(screened.exit == 0);
  const std::size_t at = screened.out.find("Filed as ");
  REQUIRE(at != std::string::npos);
  CHECK(contains(clinic.stile("worklist", "--date 2026-11-25").out, "sign it off"));
  const std::string entry = clinic.folder.file("signoff.json", "{\"date\": \"2026-11-25\", \"screening\": \"" + screened.out.substr(at + 9, 32) + "\"}");
  CHECK(clinic.stile("client file", "maren signOff " + entry).exit == 0);
  CHECK(clinic.stile("worklist", "--date 2026-11-25").out == "Nothing is due.\n");
  const Ran backup = clinic.stile("file backup", "--into " + clinic.folder / "backups");
  REQUIRE(backup.exit == 0);
  const std::string copy = backup.out.substr(0, backup.out.find('\n'));
  const Ran drill = run("file drill --file " + copy + " --as ines --passphrase-fd 3 3<" + clinic.passphrase);
  CHECK(drill.exit == 0);
  CHECK(contains(drill.out, "opens, verifies and reads back: 1 records"));
  CHECK(contains(clinic.stile("file verify").out, "all fit"));
}

TEST_CASE("Exit codes: 2 usage, 3 refused, 4 file or disk, 5 passphrase or lock") {
  const ClinicFolder clinic;
  const std::string wrong = clinic.folder.file("wrong", "not the right passphrase\n");
  const Ran refused = clinic.stile("worklist", "", wrong);
  CHECK(refused.exit == 5);
  CHECK(contains(refused.err, "the passphrase does not fit"));
  CHECK(run("worklist --file " + clinic.folder / "none.stile" + " --as ines --passphrase-fd 3 3<" + clinic.passphrase).exit == 4);
  CHECK(clinic.stile("client file", "maren nothing " + clinic.passphrase).exit == 2);
  CHECK(clinic.stile("client show", "nobody").exit == 2);
  CHECK(clinic.stile("client add", clinic.folder.file("bad.json", R"({"given": "A"})")).exit == 3);
  CHECK(run("worklist --file " + clinic.file + " --as ines --passphrase 'on the command line'").exit == 2);
  const std::string bytes = slurp(clinic.file);
  clinic.folder.file("t.stile", bytes.substr(0, bytes.size() / 2));
  const Ran cut = clinic.stile("file verify");
  CHECK(cut.exit == 4);
  CHECK(contains(cut.err, "backup"));
  clinic.folder.file("t.stile", "");
  CHECK(clinic.stile("file verify").exit == 3);
}

TEST_CASE("A second process is told who holds the file, and verifies and backs up beside it") {
  const ClinicFolder clinic;
  // Holds the file until its input ends: the pipe stays open for as long as sleep runs.
  const std::string holder = "(echo '{\"fallsLastYear\": 2}'; sleep 20) | " + std::string(STILE_BINARY) + " --content " + STILE_SOURCE_DIR + " client answers --file " +
                             clinic.file + " --as ines --passphrase-fd 3 maren 3<" + clinic.passphrase + " >" + clinic.folder / "held" + " 2>&1 &";
  REQUIRE(std::system(holder.c_str()) == 0);
  for (int i = 0; i < 600 && slurp(clinic.folder / "held").empty(); ++i)
    if (std::system("sleep 0.1") != 0) break;
  REQUIRE(slurp(clinic.folder / "held") == "Saved\n");
  const Ran second = clinic.stile("client show", "maren");
  CHECK(second.exit == 5);
  CHECK(contains(second.err, "in use by ines on "));
  CHECK(clinic.stile("file verify").exit == 0);
  CHECK(clinic.stile("file backup", "--into " + clinic.folder / "backups").exit == 0);
}
