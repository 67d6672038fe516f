// The broken forms and responses of tests/broken: each reports what expected.json says.
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "answers/response.h"

using namespace stile;

namespace {

const std::filesystem::path kFolder = std::filesystem::path(STILE_SOURCE_DIR) / "tests" / "broken";

std::string textOf(const std::string& file) {
  std::ifstream stream(kFolder / file, std::ios::binary);
  REQUIRE(stream);
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

questionnaire::FormSet sampleForms() {
  base::Issues issues;
  auto forms = questionnaire::FormSet::load({{"sample-form.json", textOf("sample-form.json")}}, issues);
  REQUIRE(issues.empty());
  return forms;
}

void loadForm(const std::string& file, base::Issues& issues) {
  questionnaire::FormSet::load({{file, textOf(file)}}, issues);
}

void loadAnswers(const std::string& file, base::Issues& issues) {
  const auto forms = sampleForms();
  const auto document = json::Document::parse(textOf(file), file, issues);
  if (document) CHECK_FALSE(answers::loadResponse(document->root(), forms, issues));
}

}  // namespace

TEST_CASE("Every broken form and response is refused for the reason expected.json names") {
  base::Issues issues;
  const auto expected = json::Document::parse(textOf("expected.json"), "expected.json", issues);
  REQUIRE(expected);
  int tried = 0;
  for (std::size_t i = 0; i < expected->root().size(); ++i) {
    const json::Node row = expected->root().at(i);
    const std::string file = row.find("file")->string();
    const std::string contains = row.find("contains")->string();
    base::Issues found;
    if (file.starts_with("form-")) {
      loadForm(file, found);
    } else if (file.starts_with("response-")) {
      loadAnswers(file, found);
    } else {
      continue;  // of another room
    }
    ++tried;
    CAPTURE(file, contains);
    CHECK(found.hasErrors());
    std::string text;
    for (const auto& issue : found.all()) {
      text += base::toText(issue) + "\n";
      CHECK(issue.place.line > 0);
    }
    CAPTURE(text);
    CHECK(text.find(contains) != std::string::npos);
  }
  CHECK(tried >= 20);
}

TEST_CASE("No broken form or response lies about without an expectation") {
  base::Issues issues;
  const auto expected = json::Document::parse(textOf("expected.json"), "expected.json", issues);
  REQUIRE(expected);
  const std::string list = expected->text();
  for (const auto& entry : std::filesystem::directory_iterator(kFolder)) {
    const std::string name = entry.path().filename().string();
    if (!name.starts_with("form-") && !name.starts_with("response-")) continue;
    CAPTURE(name);
    CHECK(list.find("\"" + name + "\"") != std::string::npos);
  }
}
