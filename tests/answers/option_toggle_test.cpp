#include "answers/option_toggle.h"

#include "answers/draft.h"
#include "validation_sample.h"

using namespace stile;
using namespace stile::sample;
using Catch::Contains;

namespace {

/// A boolean "m", and a choice "a" of hip and knee, with knee only while the expression holds.
std::string form(const std::string& expression) {
  return item("m", "boolean") + "," +
         item("a", "choice",
              "\"answerOption\": [" + option("hip") + "," + option("knee") + "], " +
                  extensions(
                      R"({"url": "http://hl7.org/fhir/uv/sdc/StructureDefinition/)"
                      R"(sdc-questionnaire-answerOptionsToggleExpression", "extension": [{"url": "option", )"
                      R"("valueCoding": {"system": "https://stile.example/option", "code": "knee"}}, )"
                      R"({"url": "expression", )" +
                      fhirPath(expression) + "}]}"));
}

const std::string kWhileMarked = "%resource.item.where(linkId='m').answer.value = true";

std::string of(const std::string& expression, const std::string& marked, const std::string& code) {
  return problems(
      form(expression),
      answered("m", "{\"valueBoolean\": " + marked + "}") + "," +
          answered("a", R"({"valueCoding": {"system": "https://stile.example/option", "code": ")" + code +
                            "\"}}"));
}

}  // namespace

TEST_CASE("A toggled option may be chosen only while its condition holds") {
  CHECK(of(kWhileMarked, "true", "knee").empty());
  CHECK_THAT(of(kWhileMarked, "false", "knee"), Contains("error") && Contains("\"knee\" may not be chosen"));
  CHECK(of(kWhileMarked, "false", "hip").empty());
  CHECK_THAT(of("%patient.active", "true", "knee"), Contains("note") && Contains("cannot be decided"));
}

TEST_CASE("A draft tells which options are shut") {
  const auto forms = loadedAny(form(kWhileMarked));
  answers::Draft draft(*forms.forms().front(), "2026-11-25T10:00:00+00:00");
  REQUIRE(draft.questions().size() == 2);
  REQUIRE(draft.questions()[1]->shut.size() == 1);
  CHECK(draft.questions()[1]->shut.front()->code == "knee");
  draft.answer(*draft.questions()[0], {{"Boolean", "true", {}}});
  CHECK(draft.questions()[1]->shut.empty());
}
