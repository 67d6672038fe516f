// Bad input: one clear message a problem, with place and remedy, a non-zero exit, and no output.
#include <catch2/catch.hpp>

#include "run_program.h"

using namespace stile::test;

namespace {

struct Bad {
  const char* what;
  const char* text;
  const char* says;
};

// Plain facts, each with one thing wrong.
const Bad kBad[] = {
    {"malformed", "{\"age\": }", ":1:9:"},
    {"empty file", "", "the file is empty"},
    {"unknown fact", "{\"restingSistolic\": \"120 mm[Hg]\"}", "restingSystolic"},
    {"wrong type", "{\"chestDiscomfort\": 3}", "chestDiscomfort"},
    {"no unit", "{\"restingSystolic\": 120}", "unit"},
    {"wrong unit", "{\"restingSystolic\": \"120 kg\"}", "kg"},
    {"impossible value", "{\"restingSystolic\": \"1200 mm[Hg]\"}", "1200"},
    {"born tomorrow", "{\"birthDate\": \"2026-11-26\"}", "birthDate"},
    {"impossible day", "{\"birthDate\": \"1960-02-30\"}", "1960-02-30"},
    {"duplicate key", "{\"age\": 60, \"age\": 61}", "age"},
    {"number too large", "{\"age\": 1e400}", "1e400"},
    {"unknown option", "{\"sex\": \"man\"}", "sex"},
    {"under 18", "{\"age\": 17}", "18"},
    {"not an object", "[1, 2]", "neither"},
    {"other resource", "{\"resourceType\": \"Patient\"}", "Patient"},
    {"unknown form", "{\"resourceType\": \"QuestionnaireResponse\", \"questionnaire\": \"https://stile.example/questionnaire/nothing\", \"status\": \"completed\"}", "nothing"},
};

}  // namespace

TEST_CASE("Every kind of bad input is refused with its place, and nothing is printed as a result") {
  for (const Bad& bad : kBad) {
    const Folder folder;
    const std::string file = folder.file("client.json", bad.text);
    const Ran ran = run("screen " + file + " --date 2026-11-25");
    INFO(bad.what << "\n" << ran.err << ran.out.substr(0, 300));
    CHECK(ran.exit == 3);
    CHECK(ran.out.empty());
    CHECK(contains(ran.err, "client.json:"));
    CHECK(contains(ran.err, bad.says));
  }
}

TEST_CASE("Several problems are told together, one each") {
  const Folder folder;
  const Ran ran = run("screen " + folder.file("two.json", "{\n \"nothing\": 1,\n \"restingSystolic\": \"1200 mm[Hg]\"\n}") + " --date 2026-11-25");
  CHECK(ran.exit == 3);
  CHECK(contains(ran.err, "two.json:2:"));
  CHECK(contains(ran.err, "two.json:3:"));
}

TEST_CASE("A missing file and a missing content folder exit with 4") {
  CHECK(run("screen /nowhere/client.json").exit == 4);
  const Folder folder;
  const Ran ran = run("--content " + folder.path() + " check");
  CHECK(ran.exit != 0);
}

TEST_CASE("Wrong usage exits with 2 and says how it is meant") {
  CHECK(run("").exit == 2);
  CHECK(run("screen").exit == 2);
  CHECK(run("dance").exit == 2);
  const Folder folder;
  CHECK(run("screen " + folder.file("c.json", "{}") + " --date yesterday").exit == 2);
  CHECK(run("--help").exit == 0);
}

TEST_CASE("An implausible but possible value is asked back, not refused") {
  const Folder folder;
  const Ran ran = run("screen " + folder.file("c.json", R"({"bodyHeight": "120 cm"})") + " --date 2026-11-25 --json");
  INFO(ran.err);
  CHECK(ran.exit == 0);
  CHECK(contains(ran.out, "\"askedBack\""));
  CHECK(contains(ran.err, "bodyHeight"));
}

TEST_CASE("A full disk is told, and exits with 4") {
  const Folder folder;
  const std::string file = folder.file("c.json", "{}");
  const std::string command = std::string(STILE_BINARY) + " --content " + STILE_SOURCE_DIR + " screen " + file +
                              " --date 2026-11-25 >/dev/full 2>" + folder / "err";
  const int status = std::system(command.c_str());
  CHECK(WEXITSTATUS(status) == 4);
  CHECK(contains(slurp(folder / "err"), "could not be written"));
}
