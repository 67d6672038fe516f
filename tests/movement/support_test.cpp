// What carries a body: positions that rules forbid must be recognised from the pose alone.
#include "movement/support.h"

#include <catch2/catch.hpp>

#include "drawn_content.h"
#include "movement/demands.h"

using namespace stile::movement;

namespace {

bool shows(const char* exercise, const char* ban) {
  const Demands demands = demandsOf(realFigures().at(exercise), 0);
  return demands.bans.count(ban) + demands.limbBans[0].count(ban) + demands.limbBans[1].count(ban) > 0;
}

}  // namespace

TEST_CASE("Forbidden positions are recognised from the pose") {
  CHECK(shows("bridge", "supineFlat"));
  CHECK_FALSE(shows("clam", "supineFlat"));
  CHECK_FALSE(shows("clam", "prone"));
  CHECK(shows("prone-chest-lift", "prone"));
  CHECK(shows("fours-reach", "kneeling"));
  CHECK(shows("fours-reach", "weightOnHands"));
  CHECK_FALSE(shows("hip-front-kneeling", "weightOnHands"));
  CHECK(shows("hip-front-kneeling", "kneeling"));
  CHECK(shows("sit-back-stretch", "headBelowHeart"));
  CHECK_FALSE(shows("hip-hinge", "headBelowHeart"));
  CHECK(shows("hamstring-floor", "longSitting"));
  CHECK_FALSE(shows("hamstring-seated", "longSitting"));
  CHECK(shows("one-leg-stand", "singleLegStance"));
  CHECK(shows("one-leg-stand", "unsupportedBalance"));
  CHECK(shows("one-leg-held", "singleLegStance"));
  CHECK_FALSE(shows("one-leg-held", "unsupportedBalance"));
  CHECK(shows("tandem-stance", "unsupportedBalance"));
  CHECK_FALSE(shows("tandem-held", "unsupportedBalance"));
  CHECK(shows("wall-push-up", "weightOnHands"));
  CHECK_FALSE(shows("calf-straight", "weightOnHands"));
  CHECK(shows("shoulder-behind-towel", "armBehindBack"));
  CHECK_FALSE(shows("side-bend", "armBehindBack"));
  CHECK_FALSE(shows("walking", "unsupportedBalance"));
  CHECK(shows("walking", "weightBearing"));
  CHECK_FALSE(shows("seated-leg-extension", "weightBearing"));
}

TEST_CASE(
    "A heel raise keeps the body over the balls of the feet, a wall push-up does not keep it over the feet") {
  CHECK(demandsOf(bodiesOf(realFigures().at("heel-raise").forms.front()).back(), false).leastMargin > 0);
  CHECK(demandsOf(realFigures().at("wall-push-up"), 0).leastMargin < -.10);
}

TEST_CASE("The deepest hip bend of standing up lies on the way, not at either end") {
  const Figure& figure = realFigures().at("sit-to-stand");
  Form ends = figure.forms.front();
  ends.poses = {ends.poses.front(), ends.poses.back()};
  const double whole = demandsOf(figure.forms.front()).limbs[0].at("hipFlexion");
  const double atEnds = std::max(demandsOf(ends, 0).limbs[0].at("hipFlexion"), 0.0);
  CHECK(whole > atEnds + 8);
}
