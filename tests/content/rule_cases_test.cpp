// Every rule against its own cases (tests/rules/*.json): facts that fire it, that do not, and
// that leave it open. A rule without all three fails the count.
#include <catch2/catch.hpp>
#include <map>
#include <set>

#include "rules/finding.h"
#include "../support/content.h"

using namespace stile;

namespace {

const base::Date kUsualDay = *base::Date::of(2026, 11, 25);

std::string outcomeOf(const std::string& ruleId, json::Node object, base::Date today) {
  base::Issues issues;
  const auto& content = test::content();
  const auto facts = facts::factsFromPlain(content.dictionary, content.forms, object, today, issues,
                                           facts::PolicyChoice::Allowed);
  for (const auto& issue : issues.all())
    if (issue.severity == base::Severity::Error) return "refused: " + toText(issue);
  std::string outcome = "out";
  const rules::Rule* const rule = content.rules.find(ruleId);
  if (rule == nullptr) return "no such rule";
  for (const auto& finding : rules::evaluateRule(*rule, facts, today)) {
    if (finding.standing == rules::Standing::Certain) return "fires";
    outcome = "open";
  }
  return outcome;
}

std::map<std::string, std::set<std::string>>& counted() {
  static std::map<std::string, std::set<std::string>> outcomes;
  return outcomes;
}

int runEntry(json::Node entry, const std::string& file) {
  const std::string rule = entry.find("rule")->string();
  INFO(file << ": " << rule);
  const auto day = entry.find("date");
  const base::Date today = day ? *base::Date::parse(day->string()) : kUsualDay;
  CHECK(test::content().rules.find(rule) != nullptr);
  REQUIRE(entry.find("source"));
  int run = 0;
  for (const char* expected : {"fires", "out", "open"}) {
    const auto facts = entry.find(expected);
    if (!facts) continue;
    for (std::size_t i = 0; i < (facts->isArray() ? facts->size() : 1); ++i) {
      const json::Node one = facts->isArray() ? facts->at(i) : *facts;
      INFO(expected << " " << i << " at line " << one.place().line);
      CHECK(outcomeOf(rule, one, today) == expected);
      counted()[rule].insert(expected);
      ++run;
    }
  }
  return run;
}

}  // namespace

TEST_CASE("Every rule fires, stays out and stays open where its cases say so, and has all three") {
  int run = 0;
  for (const auto& path : test::jsonFiles("rules")) {
    const auto document = test::parsed(test::textOf(path), path.filename().string());
    for (std::size_t i = 0; i < document->root().size(); ++i) run += runEntry(document->root().at(i), path.filename().string());
  }
  for (const auto& rule : test::content().rules.rules) {
    INFO(rule.id << " in " << rule.file);
    CHECK(counted()[rule.id] == std::set<std::string>{"fires", "open", "out"});
  }
  WARN(test::content().rules.rules.size() << " rules, " << run << " rule cases");
  CHECK(test::content().rules.rules.size() >= 60);
}
