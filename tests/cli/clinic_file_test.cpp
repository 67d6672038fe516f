// The commands on a clinic file, through the real binary: what is printed, and the exit codes.
#include <catch2/catch.hpp>
#include <cstdlib>

#include "../support/content.h"
#include "clinic_folder.h"

using namespace stile::test;

TEST_CASE("A client's choice of figure is kept, and taken back") {
  const ClinicFolder clinic;
  CHECK(clinic.stile("client build", clinic.id + " slight").exit == 0);
  CHECK(contains(clinic.stile("client show", clinic.id).out, "Drawings show the slight figure"));
  CHECK(clinic.stile("client build", clinic.id + " heavy").exit == 2);
  CHECK(clinic.stile("client build", clinic.id + " clinic").exit == 0);
  CHECK_FALSE(contains(clinic.stile("client show", clinic.id).out, "Drawings show"));
}

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

TEST_CASE("The letter that an event drafted goes out as PDF once the client agrees, and stays in the record") {
  const ClinicFolder clinic;
  REQUIRE(clinic.stile("clinic settings", std::string(STILE_SOURCE_DIR) + "/tests/data/tarnside-settings.json").exit == 0);
  const std::string fall = clinic.folder.file("fall.json", R"({"date": "2026-11-20", "what": "fall", "doing": "the side step", "done": "helped up", "outcome": "a bruise"})");
  const Ran event = clinic.stile("client file", "maren event " + fall);
  REQUIRE(event.exit == 0);
  const std::size_t at = event.out.find("Draft of a letter (");
  REQUIRE(at != std::string::npos);
  const std::string letter = event.out.substr(at + 19, 32), paper = clinic.folder / "letter.pdf";
  const Ran refused = clinic.stile("client letter", "maren " + letter + " --to " + paper);
  CHECK(refused.exit == 3);
  CHECK(contains(refused.err, "agreed to share with the physician"));
  const std::string consent = clinic.folder.file("consent.json", R"({"date": "2026-11-20", "what": "physician", "given": true, "how": "told in the clinic"})");
  REQUIRE(clinic.stile("client file", "maren consent " + consent).exit == 0);
  const Ran written = clinic.stile("client letter", "maren " + letter + " --date 2026-11-21 --to " + paper);
  INFO(written.err);
  REQUIRE(written.exit == 0);
  REQUIRE(std::system(("pdftotext -layout " + paper + " " + clinic.folder / "letter.txt").c_str()) == 0);
  const std::string text = slurp(clinic.folder / "letter.txt");
  for (const char* part : {"Maren Oakshott", "the side step", "helped up", "a bruise", "20 November 2026", "Tarnside"}) CHECK(contains(text, part));
  CHECK(contains(clinic.stile("client export", "maren").out, "event-letter"));
}

TEST_CASE("Rules that are set aside more often than not are shown to the lead, without a name") {
  const ClinicFolder clinic;
  const Ran none = clinic.stile("clinic overridden");
  CHECK(none.exit == 0);
  CHECK(none.out == "No rule is set aside that often.\n");
  const std::string answers = clinic.folder.file("answers", "{\"fallsLastYear\": 2}\n");
  REQUIRE(clinic.stile("client answers", "maren --date 2026-11-25 <" + answers).exit == 0);
  const Ran screened = clinic.stile("client screen", "maren --date 2026-11-25");
  const std::size_t at = screened.out.find("Filed as ");
  REQUIRE(at != std::string::npos);
  const std::string setAside = clinic.folder.file("override.json", "{\"date\": \"2026-11-25\", \"screening\": \"" + screened.out.substr(at + 9, 32) +
                                                                       "\", \"rule\": \"falls-key-question\", \"instead\": \"no\", \"reason\": \"told otherwise\"}");
  const Ran filed = clinic.stile("client file", "maren override " + setAside);
  INFO(filed.err);
  REQUIRE(filed.exit == 0);
  const Ran often = clinic.stile("clinic overridden");
  CHECK(contains(often.out, "falls-key-question\tset aside 1 of 1 times"));
  CHECK_FALSE(contains(often.out, "Maren"));
}
