#include <algorithm>
#include <catch2/catch.hpp>

#include "planning.h"

using namespace stile;
using namespace stile::plan;
using base::Rational;
using limits::Rung;

namespace {

const Line& aerobicOf(const StarterPlan& plan) {
  const Line* line = lineFor(plan, "aerobic-endurance");
  REQUIRE(line != nullptr);
  return *line;
}

bool mentions(const std::vector<std::string>& sentences, const std::string& words) {
  return std::any_of(sentences.begin(), sentences.end(),
                     [&](const std::string& each) { return each.find(words) != std::string::npos; });
}

}  // namespace

TEST_CASE("The level is the first whose condition is certainly true, and unknown activity is the gentlest") {
  CHECK(Client().plan().level == "A");
  CHECK(Client().active(2, 9).plan().level == "A");
  CHECK(Client().active(2, 10).plan().level == "B");
  CHECK(Client().active(3, 20).plan().level == "B");
  CHECK(Client().active(3, 20).is("activityMonths", 1).plan().level == "C");
  CHECK(Client().startsAt('D').plan().level == "D");
  CHECK(Client().startsAt('D').is("age", 49).plan().level == "E");
  CHECK(Client().startsAt('D').is("age", 50).plan().level == "D");
}

TEST_CASE("Memory loss brings few exercises in their simplest forms, and memory that nobody asked about the gentlest level") {
  const auto plan = Client().hasEverything().startsAt('D').is("memoryProblem", true).plan();
  CHECK(plan.level == "M");
  CHECK(plan.lines.size() <= 8);
  CHECK(*aerobicOf(plan).dose.minutes == Rational(30));  // what is done now goes on
  CHECK(lineFor(plan, "balance-still")->exercise->id == "feet-together-held");
  CHECK(Client().startsAt('D').leavesOpen("memoryProblem").plan().level == "A");
  CHECK(Client().startsAt('D').is("takesDementiaMedicine", true).plan().level == "M");
}

TEST_CASE("Each level starts with its own doses") {
  const auto minutes = [](char level) { return *aerobicOf(Client().hasEverything().startsAt(level).plan()).dose.minutes; };
  CHECK(minutes('A') == Rational(10));
  CHECK(minutes('B') == Rational(15));
  CHECK(minutes('C') == Rational(20));
  CHECK(minutes('D') == Rational(30));
  const auto sets = [](char level) {
    return *lineFor(Client().hasEverything().startsAt(level).plan(), "leg-strength")->dose.sets;
  };
  CHECK(sets('A') == Rational(1));
  CHECK(sets('D') == Rational(2));
}

TEST_CASE("The start is never below the activity that is tolerated now") {
  const auto plan = Client().startsAt('D').active(5, 40).plan();
  CHECK(*aerobicOf(plan).dose.minutes == Rational(40));
  CHECK(*aerobicOf(plan).dose.daysPerWeek == Rational(5));
  CHECK(plan.levelBecause.find("40 minutes on 5 days") != std::string::npos);
  const auto once = Client().active(1, 60).plan();  // level A: the hour is spread over three days
  CHECK(*aerobicOf(once).dose.minutes == Rational(20));
  CHECK(*aerobicOf(once).dose.daysPerWeek == Rational(3));
}

TEST_CASE("A dose cap goes before tolerated activity, and its rule is named") {
  const auto plan = Client().startsAt('D').active(5, 40).under("heart-failure", dosed("aerobicMinutesPerSession", 10)).plan();
  CHECK(*aerobicOf(plan).dose.minutes == Rational(10));
  CHECK(mentions(aerobicOf(plan).becauseRules, "heart-failure"));
}

TEST_CASE("Moderate activity done now goes on as such, under the ceiling") {
  Client client;
  client.startsAt('C').is("activityIsModerate", true);
  CHECK(*aerobicOf(client.plan()).dose.effortHigh == Rational(6));
  CHECK(*aerobicOf(client.usable(Rung::Light, Rung::Light).plan()).dose.effortHigh == Rational(4));
  CHECK(*aerobicOf(Client().startsAt('C').plan()).dose.effortHigh == Rational(4));
}

