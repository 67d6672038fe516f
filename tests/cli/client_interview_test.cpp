// The interview on the terminal from a clinic file: killed at any point, nothing that was answered is
// lost, and the file is whole.
#include <catch2/catch.hpp>

#include "conversation.h"
#include "run_program.h"

using namespace stile::test;

namespace {

struct InterviewedClinic {
  InterviewedClinic() {
    passphrase = folder.file("passphrase", "a quiet mill by the river\n");
    REQUIRE(run("clinic create --file " + file + " ines --name 'Ines Calloway' --profession physiotherapist --new-passphrase-fd 3 3<" + passphrase).exit == 0);
    REQUIRE(stile("client add", folder.file("client.json", R"({"given": "Maren", "family": "Oakshott", "born": "1958-03-14"})")).exit == 0);
  }

  std::string arguments(const std::string& command, const std::string& more) const {
    return command + " --file " + file + " --as ines --passphrase-fd 3 " + more + " 3<" + passphrase;
  }
  Ran stile(const std::string& command, const std::string& more) const { return run(arguments(command, more)); }
  Conversation talk() const {
    return Conversation({"/bin/sh", "-c", std::string("exec ") + STILE_BINARY + " --content " + STILE_SOURCE_DIR + " " +
                                              arguments("client interview", "maren --date 2026-11-25 --lines")});
  }

  Folder folder;
  std::string file = folder / "t.stile", passphrase;
};

/// No to every list and every question of yes or no, not sure of the rest.
std::string answerTo(const std::string& asked) {
  if (contains(asked, "no to all of these") || contains(asked, "y yes, n no")) return "n";
  return contains(asked, "In words") ? "/u" : "u";
}

std::size_t linesWith(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

}  // namespace

TEST_CASE("Killed while it asks, an interview from a clinic file goes on where it was") {
  const InterviewedClinic clinic;
  std::size_t before = 0;
  for (const int answers : {1, 3, 6}) {
    auto conversation = clinic.talk();
    std::string said = conversation.listen();
    INFO(said);
    CHECK(contains(said, "Going on where it was left") == (before > 0));
    for (int i = 0; i < answers; ++i) {
      conversation.answer(answerTo(said.substr(said.rfind("\n\n") == std::string::npos ? 0 : said.rfind("\n\n"))));
      said = conversation.listen();
    }
    conversation.kill();  // the next question was asked, so the answer before it is on the disk
    const Ran kept = clinic.stile("client export", "maren");
    REQUIRE(kept.exit == 0);
    const std::size_t now = linesWith(kept.out, "linkId");
    CHECK(now > before);
    before = now;
    CHECK(contains(clinic.stile("file verify", "").out, "all fit"));
  }
  const Ran filed = clinic.stile("client screen", "maren --date 2026-11-25");
  CHECK(filed.exit == 0);
  CHECK(contains(filed.out, "Filed as "));
}
