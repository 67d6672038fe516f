// The same input gives the same bytes, in any time zone and under a locale with a decimal comma.
#include <catch2/catch.hpp>

#include "run_program.h"

using namespace stile::test;

TEST_CASE("Output is the same bytes in three time zones and under a decimal comma") {
  const Folder folder;
  const std::string client = std::string(STILE_SOURCE_DIR) + "/tests/cases/responses/maren-oakshott.json";
  // The locale is built here, so that the test does not depend on what the machine has.
  const std::string build = "localedef -i de_DE -f UTF-8 " + folder / "comma" + " >/dev/null 2>&1";
  REQUIRE(WEXITSTATUS(std::system(build.c_str())) <= 1);
  REQUIRE(std::filesystem::exists(folder / "comma/LC_NUMERIC"));
  const std::string comma = "LOCPATH=" + folder.path() + " LC_ALL=comma";
  for (const std::string& arguments : {"screen " + client + " --date 2026-11-25 --json", "screen " + client + " --date 2026-11-25",
                                      std::string("facts"), "questions " + client + " --date 2026-11-25"}) {
    const Ran usual = run(arguments, "TZ=UTC LC_ALL=C");
    INFO(arguments << "\n" << usual.err);
    REQUIRE(usual.exit == 0);
    REQUIRE_FALSE(usual.out.empty());
    for (const std::string& environment : {std::string("TZ=Pacific/Kiritimati"), std::string("TZ=America/Los_Angeles"),
                                          std::string("TZ=Asia/Kathmandu"), comma + " TZ=Europe/Berlin"}) {
      const Ran other = run(arguments, environment);
      CHECK(other.out == usual.out);
    }
  }
}
