// What the clinic says of itself, the policies it chose, the content it approved, the papers it issued.
#include <catch2/catch.hpp>

#include "application/client_papers.h"
#include "application/clinic_document.h"
#include "base/base64.h"
#include "tarnside.h"

using namespace stile;
using namespace stile::test;

namespace {

const char* const kSettings =
    R"({"name": "Tarnside Movement Clinic", "emergencyNumber": "112", "paperSize": "Letter", "drawnBuild": "slight", "policies": {"policyDiabetesClearance": "ada"}})";

/// A red dot.
std::string png() {
  return *base::fromBase64("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8DwHwAFBQIAX8jx0gAAAABJRU5ErkJggg==");
}

std::shared_ptr<const screening::Content> contentWith(const application::PolicyChoices& policies) {
  base::Issues issues;
  return take(application::loadContent(STILE_SOURCE_DIR, issues, policies));
}

}  // namespace

TEST_CASE("Settings and logo are kept in the clinic file; what stood before stays; wrong ones change nothing") {
  Tarnside tarnside;
  auto& clinic = *tarnside.clinic;
  CHECK(application::clinicDocument(clinic).text.empty());
  base::Issues issues;
  take(application::saveClinicSettings(clinic, kSettings, "settings.json", png(), kTarnsideDay, issues));
  CHECK_FALSE(application::saveClinicSettings(clinic, R"({"name": "x"})", "settings.json", "", kTarnsideDay, issues).ok());
  tarnside.open("ines", kInes);
  const auto document = application::clinicDocument(*tarnside.clinic);
  CHECK(document.settings.name == "Tarnside Movement Clinic");
  CHECK(document.settings.paperSize == records::PaperSize::Letter);
  CHECK(document.settings.drawnBuild == movement::Build::Slight);
  CHECK(document.settings.policies.at("policyDiabetesClearance") == "ada");
  CHECK(take(application::clinicLogo(*tarnside.clinic)) == png());
  CHECK(tarnside.clinic->find("").size() == 1);  // the clinic is no client
  base::Issues none;
  take(application::saveClinicSettings(*tarnside.clinic, R"({"name": "Tarnside", "emergencyNumber": "999"})", "settings.json", "", kTarnsideDay, none));
  CHECK(take(application::clinicLogo(*tarnside.clinic)).empty());
  CHECK(take(tarnside.clinic->file().read(document.record)).size() == 3);
  CHECK(tarnside.clinic->file().verify().trouble == "");
}

TEST_CASE("Single members of the settings change; policies, logo and the rest stay; what is needed cannot be taken away") {
  Tarnside tarnside;
  auto& clinic = *tarnside.clinic;
  base::Issues issues;
  take(application::changeClinicSettings(clinic, {{"name", "Tarnside"}, {"emergencyNumber", "112"}}, kTarnsideDay, issues));  // of no settings yet
  take(application::saveClinicSettings(clinic, kSettings, "settings.json", png(), kTarnsideDay, issues));
  take(application::changeClinicSettings(clinic, {{"emergencyNumber", "999"}, {"openingHours", "weekdays"}, {"paperSize", "A4"}}, kTarnsideDay, issues));
  const auto settings = application::clinicDocument(clinic).settings;
  CHECK(settings.name == "Tarnside Movement Clinic");
  CHECK(settings.emergencyNumber == "999");
  CHECK(settings.openingHours == "weekdays");
  CHECK(settings.paperSize == records::PaperSize::A4);
  CHECK(settings.drawnBuild == movement::Build::Slight);
  CHECK(settings.policies.at("policyDiabetesClearance") == "ada");
  CHECK(take(application::clinicLogo(clinic)) == png());
  take(application::changeClinicSettings(clinic, {{"openingHours", ""}}, kTarnsideDay, issues));
  CHECK(application::clinicDocument(clinic).settings.openingHours.empty());
  CHECK_FALSE(issues.hasErrors());
  CHECK_FALSE(application::changeClinicSettings(clinic, {{"emergencyNumber", ""}}, kTarnsideDay, issues).ok());
  CHECK(application::clinicDocument(clinic).settings.emergencyNumber == "999");
}

