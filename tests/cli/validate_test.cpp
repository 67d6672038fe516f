// stile validate: verdict, places and exit codes, on files of any origin.
#include <catch2/catch.hpp>

#include "run_program.h"

using namespace stile::test;

namespace {

const char* const kForm =
    R"({"resourceType": "Questionnaire", "url": "https://example.org/q", "status": "active",
 "item": [{"linkId": "g", "type": "group", "repeats": true, "item": [
  {"linkId": "a", "type": "integer", "required": true, "extension": [
   {"url": "http://hl7.org/fhir/StructureDefinition/maxValue", "valueInteger": 9}]}]}]})";

std::string response(const std::string& answer) {
  return "{\"resourceType\": \"QuestionnaireResponse\", \"questionnaire\": \"https://example.org/q\",\n"
         "\"status\": \"completed\", \"item\": [{\"linkId\": \"g\", \"item\": [\n{\"linkId\": \"a\", "
         "\"answer\": [{\"valueInteger\": " +
         answer + "}]}]}]}";
}

}  // namespace

TEST_CASE("A response that satisfies its form is acceptable, whoever wrote the two") {
  const Folder folder;
  const Ran ran =
      run("validate " + folder.file("q.json", kForm) + " " + folder.file("r.json", response("9")));
  INFO(ran.out << ran.err);
  CHECK(ran.exit == 0);
  CHECK(contains(ran.out, "r.json: acceptable"));
  CHECK(ran.err.empty());
}

TEST_CASE("A problem is told with path, line, reason and remedy, and the exit code is 3") {
  const Folder folder;
  const std::string files = folder.file("q.json", kForm) + " " + folder.file("r.json", response("10"));
  const Ran text = run("validate " + files);
  CHECK(text.exit == 3);
  CHECK(contains(text.out, "error at QuestionnaireResponse.item[0].item[0].answer[0].valueInteger"));
  CHECK(contains(text.out, "r.json:3:"));
  CHECK(contains(text.out, "the value is above 9"));
  CHECK(contains(text.out, "r.json: refused"));
  const Ran json = run("validate --json " + files);
  CHECK(json.exit == 3);
  CHECK(contains(json.out, "\"acceptable\": false"));
  CHECK(contains(json.out, "\"path\": \"QuestionnaireResponse.item[0].item[0].answer[0].valueInteger\""));
  CHECK(contains(json.out, "\"line\": 3"));
}

TEST_CASE("A form that cannot be read refuses, and a response without its form is not called acceptable") {
  const Folder folder;
  const Ran form = run(
      "validate " + folder.file("q.json", R"({"resourceType": "Questionnaire", "status": "active", "item": [
 {"linkId": "a", "type": "bolean"}]})"));
  CHECK(form.exit == 3);
  CHECK(contains(form.out, "error at Questionnaire.item[0].type"));
  const Ran alone = run("validate " + folder.file("r.json", response("9")));
  CHECK(alone.exit == 3);
  CHECK(contains(alone.out, "is not among those given"));
  CHECK(contains(alone.out, "r.json: not checked"));
  const Ran noJson = run("validate " + folder.file("x.json", "{"));
  CHECK(noJson.exit == 3);
  CHECK(contains(noJson.out, "x.json:1:"));
  CHECK(run("validate " + folder / "nothing.json").exit == 4);
  CHECK(run("validate --now yesterday " + folder.file("r.json", response("9"))).exit == 2);
}

TEST_CASE("Responses to our own forms need no form beside them") {
  const Folder folder;
  const Ran blank = run("blank clinic --date 2026-11-25");
  REQUIRE(blank.exit == 0);
  const Ran ran = run("validate " + folder.file("blank.json", blank.out) + " --now 2026-11-25T10:00:00Z");
  INFO(ran.out << ran.err);
  CHECK(ran.exit == 0);
  CHECK(contains(ran.out, "blank.json: acceptable"));
}
