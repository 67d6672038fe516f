// stile evaluate: results with types and places, located errors, and whole suites.
#include <catch2/catch.hpp>

#include "../support/content.h"
#include "run_program.h"

using namespace stile::test;

namespace {

const char* const kPatient = R"({
  "resourceType": "Patient",
  "birthDate": "1961-03-09",
  "name": [{"given": ["Maren", "Elise"], "family": "Oakshott"}],
  "multipleBirthInteger": 2
})";

const char* const kSuite = R"([
  {"group": "names", "name": "given", "inputfile": "patient.json", "expression": "Patient.name.given",
   "outputs": [{"type": "string", "value": "Maren"}, {"type": "string", "value": "Elise"}]},
  {"group": "names", "name": "wrong", "inputfile": "patient.xml", "expression": "name.family",
   "outputs": [{"type": "string", "value": "Somebody"}]},
  {"group": "errors", "name": "sum", "inputfile": null, "invalid": "semantic", "expression": "@2020-01-01 + 7",
   "outputs": []},
  {"group": "errors", "name": "no error", "inputfile": null, "invalid": "execution", "expression": "1 + 1",
   "outputs": []}
])";

}  // namespace

TEST_CASE("An expression gives its items with type, value and place") {
  const Folder folder;
  const std::string patient = folder.file("patient.json", kPatient);
  const Ran ran = run("evaluate 'name.given | multipleBirth | (birthDate + 1 year)' " + patient);
  INFO(ran.err);
  REQUIRE(ran.exit == 0);
  const auto result = parsed(ran.out, "out");
  REQUIRE(result->root().size() == 4);
  CHECK(result->root().at(0).find("type")->string() == "FHIR.string");
  CHECK(result->root().at(0).find("value")->string() == "Maren");
  CHECK(result->root().at(0).find("line")->numberText() == "4");
  CHECK(result->root().at(0).find("column")->numberText() == "23");
  CHECK(result->root().at(2).find("type")->string() == "FHIR.integer");
  CHECK(result->root().at(2).find("value")->numberText() == "2");
  CHECK(result->root().at(3).find("type")->string() == "System.Date");
  CHECK(result->root().at(3).find("value")->string() == "1962-03-09");
  CHECK_FALSE(result->root().at(3).find("line"));
}

TEST_CASE("The clock and the variables of an expression come from the command line") {
  const Folder folder;
  const std::string patient = folder.file("patient.json", kPatient);
  const Ran ran =
      run("evaluate 'today() - %span >= %patient.birthDate' --now 2026-11-25T10:00:00Z --variable 'years=65 "
          "years' --resource patient=" +
          patient);
  INFO(ran.err);
  REQUIRE(ran.exit == 0);
  CHECK(parsed(ran.out, "out")->root().at(0).find("value")->boolean());
  const Ran none = run("evaluate '{}'");
  CHECK(none.exit == 0);
  CHECK(none.out == "[]\n");
}

TEST_CASE("An expression that is wrong is refused with its place") {
  const Folder folder;
  const std::string patient = folder.file("patient.json", kPatient);
  const Ran unknown = run("evaluate 'name.frist()' " + patient);
  CHECK(unknown.exit == 3);
  CHECK(unknown.out.empty());
  CHECK(contains(unknown.err, "expression:1:6"));
  CHECK(contains(unknown.err, "did you mean \"first\"?"));
  CHECK(contains(unknown.err, "     ^"));
  const Ran several = run("evaluate 'name.given + 1' " + patient);
  CHECK(several.exit == 3);
  CHECK(contains(several.err, "there are 2"));
  const Ran strict = run("evaluate --strict 'Patient.nmae' " + patient);
  CHECK(strict.exit == 3);
  CHECK(contains(strict.err, "Patient has no element nmae"));
  CHECK(run("evaluate 'Patient.nmae' " + patient).out == "[]\n");
  CHECK(run("evaluate '1' " + folder.file("broken.json", "{")).exit == 3);
  CHECK(run("evaluate '1' " + folder / "absent.json").exit == 4);
  CHECK(run("evaluate 1 --now yesterday").exit == 2);
  CHECK(run("evaluate").exit == 2);
  CHECK(run("evaluate 1 --variable x").exit == 2);
}

TEST_CASE("A suite gets a verdict for each case, and totals") {
  const Folder folder;
  folder.file("patient.json", kPatient);
  const std::string suite = folder.file("suite.json", kSuite);
  const Ran ran = run("evaluate --suite " + suite + " --inputs " + folder.path());
  CHECK(ran.exit == 3);
  CHECK(contains(ran.out, "agrees   names/given\n"));
  CHECK(contains(ran.out, "differs  names/wrong: wanted string Somebody, given string Oakshott\n"));
  CHECK(contains(ran.out, "agrees   errors/sum\n"));
  CHECK(contains(ran.out, "differs  errors/no error: wanted an error (execution), given Integer 2\n"));
  CHECK(contains(ran.out, "2 agree, 2 differ, of 4 cases.\n"));
  const Ran asJson = run("evaluate --json --suite " + suite + " --inputs " + folder.path());
  const auto result = parsed(asJson.out, "out");
  CHECK(result->root().find("agreeing")->numberText() == "2");
  CHECK(result->root().find("cases")->size() == 4);
  CHECK(run("evaluate --suite " + suite).exit == 2);
  CHECK(run("evaluate --suite " + suite + " --inputs " + folder / "absent").exit == 4);
  const Ran wrong =
      run("evaluate --suite " + folder.file("wrong.json", "[{\"name\": \"x\"}]") + " --inputs .");
  CHECK(wrong.exit == 3);
  CHECK(contains(wrong.err, "expression"));
}
