// Forms that nobody here wrote: examples of the standard, where the folder is present.
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "questionnaire/form.h"

using namespace stile;

namespace {

const std::filesystem::path kFolder =
    std::filesystem::path(STILE_SOURCE_DIR) / ".." / "shared" / "standards" / "forms";

std::string textOf(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

struct Expected {
  const char* file;
  const char* reason;  ///< of the refusal; "" = loads without an issue
};

}  // namespace

TEST_CASE("Questionnaires of the standard load or are refused for a stated reason") {
  if (!std::filesystem::exists(kFolder)) {
    WARN("skipped: the standard's example forms are not here");
    return;
  }
  const std::vector<Expected> expected{
      {"Questionnaire-enableWhen-test-nested.json", ""},
      {"Questionnaire-enableWhenEx-test.json", ""},  // its expression is an extension we do not know
      {"Questionnaire-enablewhen-me.json", "the item has no text"},
      {"Questionnaire-enableWhen-dw.json", "need an enableBehavior"},
      {"Questionnaire-profile-example-weight-height-tracking-panel.json", ""},
      {"Questionnaire-sdc-derivation-parent.json", ""},
      {"Questionnaire-test-nested-groups.json", "a repeating group stands within a repeating group"},
      {"Questionnaire-trivia-questionnaire.json", ""},
      {"questionnaire-R4.json", "the member \"url\" is missing"},
      {"Questionnaire-profile-example-render.json", "modifier extension"},
      {"Questionnaire-profile-example-form-behavior.json", "modifier extension"},
  };
  for (const auto& [file, reason] : expected) {
    CAPTURE(file);
    REQUIRE(std::filesystem::exists(kFolder / file));
    base::Issues issues;
    const auto forms = questionnaire::FormSet::load({{file, textOf(kFolder / file)}}, issues);
    std::string text;
    for (const auto& issue : issues.all()) text += base::toText(issue) + "\n";
    CAPTURE(text);
    if (*reason == '\0') {
      CHECK(issues.empty());
      CHECK(forms.forms().size() == 1);
    } else {
      CHECK(issues.hasErrors());
      CHECK(text.find(reason) != std::string::npos);
    }
  }
}

TEST_CASE("Every example form is read to its end without a crash") {
  if (!std::filesystem::exists(kFolder)) {
    WARN("skipped: the standard's example forms are not here");
    return;
  }
  std::map<std::string, std::string> files;
  for (const auto& entry : std::filesystem::directory_iterator(kFolder)) {
    files[entry.path().filename().string()] = textOf(entry.path());
  }
  base::Issues issues;
  questionnaire::FormSet::load(files, issues);
  for (const auto& issue : issues.all()) {
    CHECK_FALSE(issue.message.empty());
    CHECK(issue.place.line > 0);
  }
}
