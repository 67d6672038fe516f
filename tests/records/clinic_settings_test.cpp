#include "records/clinic_settings.h"

#include <catch2/catch.hpp>

using namespace stile;
using records::ClinicSettings;

TEST_CASE("what a clinic says of itself is given in another language; what is not translated says so") {
  base::Issues issues;
  const auto settings = ClinicSettings::load(R"({
    "name": "Tarnside Movement Clinic", "emergencyNumber": "112", "clinician": "Ines Calloway, physiotherapist",
    "openingHours": "Monday to Friday, 8 to 5", "outOfHours": "01632 960 400",
    "translations": {"es": {"clinician": "Ines Calloway, fisioterapeuta"}}})",
                                             "settings", issues);
  CHECK(issues.empty());
  const auto spanish = settings.inLanguage("es", "(en inglés) ");
  CHECK(spanish.clinician == "Ines Calloway, fisioterapeuta");
  CHECK(spanish.openingHours == "(en inglés) Monday to Friday, 8 to 5");
  CHECK(spanish.outOfHours == "01632 960 400");  // a number needs no translation
  CHECK(spanish.crisisLine.empty());
  CHECK(spanish.name == settings.name);
  CHECK(settings.inLanguage("fr", "(en anglais) ").clinician ==
        "(en anglais) Ines Calloway, physiotherapist");
}

TEST_CASE("a translation of what is no word of the clinic is an issue") {
  base::Issues issues;
  ClinicSettings::load(
      R"({"name": "A", "emergencyNumber": "112", "translations": {"es": {"telephone": "1"}, "e5": {}}})",
      "settings", issues);
  CHECK(issues.all().size() == 2);
}
