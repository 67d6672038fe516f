// A clearance covers what it names, up to what it says, for as long as nothing has changed.
#include <catch2/catch.hpp>

#include "application/clearance_request.h"
#include "application/screen_client.h"
#include "case_file.h"

using namespace stile;
using limits::Rung;

namespace {

const base::Date kDay = *base::Date::of(2026, 11, 25);

/// What a physician writes on the slip.
struct Slip {
  std::string answer = "noKnownReason", bay = "both", intensity = "moderate", from = "2026-11-20", until = {};
  int heartRate = 0;
};

std::string replyTo(const rules::Finding& finding, const Slip& slip) {
  json::Writer writer;
  const auto item = [&](const char* linkId, const char* key, const std::string& value) {
    writer.beginObject().member("linkId", linkId).key("answer").beginArray().beginObject();
    if (std::string(key) == "valueCoding")
      writer.key(key).beginObject().member("system", "https://stile.example/option").member("code", value).endObject();
    else
      writer.member(key, value);
    writer.endObject().endArray().endObject();
  };
  writer.beginObject().member("resourceType", "QuestionnaireResponse");
  writer.member("questionnaire", "https://stile.example/questionnaire/clearance-reply|2026.11");
  writer.member("status", "completed").member("authored", "2026-11-20").key("item").beginArray();
  item("replyBy", "valueString", "A. Physician");
  item("replyDate", "valueDate", "2026-11-20");
  writer.beginObject().member("linkId", "replyFinding").key("item").beginArray();
  item("replyRule", "valueString", finding.rule->id);
  item("replyBasis", "valueString", finding.basis);
  item("replyAnswer", "valueCoding", slip.answer);
  if (!slip.bay.empty()) item("replyBay", "valueCoding", slip.bay);
  if (!slip.intensity.empty()) item("replyIntensity", "valueCoding", slip.intensity);
  item("replyFrom", "valueDate", slip.from);
  if (!slip.until.empty()) item("replyUntil", "valueDate", slip.until);
  if (slip.heartRate > 0) {
    writer.beginObject().member("linkId", "replyHeartRateLimit").key("answer").beginArray().beginObject();
    writer.key("valueQuantity").beginObject().member("value", slip.heartRate).member("unit", "/min");
    writer.member("system", "http://unitsofmeasure.org").member("code", "/min").endObject();
    writer.endObject().endArray().endObject();
  }
  writer.endArray().endObject().endArray().endObject();
  return writer.text();
}

/// The facts of the case branch-n3 (palpitations, explained, unchanged) with some members replaced.
std::string person(const std::vector<std::pair<std::string, std::string>>& changes = {}) {
  const test::CaseFile file(std::filesystem::path(STILE_SOURCE_DIR) / "tests/cases/branch-n3.json");
  const auto facts = *file.root().find("facts");
  json::Writer writer;
  writer.beginObject();
  for (std::size_t i = 0; i < facts.size(); ++i) {
    const std::string* instead = nullptr;
    for (const auto& [key, value] : changes)
      if (key == facts.keyAt(i)) instead = &value;
    writer.key(facts.keyAt(i));
    if (instead == nullptr)
      writer.copy(facts.at(i));
    else
      writer.numberText(*instead);  // written as it stands: true, false, null
  }
  writer.endObject();
  return writer.text();
}

screening::Screening screened(const std::string& facts, const std::string& reply = {}) {
  std::vector<application::Input> inputs{{"facts", facts}};
  if (!reply.empty()) inputs.push_back({"reply", reply});
  base::Issues issues;
  auto result = application::screenClient(test::content(), inputs, kDay, issues);
  std::string told;
  for (const auto& issue : issues.all()) told += toText(issue) + "\n";
  INFO(told);
  REQUIRE(result.ok());
  return std::move(result).value();
}

const rules::Finding& symptomIn(const screening::Screening& screening) {
  for (const auto& finding : screening.findings)
    if (finding.rule->id == "symptom-palpitations") return finding;
  throw std::runtime_error("the symptom is not there");
}

Rung opened(const std::string& facts, const Slip& slip = {}) {
  const auto before = screened(person());
  return screened(facts, replyTo(symptomIn(before), slip)).floor.usable.aerobic;
}

}  // namespace

TEST_CASE("A stable, explained symptom opens what the reply says, and no more") {
  CHECK(screened(person()).floor.usable.aerobic == Rung::None);
  CHECK(opened(person()) == Rung::Moderate);
  CHECK(opened(person(), {.intensity = "light"}) == Rung::Light);
}

TEST_CASE("The clearance ends the moment the symptom is changed, unconfirmed or worse") {
  CHECK(opened(person({{"palpitationsUnchanged", "false"}})) == Rung::None);
  CHECK(opened(person({{"palpitationsUnchanged", "null"}})) == Rung::None);
  CHECK(opened(person({{"palpitations", "null"}})) == Rung::None);
  CHECK(opened(person({{"unusualFatigue", "true"}})) == Rung::None);
}

TEST_CASE("A reply of another bay, without bay, without intensity, or that says no, opens nothing") {
  CHECK(opened(person(), {.bay = "strength"}) == Rung::None);
  CHECK(opened(person(), {.bay = ""}) == Rung::None);
  CHECK(opened(person(), {.intensity = ""}) == Rung::None);
  for (const char* answer : {"mustSeeFirst", "refer", "cannotComment"}) CHECK(opened(person(), {.answer = answer}) == Rung::None);
}

TEST_CASE("A reply is in force from its day until its end, twelve months when it has none") {
  CHECK(opened(person(), {.from = "2026-11-25"}) == Rung::Moderate);
  CHECK(opened(person(), {.from = "2026-11-26"}) == Rung::None);
  CHECK(opened(person(), {.until = "2026-11-25"}) == Rung::Moderate);
  CHECK(opened(person(), {.until = "2026-11-24"}) == Rung::None);
  CHECK(opened(person(), {.from = "2025-11-25"}) == Rung::Moderate);
  CHECK(opened(person(), {.from = "2025-11-24"}) == Rung::None);
}

TEST_CASE("A reply opens no hold of the day and no emergency, and the physician's own limits count") {
  CHECK(opened(person({{"acuteChestPressure", "true"}})) == Rung::None);
  CHECK(opened(person({{"restingHeartRate", "\"124 /min\""}})) == Rung::None);
  const auto before = screened(person());
  const auto after = screened(person(), replyTo(symptomIn(before), {.answer = "withLimits", .heartRate = 105}));
  CHECK(after.floor.usable.aerobic == Rung::Moderate);
  CHECK(after.floor.limits.heartRatePerMinute == base::Rational(105));
  REQUIRE(after.coverage.size() == 1);
  CHECK(after.coverage[0].by == "A. Physician");
}

TEST_CASE("The letter asks only for what is certain, uncovered and wanted") {
  const auto before = screened(person());
  REQUIRE(application::findingsToClear(before).size() == 1);
  const auto after = screened(person(), replyTo(symptomIn(before), {}));
  CHECK(application::findingsToClear(after).empty());
  CHECK(application::findingsToClear(screened("{}")).empty());
}
