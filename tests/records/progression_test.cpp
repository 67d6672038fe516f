// The week of the plan after check-ins: never further on what was not told, and back by the rules.
#include <catch2/catch.hpp>

#include "sample_record.h"

using namespace stile;
using namespace stile::test;

namespace {

/// A client who began a plan of six weeks on 5 January: 3 sessions, 30 minutes more each week.
SampleRecord begun() {
  SampleRecord record;
  std::string weeks;
  for (int week = 1; week <= 6; ++week)
    weeks += std::string(week == 1 ? "" : ",") + "{'week': " + std::to_string(week) + ", 'aerobicDays': 3, 'strengthDays': 2, 'aerobicMinutesPerWeek': " + std::to_string(30 * week) +
             ", 'words': 'week " + std::to_string(week) + "'}";
  const auto screening = record.add("screening", "{'date': '2026-01-02', 'content': 'x', 'rules': [], 'result': {'plan': {'lines': [{'dose': {'effortHigh': 4}}], 'weeks': [" + weeks + "]}}}");
  record.add("started", "{'date': '2026-01-05', 'screening': '" + screening + "'}");
  return record;
}

/// The week on `on` after one check-in on 26 January, when three weeks are done.
int weekAfter(const std::string& members, const char* on = "2026-01-26") {
  SampleRecord record = begun();
  record.add("checkIn", "{'date': '2026-01-26', 'symptoms': false" + members + "}");
  return records::planStand(record.folded(), SampleRecord::policy(), day(on))->week;
}

const std::string kWell = ", 'sessionsDone': 9, 'effort': 4, 'painNextMorning': 0";

}  // namespace

TEST_CASE("Between check-ins the weeks go on by themselves, up to the last") {
  const SampleRecord record = begun();
  const auto weekOn = [&](const char* on) { return records::planStand(record.folded(), SampleRecord::policy(), day(on))->week; };
  CHECK(weekOn("2026-01-05") == 1);
  CHECK(weekOn("2026-01-11") == 1);
  CHECK(weekOn("2026-01-12") == 2);
  CHECK(weekOn("2026-12-01") == 6);
}

TEST_CASE("A check-in moves the client on, holds, or takes back, by the first rule that holds") {
  CHECK(weekAfter(kWell) == 4);
  CHECK(weekAfter(kWell, "2026-02-02") == 5);
  CHECK(weekAfter("") == 3);                                                                   // nothing was told
  CHECK(weekAfter(", 'sessionsDone': 9, 'effort': 4") == 3);                                   // pain was not told
  CHECK(weekAfter(", 'sessionsDone': 7, 'effort': 4, 'painNextMorning': 0") == 4);             // 7 of 9 is more than two thirds
  CHECK(weekAfter(", 'sessionsDone': 6, 'effort': 4, 'painNextMorning': 0") == 3);             // 6 of 9 is less than 67 in 100
  CHECK(weekAfter(", 'sessionsDone': 9, 'effort': 5, 'painNextMorning': 0") == 3);             // above the plan's 4
  CHECK(weekAfter(", 'sessionsDone': 9, 'effort': 4, 'painNextMorning': 2") == 4);
  CHECK(weekAfter(", 'sessionsDone': 9, 'effort': 4, 'painNextMorning': 3") == 2);             // not settled, the usual pain is not known
  CHECK(weekAfter(", 'sessionsDone': 9, 'effort': 4, 'painNextMorning': 4, 'usualPain': 4") == 4);
  CHECK(weekAfter(", 'sessionsDone': 9, 'effort': 4, 'painNextMorning': 4, 'usualPain': 3") == 2);
  CHECK(weekAfter(kWell + ", 'weeksMissed': 1") == 2);
  CHECK(weekAfter(kWell + ", 'weeksMissed': 2") == 1);
  CHECK(weekAfter(kWell + ", 'illness': true") == 1);                                          // half of the 90 minutes of week 3
}

TEST_CASE("The week repeated begins on the day of the check-in") {
  CHECK(weekAfter("", "2026-02-01") == 3);
  CHECK(weekAfter("", "2026-02-02") == 4);
}

TEST_CASE("No plan stands before it is begun, nor after a newer screening until that is begun") {
  SampleRecord record = begun();
  record.add("screening", "{'date': '2026-02-02', 'content': 'x', 'rules': []}");
  CHECK_FALSE(records::planStand(record.folded(), SampleRecord::policy(), day("2026-02-03")));
  CHECK_FALSE(records::planStand(SampleRecord().folded(), SampleRecord::policy(), day("2026-02-03")));
}
