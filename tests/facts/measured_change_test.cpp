// The difference of two results: whether it is real, and which way it goes.
#include "facts/measured_change.h"

#include <catch2/catch.hpp>

using stile::base::Rational;
using stile::facts::changeOf;
using stile::facts::Concern;
using stile::facts::Definition;
using stile::facts::Turn;

TEST_CASE("a difference is real from the smallest real change on, and better or worse by the dictionary") {
  Definition rises;
  rises.concern = Concern::Falling;
  rises.smallestChange = Rational(2);
  CHECK(*changeOf(rises, Rational(11), Rational(12))->isReal == false);
  CHECK(*changeOf(rises, Rational(11), Rational(13))->isReal);
  CHECK(changeOf(rises, Rational(11), Rational(13))->turn == Turn::Better);
  CHECK(changeOf(rises, Rational(13), Rational(11))->turn == Turn::Worse);
  CHECK(*changeOf(rises, Rational(13), Rational(11))->isReal);
  CHECK(changeOf(rises, Rational(13), Rational(13))->turn == Turn::None);

  Definition time;
  time.concern = Concern::Rising;
  CHECK(changeOf(time, Rational(9), Rational(12))->turn == Turn::Worse);
  CHECK_FALSE(changeOf(time, Rational(9), Rational(12))->isReal);

  Definition pressure;
  pressure.concern = Concern::OutsideRange;
  CHECK(changeOf(pressure, Rational(120), Rational(140))->turn == Turn::None);
}
