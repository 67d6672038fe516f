// Clock and counter of a test, with times that are told and not waited for.
#include "desktop/test_run.h"

#include <catch2/catch.hpp>

using stile::base::Rational;
using stile::desktop::TestRun;
using stile::rules::Gives;
using stile::rules::Measuring;
using State = TestRun::State;

namespace {

Measuring measuring(Gives gives, int seconds = 0) {
  Measuring how;
  how.gives = gives;
  how.seconds = seconds;
  return how;
}

}  // namespace

TEST_CASE("rises are counted while the clock runs, and none after it has ended") {
  TestRun run(measuring(Gives::Count, 30));
  CHECK(run.clock(0) == "0:30");
  run.press(1000);
  for (int i = 0; i < 12; ++i) run.press(2000 + i * 2000);
  CHECK(run.clock(25'000) == "0:06");
  CHECK_FALSE(run.result({}, {}));
  CHECK_FALSE(run.tick(30'999));
  run.press(31'000);
  CHECK(run.state() == State::Done);
  CHECK(run.counted() == 12);
  CHECK(run.result({}, {}) == "12");
  run.reset();
  CHECK(run.counted() == 0);
  CHECK(run.state() == State::Ready);
}

TEST_CASE("a stopwatch stops at the second press, in hundredths") {
  TestRun run(measuring(Gives::Time));
  run.press(5'000);
  CHECK(run.clock(9'480) == "4.4");
  CHECK(run.keyWords() == "Stop");
  run.press(14'849);
  CHECK(run.result({}, {}) == "9.84 s");
  CHECK(run.keyWords().empty());
}

TEST_CASE("a time that is held no further than ten seconds ends by itself") {
  Measuring how = measuring(Gives::Time);
  how.upTo = 10;
  TestRun run(how);
  run.press(0);
  CHECK_FALSE(run.tick(9'999));
  CHECK(run.tick(10'020));
  CHECK(run.result({}, {}) == "10 s");
}

TEST_CASE("a pulse counted for half a minute is told for a whole one") {
  TestRun run(measuring(Gives::PerMinute, 30));
  run.press(0);
  for (int i = 1; i <= 36; ++i) run.press(i * 800);
  REQUIRE(run.tick(30'000));
  CHECK(run.result({}, {}) == "72 /min");
}

TEST_CASE("laps and the rest of the last one make a distance, a course and its time a speed") {
  TestRun walk(measuring(Gives::Laps, 360));
  walk.press(0);
  for (int i = 1; i <= 13; ++i) walk.press(i * 27'000);
  REQUIRE(walk.tick(360'000));
  CHECK(walk.result(Rational(30), Rational(22)) == "412 m");
  CHECK(walk.result(Rational(30), {}) == "390 m");
  CHECK_FALSE(walk.result({}, Rational(22)));

  TestRun speed(measuring(Gives::Speed));
  speed.press(0);
  speed.press(3'600);
  CHECK(speed.result(Rational(4), {}) == "1.11 m/s");
  CHECK_FALSE(speed.result({}, {}));
}
