// Thousands of adults from open data (fetch.sh) through the real entry point: nobody makes it
// stumble, and the share referred before any exercise stands beside the published one.
#include <catch2/catch.hpp>
#include <cstdio>
#include <fstream>
#include <map>

#include "../support/content.h"
#include "application/screen_client.h"

using namespace stile;
using limits::Bay;
using limits::Clearance;

namespace {

const base::Date kDay = *base::Date::of(2026, 11, 25);

/// How many of the panel are screened; `--long` screens more, up to all.
constexpr int kUsualSize = 2000;

std::vector<std::string> people() {
  std::ifstream in(std::string(STILE_BINARY_DIR) + "/panel/people.ndjson");
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// Completed years on the day of the test; everybody in the panel was born in May.
int ageOf(const std::string& person) {
  return kDay.year() - std::stoi(test::parsed(person, "person")->root().find("birthDate")->string());
}

struct Tally {
  int adultsOverForty = 0, beforeAny = 0, beforeVigorousOnly = 0;
  std::map<std::string, int> actions, plans;

  void add(const screening::Screening& screening, int age) {
    ++actions[limits::idOf(screening.reach.limits.action)];
    ++plans[screening.planState == screening::PlanState::Made   ? "made"
            : screening.planState == screening::PlanState::Held ? "held"
                                                                : "none"];
    if (age < 40) return;
    ++adultsOverForty;
    const auto clearance = screening.reach.limits.clearance[Bay::Aerobic];
    if (clearance == Clearance::BeforeAny) ++beforeAny;
    if (clearance == Clearance::BeforeVigorous) ++beforeVigorousOnly;
  }

  double share(int count) const { return adultsOverForty == 0 ? 0 : 100.0 * count / adultsOverForty; }
};

std::string percent(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f %%", value);
  return text;
}

std::string counts(const std::map<std::string, int>& of) {
  std::string text;
  for (const auto& [name, count] : of)
    text += (text.empty() ? "" : ", ") + name + " " + std::to_string(count);
  return text;
}

}  // namespace

TEST_CASE("A panel of adults from open data is screened without a fault") {
  const auto lines = people();
  if (lines.empty()) {
    WARN("skipped: the panel was not fetched (tests/panel/fetch.sh)");
    return;
  }
  const std::size_t size = std::min(lines.size(), static_cast<std::size_t>(kUsualSize * test::scale()));
  Tally tally;
  for (std::size_t i = 0; i < size; ++i) {
    base::Issues issues;
    const auto screened =
        application::screenClient(test::content(), {{"person " + std::to_string(i), lines[i]}}, kDay, issues);
    std::string told;
    for (const auto& issue : issues.all())
      // Answers that contradict each other count as unknown and would shut plans for no reason of medicine.
      if (issue.severity == base::Severity::Error || issue.message.find("does not apply") != std::string::npos)
        told += toText(issue) + "\n";
    INFO("person " << i << "\n" << told);
    REQUIRE(screened.ok());
    CHECK(told.empty());
    const auto& screening = screened.value();
    for (const auto bay : limits::kBays) CHECK(screening.floor.usable[bay] <= screening.reach.usable[bay]);
    if (screening.reach.limits.action >= limits::Action::SameDay)
      CHECK(screening.planState == screening::PlanState::Nothing);
    tally.add(screening, ageOf(lines[i]));
  }
  WARN(size
       << " of " << lines.size() << " adults. Action today: " << counts(tally.actions)
       << ". Plans: " << counts(tally.plans) << ".\n"
       << "Of " << tally.adultsOverForty << " adults of 40 and over, "
       << percent(tally.share(tally.beforeAny)) << " are referred before any exercise and "
       << percent(tally.share(tally.beforeVigorousOnly))
       << " only before vigorous exercise; published for the United States, 2001 to 2004: 54.2 % and 2.6 % "
          "(Whitfield GP et al., Med Sci Sports Exerc 2017;49:2056-63).\n"
          "The shares differ because symptoms, illnesses and activity are drawn here at round shares of our "
          "own, because the "
          "three data sets are older and not weighted to a population, and because these rules ask for a "
          "clearance in more "
          "conditions than the published algorithm does.");
  CHECK(tally.adultsOverForty > 1000);
  CHECK(tally.share(tally.beforeAny) > 10);
  CHECK(tally.share(tally.beforeAny) < 95);
}
