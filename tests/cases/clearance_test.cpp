// A clearance covers what it names, up to what it says, for as long as nothing has changed.
#include <catch2/catch.hpp>

#include "application/clearance_request.h"
#include "application/screen_client.h"
#include "case_file.h"
#include "reply_slip.h"

using namespace stile;
using limits::Rung;
using test::Slip;
using test::replyTo;

namespace {

const base::Date kReplyDay = *base::Date::of(2026, 11, 25);

/// The facts of the case branch-n3 (palpitations, explained, unchanged) with some members replaced.
std::string person(const std::vector<std::pair<std::string, std::string>>& changes = {}) {
  const test::CaseFile file(std::filesystem::path(STILE_SOURCE_DIR) / "tests/cases/branch-n3.json");
  const auto document = test::parsed(file.facts(), "branch-n3");
  const json::Node facts = document->root();
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
  auto result = application::screenClient(test::content(), inputs, kReplyDay, issues);
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