TEST_CASE("An effort cap lowers the effort and its words") {
  const auto plan = [](int cap) { return Client().startsAt('D').under("heart", dosed("aerobicEffort", cap)).plan(); };
  CHECK(*aerobicOf(plan(6)).dose.effortHigh == Rational(6));
  CHECK(*aerobicOf(plan(5)).dose.effortHigh == Rational(5));
  CHECK(*aerobicOf(plan(4)).dose.effortHigh == Rational(4));
  CHECK(aerobicOf(plan(4)).dose.words.find(": light.") != std::string::npos);
  CHECK(*aerobicOf(plan(2)).dose.effortHigh == Rational(2));
  CHECK(aerobicOf(plan(2)).dose.words.find("very light") != std::string::npos);
}

TEST_CASE("Effort numbers, words and ceiling agree on every line of every level and ceiling") {
  const auto& doses = *realContent().library.doses;
  for (char level : {'A', 'B', 'C', 'D'}) {
    for (Rung rung : {Rung::Light, Rung::Moderate, Rung::Vigorous}) {
      const auto plan = Client().hasEverything().startsAt(level).usable(rung, rung).plan();
      for (const Line& line : plan.lines) {
        INFO(level << " " << limits::idOf(rung) << " " << line.exercise->id << ": " << line.dose.words);
        CHECK(line.exercise->intensity <= rung);
        CHECK(*line.dose.effortHigh <= Rational(rung == Rung::Light ? 4 : 6));
        CHECK(line.dose.words.find('{') == std::string::npos);
        CHECK(line.dose.words.find('?') == std::string::npos);
        if (isGraded(line.exercise->section))
          CHECK(line.dose.words.find(wordsFor(doses, *line.dose.effortLow, *line.dose.effortHigh)) != std::string::npos);
        if (line.exercise->section == Section::Aerobic) CHECK(line.dose.words.find("talk") != std::string::npos);
        if (line.exercise->section == Section::Strength) CHECK(line.dose.repetitionsInReserve.has_value());
      }
    }
  }
}

TEST_CASE("The heart-rate band needs age and resting pulse and the guide's leave") {
  const auto known = [] { return Client().is("age", 72).is("restingHeartRate", 68).usable(Rung::Light, Rung::Light); };
  const auto plan = known().plan();
  // 208 - 0.7 x 72 = 157.6; 30 % and 39 % of the reserve are 94.88 and 102.944.
  REQUIRE(aerobicOf(plan).dose.heartRateLow.has_value());
  CHECK(*aerobicOf(plan).dose.heartRateLow == Rational(95));
  CHECK(*aerobicOf(plan).dose.heartRateHigh == Rational(102));
  CHECK_FALSE(aerobicOf(Client().is("age", 72).plan()).dose.heartRateLow.has_value());
  CHECK_FALSE(aerobicOf(Client().is("restingHeartRate", 68).plan()).dose.heartRateLow.has_value());
  limits::Limits effortOnly;
  effortOnly.effortGuide = limits::EffortGuide::EffortOnly;
  const auto blocked = known().under("beta-blocker", effortOnly).plan();
  CHECK_FALSE(aerobicOf(blocked).dose.heartRateLow.has_value());
  CHECK(aerobicOf(blocked).dose.words.find("heart rate") == std::string::npos);
  CHECK(mentions(aerobicOf(blocked).becauseRules, "beta-blocker"));
}

TEST_CASE("The moderate band is 40 to 59 percent of the reserve") {
  const auto plan = Client().is("age", 72).is("restingHeartRate", 68).startsAt('D').plan();
  CHECK(*aerobicOf(plan).dose.heartRateLow == Rational(104));   // 103.84
  CHECK(*aerobicOf(plan).dose.heartRateHigh == Rational(120));  // 120.864
}

TEST_CASE("A heart-rate ceiling cuts the band, and below the band it stands alone") {
  const auto with = [](int ceiling) {
    limits::Limits asked;
    asked.heartRatePerMinute = ceiling;
    return Client().is("age", 72).is("restingHeartRate", 68).under("icd", asked).plan();
  };
  CHECK(*aerobicOf(with(100)).dose.heartRateHigh == Rational(100));
  CHECK_FALSE(aerobicOf(with(90)).dose.heartRateHigh.has_value());
  CHECK(aerobicOf(with(90)).dose.words.find("90 beats") != std::string::npos);
}