TEST_CASE("A policy that the clinic chose decides, and the content's version says so") {
  const auto usual = contentWith({}), chosen = contentWith({{"policyDiabetesClearance", "ada"}});
  CHECK(usual->version == content().version);
  CHECK(chosen->version != usual->version);
  const auto ceilingOf = [](const screening::Content& with) {
    base::Issues issues;
    const auto screened = take(application::screenClient(with, {{"facts", R"({"diabetesType": "type2"})"}}, kTarnsideDay, issues));
    const int slot = with.dictionary.find("policyDiabetesClearance")->slot;
    return screened.facts.at(slot).value.text;
  };
  CHECK(ceilingOf(*usual) == "acsm");
  CHECK(ceilingOf(*chosen) == "ada");
  base::Issues issues;
  CHECK_FALSE(application::loadContent(STILE_SOURCE_DIR, issues, {{"policyDiabetesClearance", "whatever"}}).ok());
  CHECK(contains(issues.all().front().message, "no alternative"));
  base::Issues more;
  CHECK_FALSE(application::loadContent(STILE_SOURCE_DIR, more, {{"policyOfNobody", "x"}}).ok());
}

TEST_CASE("The lead approves the content; a screening made with another says so") {
  Tarnside tarnside;
  CHECK(contains(application::adoptContent(*tarnside.clinic, content(), kTarnsideDay).failure().message, "lead"));
  take(tarnside.clinic->file().addClinician({"rolf", "Rolf Anning", "physician", records::Role::Lead, false, false, {}}, kRolf));
  tarnside.screen({{"answers", "{\"fallsLastYear\": 0}"}});
  CHECK(contains(take(application::showClient(*tarnside.clinic, tarnside.id, kTarnsideDay)), "which the clinic's lead has not approved"));
  tarnside.open("rolf", kRolf);
  take(application::adoptContent(*tarnside.clinic, content(), kTarnsideDay));
  const std::string shown = take(application::showClient(*tarnside.clinic, tarnside.id, kTarnsideDay));
  CHECK(contains(shown, "content " + content().version));
  CHECK_FALSE(contains(shown, "has not approved"));
}

TEST_CASE("Issued papers come back byte for byte; the same bytes are kept once; no letter without consent") {
  Tarnside tarnside;
  auto& clinic = *tarnside.clinic;
  const TemporaryFolder out;
  const auto person = textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/documents/people/waiting.json");
  tarnside.screen({{"answers", person}});
  application::PaperOptions options;
  options.folder = out.path();
  options.pdf = false;
  base::Issues issues;
  const auto issue = [&] { return application::issuePapers(clinic, tarnside.id, content(), STILE_SOURCE_DIR, options, kTarnsideDay, issues); };
  CHECK(contains(issue().failure().message, "clinic settings"));
  take(application::saveClinicSettings(clinic, textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/data/tarnside-settings.json"), "s", png(), kTarnsideDay, issues));
  CHECK(contains(take(issue()), "No letter to others"));
  CHECK_FALSE(std::filesystem::exists(out / "clearance-letter.html"));
  CHECK(contains(bytesOf(out / "summary.html"), "Maren Oakshott"));
  take(tarnside.put("consent", "{'date': '2026-11-25', 'what': 'physician', 'given': true, 'how': 'signed'}"));
  take(issue());
  CHECK(std::filesystem::exists(out / "clearance-letter.html"));
  const auto papers = application::issuedPapers(take(clinic.file().read(tarnside.id)));
  std::size_t summaries = 0;
  for (const auto& paper : papers) {
    CHECK(paper.by == "ines");
    CHECK(take(application::readPaper(clinic, tarnside.id, paper.entry)) == bytesOf(out / (paper.name + "." + paper.format)));
    if (paper.name == "summary") ++summaries;
  }
  CHECK(summaries == 2);
  int same = 0;
  for (const auto& entry : take(clinic.file().read(tarnside.id))) same += contains(entry.body, "\"sameAs\"") ? 1 : 0;
  CHECK(same > 0);
  CHECK(contains(take(application::showClient(clinic, tarnside.id, kTarnsideDay)), "clearance-letter.html, by ines"));
  CHECK_FALSE(application::readPaper(clinic, tarnside.id, "nothing").ok());
}
