#include "answers/response_lookup.h"

#include <catch2/catch.hpp>

#include "sample_response.h"

using namespace stile;
using namespace stile::sample;
using answers::ResponseLookup;
using expression::Truth;
using questionnaire::FormSet;

namespace {

const std::string kYes = "\"answerBoolean\": true";

FormSet sampleForms() {
  return loaded(
      item("a", "boolean") + "," + item("b", "boolean", enableWhen(when("a", "=", kYes))) + "," +
      item("c", "boolean", enableWhen(when("b", "=", kYes))) + "," +
      item("notB", "boolean", enableWhen(when("b", "!=", kYes))) + "," +
      item("place", "open-choice", "\"answerOption\": [" + option("hip") + "]") + "," +
      item("hipSide", "string", enableWhen(when("place", "=", R"("answerCoding": {"code": "hip"})"))) + "," +
      item("pressure", "quantity", units("mm[Hg]", "kPa")) + "," +
      item("again", "boolean",
           enableWhen(when("pressure", ">=", "\"answerQuantity\": " + quantity("150", "mm[Hg]")))) +
      "," + item("since", "date") + "," +
      item("recent", "boolean", enableWhen(when("since", ">=", "\"answerDate\": \"2026-06-01\""))) + "," +
      item("fall", "group",
           "\"repeats\": true, \"item\": [" + item("hurt", "boolean") + "," +
               item("where", "string", enableWhen(when("hurt", "=", kYes))) + "]"));
}

Truth enabled(const std::string& linkId, const std::string& items, int repetition = -1) {
  const FormSet forms = sampleForms();
  const auto response = accepted(responseText(items), forms);
  const auto& form = *forms.byName("t");
  return isEnabled(*form.find(linkId), ResponseLookup(response, repetition));
}

std::string boolean(const std::string& linkId, bool value) {
  return answer(linkId, value ? "{\"valueBoolean\": true}" : "{\"valueBoolean\": false}");
}

}  // namespace

TEST_CASE("An absent or reasonless question leaves what depends on it unknown") {
  CHECK(enabled("b", "") == Truth::Unknown);
  CHECK(enabled("b", answer("a", "")) == Truth::Unknown);
  CHECK(enabled("b", answer("a", "", absent("asked-declined"))) == Truth::Unknown);
  CHECK(enabled("b", boolean("a", true)) == Truth::True);
  CHECK(enabled("b", boolean("a", false)) == Truth::False);
}

TEST_CASE("A disabled question does not apply, whatever was answered") {
  CHECK(enabled("c", boolean("a", false) + "," + boolean("b", true)) == Truth::False);
  CHECK(enabled("notB", boolean("a", false) + "," + boolean("b", true)) == Truth::True);
  CHECK(enabled("notB", boolean("a", true)) == Truth::Unknown);
}

TEST_CASE("Words in place of an option decide nothing") {
  CHECK(enabled("hipSide", answer("place", coding("hip"))) == Truth::True);
  CHECK(enabled("hipSide", answer("place", R"({"valueString": "groin"})")) == Truth::Unknown);
}

TEST_CASE("Quantities and dates are looked up as written") {
  CHECK(enabled("again", answer("pressure", "{\"valueQuantity\": " + quantity("20", "kPa") + "}")) ==
        Truth::True);
  CHECK(enabled("again", answer("pressure", "{\"valueQuantity\": " + quantity("19.9", "kPa") + "}")) ==
        Truth::False);
  CHECK(enabled("recent", answer("since", R"({"valueDate": "2026"})")) == Truth::Unknown);
  CHECK(enabled("recent", answer("since", R"({"valueDate": "2025"})")) == Truth::False);
}

TEST_CASE("Members of a repeating group are looked up in one repetition") {
  const std::string falls =
      group("fall", boolean("hurt", true)) + "," + group("fall", boolean("hurt", false));
  CHECK(enabled("where", falls, 0) == Truth::True);
  CHECK(enabled("where", falls, 1) == Truth::False);
  CHECK(enabled("where", falls, 2) == Truth::Unknown);
  CHECK(enabled("where", falls) == Truth::Unknown);
}

TEST_CASE("A blank response leaves every condition unknown") {
  const FormSet forms = sampleForms();
  const auto& form = *forms.byName("t");
  const auto response = accepted(answers::blankResponse(form, *base::Date::of(2026, 11, 25)), forms);
  const ResponseLookup lookup(response, 0);
  for (const auto* item : form.inOrder()) {
    CAPTURE(item->linkId);
    CHECK(isEnabled(*item, lookup) == (item->enableWhen.empty() ? Truth::True : Truth::Unknown));
  }
}