TEST_CASE("Strength doses keep under their caps and over their floors") {
  const auto legs = [](const limits::Limits& asked) {
    const auto plan = Client().hasEverything().startsAt('D').under("r", asked).plan();
    return lineFor(plan, "leg-strength")->dose;
  };
  CHECK(*legs(dosed("strengthSets", 1)).sets == Rational(1));
  CHECK(*legs(dosed("strengthRepetitions", 6)).repetitions == Rational(6));
  CHECK(*legs(dosed("strengthDaysPerWeek", 1)).daysPerWeek == Rational(1));
  CHECK(*legs(dosed("restSeconds", 120, true)).restSeconds == Rational(120));
  CHECK(*legs(dosed("repetitionsInReserve", 4, true)).repetitionsInReserve == Rational(4));
  CHECK(*legs(dosed("hoursBetweenStrength", 96, true)).daysPerWeek == Rational(1));
  CHECK(legs(dosed("hoursBetweenStrength", 72, true)).words.find("72 hours") != std::string::npos);
  CHECK(legs({}).words.find("48 hours") != std::string::npos);
}

TEST_CASE("A cap of nothing shuts the section and says so") {
  const auto plan = Client().hasEverything().under("wound", dosed("strengthSets", 0)).plan();
  CHECK(lineFor(plan, "leg-strength") == nullptr);
  CHECK(leftOutOf(plan, "", "leg-strength")->because.find("wound") != std::string::npos);
}

TEST_CASE("Load limits lower the intensity and are printed on lifted lines") {
  limits::Limits asked;
  asked.loadPercentOfMaximum = 50;
  asked.loadKilograms = 3;
  const auto plan = Client().hasEverything().startsAt('D').under("aneurysm", asked).plan();
  CHECK(*lineFor(plan, "leg-strength")->dose.effortHigh == Rational(4));
  const Line* curl = lineOf(plan, "arm-curl");
  REQUIRE(curl != nullptr);
  CHECK(curl->dose.words.find("3 kg") != std::string::npos);
  CHECK(curl->dose.words.find("50 in 100") != std::string::npos);
  CHECK(mentions(curl->becauseRules, "aneurysm"));
}

TEST_CASE("A cool-down floor lengthens the cool-down") {
  const auto plan = Client().under("pressure", dosed("coolDownMinutes", 10, true)).plan();
  const Line* coolDown = lineFor(plan, "cool-down");
  REQUIRE(coolDown != nullptr);
  CHECK(*coolDown->dose.minutes == Rational(10));
  CHECK(mentions(coolDown->becauseRules, "pressure"));
}

TEST_CASE("A session cap shrinks the main part and says so") {
  Client client;
  client.startsAt('D').under("pressure", dosed("coolDownMinutes", 10, true)).under("tired", dosed("sessionMinutes", 20));
  const auto plan = client.plan();
  CHECK(*lineFor(plan, "cool-down")->dose.minutes == Rational(10));
  CHECK(*lineFor(plan, "warm-up")->dose.minutes == Rational(5));
  CHECK(*aerobicOf(plan).dose.minutes == Rational(5));
  CHECK(mentions(plan.notes, "the main part is shorter"));
  CHECK(mentions(aerobicOf(plan).becauseRules, "tired"));
}

TEST_CASE("Where the floors alone exceed the session cap, the cap holds and the plan says so") {
  const auto plan = Client().under("a", dosed("coolDownMinutes", 10, true)).under("b", dosed("sessionMinutes", 8)).plan();
  CHECK(lineFor(plan, "aerobic-endurance") == nullptr);
  CHECK(*lineFor(plan, "cool-down")->dose.minutes == Rational(8));
  CHECK(mentions(plan.notes, "too short"));
}

TEST_CASE("Under a session cap the lines of a strength day fit into it") {
  for (int minutes : {12, 15, 20, 30}) {
    const auto plan = Client().hasEverything().startsAt('D').under("tired", dosed("sessionMinutes", minutes)).plan();
    Rational aerobicDay = 0;
    for (const Line& line : plan.lines) {
      if (bayOf(line.exercise->section) == limits::Bay::Aerobic)
        aerobicDay = *Rational::add(aerobicDay, *line.dose.minutes);
    }
    CHECK(aerobicDay <= Rational(minutes));
  }
}

TEST_CASE("Stretch and balance caps bind") {
  const auto plan = Client().hasEverything().startsAt('D')
                        .under("supple", dosed("stretchHoldSeconds", 10)).under("weary", dosed("balanceMinutes", 1)).plan();
  for (const Line& line : plan.lines) {
    if (line.exercise->section == Section::Stretching && line.dose.holdSeconds)
      CHECK(*line.dose.holdSeconds == std::min(Rational(10), line.exercise->holdSeconds.value_or(Rational(10))));
  }
  const auto balance = std::count_if(plan.lines.begin(), plan.lines.end(), [](const Line& line) {
    return line.exercise->section == Section::Balance;
  });
  CHECK(balance == 1);
}
