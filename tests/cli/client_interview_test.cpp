// The interview out of a clinic file at a terminal, as a clinician at a keyboard holds it.
#include <catch2/catch.hpp>

#include "clinic_folder.h"
#include "conversation.h"

using namespace stile::test;

namespace {

Conversation begin(const ClinicFolder& clinic) {
  return Conversation({STILE_BINARY, "--content", STILE_SOURCE_DIR, "client", "interview", "oakshott", "--file", clinic.file, "--as", "ines",
                       "--date", "2026-11-25"},
                      Conversation::Through::Terminal);
}

/// One key, where one is enough.
std::string keysFor(const std::string& asked) {
  if (contains(asked, "date of birth") || contains(asked, "A date")) return "1958-03-14\n";
  if (contains(asked, "The number")) return "1\n";
  return "n";
}

}  // namespace

TEST_CASE("At a terminal the passphrase is not shown, one key answers, and a killed interview goes on") {
  const ClinicFolder clinic;
  constexpr int kAnswered = 8;
  std::string shown;
  {
    auto conversation = begin(clinic);
    shown = conversation.listen();
    CHECK(contains(shown, "assphrase"));
    conversation.answer("a quiet mill by the river");
    std::string asked = conversation.listen();
    for (int i = 0; i < kAnswered; ++i) {
      REQUIRE_FALSE(conversation.isOver());
      conversation.press(keysFor(asked.substr(asked.rfind("\r\n\r\n"))));
      shown += asked;
      asked = conversation.listen();
    }
    conversation.kill();
  }
  INFO(shown);
  CHECK_FALSE(contains(shown, "quiet mill"));
  CHECK(contains(shown, "no to all of these"));
  auto again = begin(clinic);
  again.listen();
  again.answer("a quiet mill by the river");
  const std::string goingOn = again.listen();
  INFO(goingOn);
  CHECK(contains(goingOn, "Going on where it was left"));
  again.press(contains(goingOn, "In words") || contains(goingOn, "A date") ? "/q\n" : "q");
  const std::string end = again.listen();
  CHECK(contains(end, "every answer is in the clinic file"));
  CHECK(again.finish() == 0);
  CHECK(contains(clinic.stile("file verify").out, "all fit"));
}

TEST_CASE("What must be done now is told though the disk is full") {
  const ClinicFolder clinic;
  ::signal(SIGXFSZ, SIG_IGN);  // the program inherits it, and writing then fails
  auto conversation = begin(clinic);
  conversation.listen();
  conversation.answer("a quiet mill by the river");
  REQUIRE(contains(conversation.listen(), "Pressure or pain in the chest"));
  conversation.fillDisk();
  conversation.press("1\n");
  std::string end;
  while (!conversation.isOver()) end += conversation.listen();  // a colon is no question here
  INFO(end);
  CHECK(contains(end, "STOP. THIS IS AN EMERGENCY."));
  CHECK((contains(end, "the disk is full") || contains(end, "the disk gives an error")));
  CHECK(conversation.finish() == 4);
}
