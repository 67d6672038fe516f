// The standard's example forms: each is walked to the end (answers given, enablement followed, the
// result completed and held against the form), or refused with a sentence that names the element.
#include <map>
#include <set>

#include "answers/draft.h"
#include "answers/validate_response.h"
#include "standard_cases.h"
#include "walk.h"

using namespace stile;

namespace {

/// "" = loads and is walked to the end; else what the refusal says.
const std::map<std::string, std::string> kExpected{
    {"Questionnaire-enableWhen-dw.json", "two or more enableWhen need an enableBehavior"},
    {"Questionnaire-enableWhen-test-nested.json", ""},
    {"Questionnaire-enableWhenEx-test.json", ""},
    {"Questionnaire-enablewhen-me.json", ""},
    {"Questionnaire-profile-example-context-expression.json", ""},
    {"Questionnaire-profile-example-form-behavior.json", "does not follow the extension"},
    {"Questionnaire-profile-example-render.json", "modifier extension RenderingCriticalExtension"},
    {"Questionnaire-profile-example-weight-height-tracking-panel.json", ""},
    {"Questionnaire-sdc-derivation-parent.json", ""},
    {"Questionnaire-test-enableWhen.json", "answerString does not fit \"s1-radio\""},
    {"Questionnaire-test-fhirpath-prepop-candexpr.json", ""},
    {"Questionnaire-test-fhirpath-prepop-source-query.json", ""},
    {"Questionnaire-test-initialvalue.json", ""},
    {"Questionnaire-test-nested-groups.json", ""},
    {"Questionnaire-test-required-radios.json", ""},
    {"Questionnaire-trivia-questionnaire.json", ""},
    {"questionnaire-R4.json", ""},
};

}  // namespace

TEST_CASE("Each example form of the standard is walked to the end or refused with a sentence") {
  const auto folder = sample::standards() / "forms";
  if (!sample::isHere(folder)) return;
  std::set<std::string> seen;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    const std::string file = entry.path().filename().string();
    const std::string text = sample::textOf(entry.path());
    if (text.find("\"QuestionnaireResponse\"") != std::string::npos &&
        text.find("\"Questionnaire\"") == std::string::npos) {
      continue;
    }
    CAPTURE(file);
    seen.insert(file);
    REQUIRE(kExpected.count(file));
    const std::string& refusal = kExpected.at(file);
    base::Issues issues;
    const auto forms = questionnaire::FormSet::loadAny({{file, text}}, issues);
    std::string words;
    for (const auto& issue : issues.all()) words += base::toText(issue) + "\n";
    CAPTURE(words);
    CHECK(issues.hasErrors() == !refusal.empty());
    if (!refusal.empty()) {
      CHECK(words.find(refusal) != std::string::npos);
      continue;
    }
    REQUIRE(forms.forms().size() == 1);
    for (const auto& way : {sample::Way::First, sample::Way::Last}) {
      const auto walked = sample::walk(*forms.forms().front(), way);
      CAPTURE(walked.trouble);
      CHECK(walked.questions > 0);
      REQUIRE(walked.response);
      const auto document = json::Document::parse(*walked.response, "walked.json", issues);
      REQUIRE(document);
      CHECK_FALSE(answers::validateResponse(document->root(), forms).hasErrors());
    }
  }
  CHECK(seen.size() == kExpected.size());
}
