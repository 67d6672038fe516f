// The expressions of the official FHIRPath suite, read from ../shared/standards/ where it is there.
#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

#include "expression/syntax.h"
#include "json/document.h"

using namespace stile;
using namespace stile::expression;

TEST_CASE("the parser agrees with the official suite on what is FHIRPath") {
  std::ifstream file(std::string(STILE_SOURCE_DIR) + "/../shared/standards/fhirpath-tests.json");
  if (!file) {
    WARN("skipped: ../shared/standards/fhirpath-tests.json is not there");
    return;
  }
  std::ostringstream content;
  content << file.rdbuf();
  base::Issues issues;
  const auto document = json::Document::parse(content.str(), "fhirpath-tests.json", issues);
  REQUIRE(document);
  const json::Node cases = document->root();
  REQUIRE(cases.isArray());
  int count = 0;
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const std::string& text = cases.at(i).find("expression")->string();
    const auto invalid = cases.at(i).find("invalid");
    const bool isSyntaxError = invalid && invalid->isString() && invalid->string() == "syntax";
    base::Issues own;
    const bool isParsed = parse(text, TextOrigin("suite", text), "", own) != nullptr;
    for (const base::Issue& issue : own.all()) UNSCOPED_INFO(base::toText(issue));
    INFO(text);
    CHECK(isParsed == !isSyntaxError);
    CHECK(own.empty() == isParsed);
    ++count;
  }
  CHECK(count > 400);
}
