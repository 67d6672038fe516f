#include "questionnaire/value_set.h"

#include <catch2/catch.hpp>

#include "sample_form.h"

using namespace stile;
using namespace stile::sample;
using Catch::Contains;

namespace {

/// The codes of `#v` in a form that contains these resources; "…" at the end when there may be more.
std::string codes(const std::string& contained) {
  const auto forms =
      loadedAny(item("a", "choice", R"("answerValueSet": "#v")"), "\"contained\": [" + contained + "]");
  const auto& found = *forms.forms().front()->find("a");
  std::string list;
  for (const auto& each : found.options) list += each.code + " ";
  return list + (found.hasAllOptions ? "" : "…");
}

std::string set(const std::string& id, const std::string& body) {
  return R"({"resourceType": "ValueSet", "id": ")" + id + R"(", "url": "https://example.org/)" + id + "\", " +
         body + "}";
}

std::string include(const std::string& parts) {
  return "\"compose\": {\"include\": [" + parts + "]}";
}

const std::string kAB = R"({"system": "s", "concept": [{"code": "a", "display": "A"}, {"code": "b"}]})";

}  // namespace

TEST_CASE("Concepts of a contained value set are options, with words, label and score") {
  const auto forms =
      loadedAny(item("q", "choice", R"("answerValueSet": "#v")"),
                "\"contained\": [" + set("v", include(R"({"system": "s", "concept": [{"code": "a",
      "display": "A", "designation": [{"language": "de", "value": "Ah"}], "extension": [
      {"url": "http://hl7.org/fhir/StructureDefinition/valueset-label", "valueString": "1."},
      {"url": "http://hl7.org/fhir/StructureDefinition/ordinalValue", "valueDecimal": 4}]}]})")) +
                    "]");
  const auto& option = forms.forms().front()->find("q")->options.at(0);
  CHECK(option.system == "s");
  CHECK(option.display == "A");
  CHECK(option.prefix == "1.");
  CHECK(*option.score == base::Rational(4));
  CHECK(option.translations.at("de") == "Ah");
}

TEST_CASE("An expansion counts before the definition, without abstract codes, with what is nested") {
  CHECK(codes(set("v",
                  include(kAB) + R"(, "expansion": {"contains": [{"code": "x", "abstract": true, "contains":
      [{"system": "s", "code": "y"}]}, {"code": "z", "inactive": true}]})")) == "y ");
  CHECK(codes(set("v", R"("expansion": {"total": 9, "contains": [{"code": "y"}]})")) == "y …");
}

TEST_CASE("Value sets take in others and leave out what is excluded") {
  const std::string c = R"({"system": "s", "concept": [{"code": "c"}]})";
  CHECK(codes(set("v", include(R"({"valueSet": ["#w"]},)" + c)) + "," + set("w", include(kAB))) == "a b c ");
  CHECK(codes(set("v", include(R"({"valueSet": ["https://example.org/w"]})")) + "," +
              set("w", include(kAB))) == "a b ");
  CHECK(codes(set("v", R"("compose": {"include": [)" + kAB +
                           R"(], "exclude": [{"system": "s", "concept": [{"code": "a"}]}]})")) == "b ");
  // Both within one include: only what is in both.
  CHECK(codes(set("v",
                  include(
                      R"({"system": "s", "concept": [{"code": "b"}, {"code": "c"}], "valueSet": ["#w"]})")) +
              "," + set("w", include(kAB))) == "b ");
}

TEST_CASE("A whole code system is listed if the form contains all of it") {
  const auto system = [](const std::string& content) {
    return R"({"resourceType": "CodeSystem", "id": "c", "url": "s", "content": ")" + content +
           R"(", "concept": [{"code": "a", "concept": [{"code": "b"}]}]})";
  };
  const std::string whole = set("v", include(R"({"system": "s"})"));
  CHECK(codes(whole + "," + system("complete")) == "a b ");
  CHECK(codes(whole + "," + system("fragment")) == "a b …");
  CHECK(codes(whole) == "…");
}

TEST_CASE("What only a terminology server can list is not the whole list") {
  CHECK(codes(set("v",
                  include(R"({"system": "s", "filter": [{"property": "p", "op": "=", "value": "x"}]})"))) ==
        "…");
  CHECK(codes(set("v", include(R"({"valueSet": ["https://example.org/elsewhere"]},)" + kAB))) == "a b …");
  CHECK(codes(set("v", include(R"({"valueSet": ["#v"]},)" + kAB))) == "a b …");
}

TEST_CASE("A contained value set that is not there is an issue") {
  CHECK_THAT(issuesOfAny(item("a", "choice", R"("answerValueSet": "#v")")),
             Contains("does not contain the value set #v"));
}
