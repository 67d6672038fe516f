// Our own forms filled in to their end, as any face would: the result satisfies its form. With
// STILE_PRODUCED naming a folder the responses are written there, for validators nobody here wrote.
#include <cstdlib>
#include <map>

#include "answers/response.h"
#include "answers/validate_response.h"
#include "standard_cases.h"
#include "walk.h"

using namespace stile;

namespace {

questionnaire::FormSet shippedForms() {
  std::map<std::string, std::string> files;
  const auto folder = std::filesystem::path(STILE_SOURCE_DIR) / "questionnaires";
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() == ".json")
      files[entry.path().filename().string()] = sample::textOf(entry.path());
  }
  base::Issues issues;
  auto forms = questionnaire::FormSet::load(files, issues);
  for (const auto& issue : issues.all()) UNSCOPED_INFO(base::toText(issue));
  REQUIRE_FALSE(issues.hasErrors());
  return forms;
}

void keep(const std::string& name, const std::string& text) {
  const char* folder = std::getenv("STILE_PRODUCED");
  if (!folder) return;
  std::ofstream file(std::filesystem::path(folder) / name, std::ios::binary);
  file << text;
  REQUIRE(file.good());
}

std::string errorsIn(const std::string& text, const questionnaire::FormSet& forms) {
  base::Issues issues;
  const auto document = json::Document::parse(text, "response.json", issues);
  REQUIRE(document);
  std::string errors;
  for (const auto& problem : answers::validateResponse(document->root(), forms).problems) {
    if (problem.issue.severity == base::Severity::Error)
      errors += problem.path + ": " + base::toText(problem.issue) + "\n";
  }
  return errors;
}

}  // namespace

TEST_CASE("Shipped forms, blank and filled in either way, give responses that satisfy them") {
  const auto forms = shippedForms();
  CHECK(forms.forms().size() >= 2);
  for (const auto& form : forms.forms()) {
    CAPTURE(form->name());
    const std::string blank = answers::blankResponse(*form, *base::Date::parse("2026-11-25"));
    keep(form->name() + "-blank.json", blank);
    CHECK(errorsIn(blank, forms).empty());
    for (const auto& [way, name] :
         {std::pair(sample::Way::First, "first"), std::pair(sample::Way::Last, "last")}) {
      const auto walked = sample::walk(*form, way);
      CAPTURE(walked.trouble);
      REQUIRE(walked.response);
      keep(form->name() + "-" + name + ".json", *walked.response);
      CHECK(errorsIn(*walked.response, forms).empty());
      // The strict reader, which feeds the facts, takes them as well.
      base::Issues issues;
      const auto document = json::Document::parse(*walked.response, "response.json", issues);
      REQUIRE(document);
      const auto response = answers::loadResponse(document->root(), forms, issues);
      std::string words;
      for (const auto& issue : issues.all()) words += base::toText(issue) + "\n";
      CAPTURE(words);
      CHECK(response);
    }
  }
}
