// What an edited copy of the rules would change for a client.
#include "application/compare_content.h"

#include <catch2/catch.hpp>

#include "application/content_folder.h"
#include "tarnside.h"

using namespace stile;
using namespace stile::test;

TEST_CASE("A rule that is added in a copy shows in decision and findings, and the same content changes nothing") {
  Tarnside tarnside;
  auto& clinic = *tarnside.clinic;
  CHECK_FALSE(application::compareContent(clinic, tarnside.id, content(), content(), kTarnsideDay).ok());
  tarnside.screen({{"answers", textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/documents/people/healthy.json")}});
  const auto same = take(application::compareContent(clinic, tarnside.id, content(), content(), kTarnsideDay));
  CHECK(same.isSame());
  CHECK(contains(application::toText(same), "Nothing changes for this client."));

  auto files = take(application::readContentFolder(STILE_SOURCE_DIR));
  files["rules/screening/house-rule.json"] = R"({"topic": "house-rule", "rules": [{"id": "house-light", "title": "House rule",
    "when": "%age >= 18", "then": {"ceiling": {"both": "light"}}, "until": {"key": "assessment", "say": "the lead's word"},
    "say": {"clinician": "Adults start light here.", "client": "You start light here."},
    "sayOpen": {"clinician": "Age not known: start light.", "client": "You start light here."},
    "sources": ["practice-policy"], "reviewed": {"date": "2026-11-25", "by": "Stile authors", "licensed": false}}]})";
  base::Issues issues;
  const auto edited = screening::Content::load(files, issues);
  for (const auto& issue : issues.all()) UNSCOPED_INFO(base::toText(issue));
  REQUIRE_FALSE(issues.hasErrors());
  const auto changed = take(application::compareContent(clinic, tarnside.id, content(), edited, kTarnsideDay));
  REQUIRE(changed.findings.size() == 1);
  CHECK(changed.findings.front().what == "House rule");
  CHECK(changed.findings.front().before.empty());
  CHECK(changed.findings.front().now == "certain: Adults start light here.");
  const std::string text = application::toText(changed);
  CHECK(contains(text, "aerobic, sure so far: vigorous -> light"));
}
