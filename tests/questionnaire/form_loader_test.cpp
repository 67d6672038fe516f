#include "questionnaire/form_loader.h"

#include <catch2/catch.hpp>

#include "sample_form.h"

using namespace stile;
using namespace stile::sample;
using Catch::Contains;
using questionnaire::FormSet;

TEST_CASE("A module's items stand in the form where the module is named") {
  const Files files{
      {"clinic.json",
       formText(item("a", "boolean") + "," + placeOf("m") + "," + item("d", "boolean"), "clinic")},
      {"telephone.json",
       formText(item("bodyGroup", "group", "\"item\": [" + placeOf("m") + "]"), "telephone")},
      {"m.json", moduleText(item("b", "boolean") + "," + placeOf("n"), "m")},
      {"n.json", moduleText(item("c", "boolean"), "n")}};
  const FormSet forms = loaded(files);
  CHECK(forms.forms().size() == 2);
  CHECK(forms.byName("m") == nullptr);
  CHECK(forms.byUrl("https://stile.example/questionnaire/m") == nullptr);
  const auto* clinic = forms.byName("clinic");
  REQUIRE(clinic->inOrder().size() == 4);
  CHECK(clinic->inOrder()[1]->linkId == "b");
  CHECK(clinic->inOrder()[2]->linkId == "c");
  CHECK(clinic->find("a")->topic == "https://stile.example/questionnaire/clinic");
  CHECK(clinic->find("b")->topic == "https://stile.example/questionnaire/m");
  CHECK(clinic->find("c")->topic == "https://stile.example/questionnaire/n");
  CHECK(clinic->find("b")->place.file == "m.json");
  CHECK(clinic->find("mNote") == nullptr);
  const auto* telephone = forms.byName("telephone");
  CHECK(telephone->find("b")->parent == telephone->find("bodyGroup"));
}

TEST_CASE("A condition may look at an earlier module") {
  const std::string dependent = item("c", "boolean", enableWhen(when("b", "=", "\"answerBoolean\": true")));
  const auto files = [&](const std::string& places) {
    return Files{{"clinic.json", formText(places, "clinic")},
                 {"m.json", moduleText(item("b", "boolean"), "m")},
                 {"n.json", moduleText(dependent, "n")}};
  };
  loaded(files(placeOf("m") + "," + placeOf("n")));
  CHECK_THAT(issuesOf(files(placeOf("n") + "," + placeOf("m"))), Contains("comes later in the form clinic"));
  CHECK_THAT(issuesOf(files(placeOf("n"))), Contains("which is no item of the form clinic"));
}

TEST_CASE("Modules that are missing, unmarked, taken in twice or in a circle are issues") {
  CHECK_THAT(issuesOf(placeOf("m")), Contains("the module https://stile.example/questionnaire/m is missing"));
  CHECK_THAT(
      issuesOf(Files{{"t.json", formText(placeOf("m"))}, {"m.json", formText(item("a", "boolean"), "m")}}),
      Contains("m is not marked as a module"));
  const Files twice{
      {"t.json", formText(placeOf("m") + "," + item("g", "group", "\"item\": [" + placeOf("n") + "]"))},
      {"m.json", moduleText(item("a", "boolean"), "m")},
      {"n.json", moduleText(placeOf("m"), "n")}};
  CHECK_THAT(issuesOf(twice), Contains("stands twice") || Contains("is taken in twice"));
  const Files circle{
      {"t.json", formText(placeOf("m"))},
      {"m.json", moduleText(item("a", "boolean") + "," + placeOf("n"), "m")},
      {"n.json", moduleText(item("b", "boolean") + "," + R"({"linkId": "backNote", "type": "display",
                      "extension": [{"url": "http://hl7.org/fhir/uv/sdc/StructureDefinition/sdc-questionnaire-subQuestionnaire",
                      "valueCanonical": "https://stile.example/questionnaire/m"}]})",
                            "n")}};
  CHECK_THAT(issuesOf(circle), Contains("the modules take each other in: t -> m -> n -> m"));
}

TEST_CASE("Modules nobody takes in are read for their issues and are no forms") {
  CHECK_THAT(issuesOf(Files{{"m.json", moduleText(item("a", "bolean"), "m")}}), Contains("is no item type"));
  CHECK(loaded(Files{{"m.json", moduleText(item("a", "boolean"), "m")}}).forms().empty());
}

TEST_CASE("A linkId stands once in the assembled form") {
  const std::string text = issuesOf(Files{{"t.json", formText(item("a", "boolean") + "," + placeOf("m"))},
                                          {"m.json", moduleText("\n" + item("a", "integer"), "m")}});
  CHECK_THAT(
      text,
      Contains(
          "m.json:2:1: a: the linkId \"a\" stands twice in the form; the other one is in t.json line 1"));
}

TEST_CASE("Two files cannot share a url") {
  CHECK_THAT(
      issuesOf(Files{{"a.json", formText(item("a", "boolean"))}, {"b.json", formText(item("a", "boolean"))}}),
      Contains("is also that of a"));
}

TEST_CASE("An issue in a module is told once however many forms take it in") {
  const std::string text =
      issuesOf(Files{{"s.json", formText(placeOf("m"), "s")},
                     {"t.json", formText(placeOf("m"), "t")},
                     {"m.json", moduleText(item("a", "boolean", "\"requierd\": true"), "m")}});
  CHECK(text.find("requierd\" is not") == text.rfind("requierd\" is not"));
}

TEST_CASE("A condition on the place of a module is not silently lost") {
  const std::string place = placeOf("m");
  const std::string conditional =
      place.substr(0, place.size() - 1) + ", " + enableWhen(when("a", "=", "\"answerBoolean\": true")) + "}";
  CHECK_THAT(issuesOf(Files{{"t.json", formText(item("a", "boolean") + "," + conditional)},
                            {"m.json", moduleText(item("b", "boolean"), "m")}}),
             Contains("a condition on the place of a module would be lost"));
}
