// Questions in the client's language: every sentence of the interview, options and helps too, and none
// for which nobody asks the client.
#include "application/translated_forms.h"

#include <catch2/catch.hpp>

#include "../support/content.h"
#include "application/content_folder.h"

using namespace stile;
using namespace stile::application;

namespace {

const Translation& spanish() {
  static const auto translation = [] {
    base::Issues issues;
    const auto files = readContentFolder(STILE_SOURCE_DIR);
    return *Translation::load(files.value(), "es", issues);
  }();
  return translation;
}

std::map<std::string, std::string> oneForm(const std::string& file, const std::string& text) {
  return {
      {file, R"({"resourceType": "Questionnaire", "item": [{"linkId": "feet", "type": "choice", "text": ")" +
                 text +
                 R"(", "answerOption": [{"valueCoding": {"code": "left", "display": "Left"}}],
                      "item": [{"linkId": "feetNote", "type": "display", "text": "Why."}]}]})"}};
}

Translation feet() {
  Translation translation;
  translation.language = "es";
  translation.missing = "(en inglés) ";
  translation.texts = {{"forms.feet.text", {"Which foot?", "¿Qué pie?"}},
                       {"forms.feet.options.left", {"Left", "Izquierdo"}}};
  return translation;
}

}  // namespace

TEST_CASE(
    "question, option and help take their words; what has none, or changed since, says that it is English") {
  TranslationCount count;
  base::Issues issues;
  const auto said =
      translatedForms(oneForm("questionnaires/f.json", "Which foot?"), feet(), count, issues).at("f.json");
  CHECK(said.find("¿Qué pie?") != std::string::npos);
  CHECK(said.find("Izquierdo") != std::string::npos);
  CHECK(said.find("(en inglés) Why.") != std::string::npos);
  CHECK(count.sentences == 3);
  CHECK(count.toDo == std::vector<std::string>{"forms.feetNote.text"});
  CHECK(issues.empty());
  TranslationCount changed;
  CHECK(translatedForms(oneForm("questionnaires/f.json", "Which of the feet?"), feet(), changed, issues)
            .at("f.json")
            .find("(en inglés) Which of the feet?") != std::string::npos);
  CHECK(changed.changed == 1);
}

TEST_CASE("a clinician's module stays as it is, and a key that names no sentence is an issue") {
  TranslationCount count;
  base::Issues issues;
  const auto said =
      translatedForms(oneForm("questionnaires/clinician-feet.json", "Which foot?"), feet(), count, issues);
  CHECK(said.at("clinician-feet.json").find("Which foot?") != std::string::npos);
  CHECK(count.sentences == 0);
  CHECK(issues.hasErrors());
}

TEST_CASE("the whole interview has Spanish words") {
  const auto clinic = formInLanguage(STILE_SOURCE_DIR, "clinic", "es"),
             telephone = formInLanguage(STILE_SOURCE_DIR, "telephone", "es");
  REQUIRE(clinic.ok());
  REQUIRE(telephone.ok());
  CHECK_FALSE(clinic.value().notice.empty());
  const auto* original = test::content().forms.byName("clinic");
  std::size_t sentences = 0;
  for (const auto* item : original->inOrder()) {
    const auto* said = clinic.value().form->find(item->linkId);
    REQUIRE(said != nullptr);
    REQUIRE(said->options.size() == item->options.size());
    INFO(item->linkId);
    CHECK(said->text.find(spanish().missing) == std::string::npos);
    CHECK(said->help.find(spanish().missing) == std::string::npos);
    for (std::size_t i = 0; i < item->options.size(); ++i) {
      CHECK(said->options[i].code == item->options[i].code);
      CHECK(said->options[i].display.find(spanish().missing) == std::string::npos);
    }
    if (said->text != item->text) ++sentences;
  }
  CHECK(sentences > 400);
  CHECK_FALSE(formInLanguage(STILE_SOURCE_DIR, "clinic", "xx").ok());
  CHECK_FALSE(formInLanguage(STILE_SOURCE_DIR, "nothing", "es").ok());
}
