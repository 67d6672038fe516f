#include "answers/score.h"

#include "validation_sample.h"

using namespace stile;
using namespace stile::sample;

namespace {

std::string scored(const std::string& code, const std::string& score) {
  return R"({"valueCoding": {"code": ")" + code + R"(", "extension": [{"url":
      "http://hl7.org/fhir/StructureDefinition/ordinalValue", "valueDecimal": )" +
         score + "}]}}";
}

/// The score of "a", whose item has these extensions, for these codes; "none" when there is no score.
std::string scoreOf(const std::string& more, const std::vector<std::string>& codes) {
  const auto forms = loadedAny(item("a", "open-choice",
                                    "\"repeats\": true, \"answerOption\": [" + scored("x", "1.5") + "," +
                                        scored("y", "2") + R"(, {"valueCoding": {"code": "z"}}])" + more));
  std::string list;
  for (const auto& code : codes)
    list += (list.empty() ? "" : ",") + ("{\"valueCoding\": {\"code\": \"" + code + "\"}}");
  base::Issues issues;
  const auto document = json::Document::parse(responseTo(answered("a", list)), "r.json", issues);
  REQUIRE(document);
  const answers::ResponseTree tree(document->root(), *forms.forms().front(), issues);
  const auto score = answers::scoreOf(*tree.root().items.front());
  return score ? score->toText() : "none";
}

}  // namespace

TEST_CASE("Scores of chosen options add up, times the weight of the question") {
  CHECK(scoreOf("", {"x"}) == "1.5");
  CHECK(scoreOf("", {"x", "y"}) == "3.5");
  CHECK(scoreOf(", " + extensions(extension("itemWeight", "\"valueDecimal\": 2")), {"x", "y"}) == "7");
}

TEST_CASE("A missing score is not nought") {
  CHECK(scoreOf("", {"x", "z"}) == "none");
  CHECK(scoreOf("", {"elsewhere"}) == "none");
}
