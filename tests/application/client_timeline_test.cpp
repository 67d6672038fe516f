// What happened to a client, in the order in which it happened.
#include "application/client_timeline.h"

#include <catch2/catch.hpp>

#include "tarnside.h"

using namespace stile;
using namespace stile::test;

TEST_CASE("The timeline has the newest day first, with what each entry says, and no drafts") {
  Tarnside tarnside;
  const auto healthy = textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/documents/people/healthy.json");
  tarnside.screen({{"answers", healthy}});
  take(tarnside.put("checkIn", "{'date': '2026-12-09', 'sessionsDone': 3, 'symptoms': false, 'note': 'likes it'}"));
  take(tarnside.put("consent", "{'date': '2026-11-20', 'what': 'physician', 'given': true, 'how': 'signed'}"));
  const auto work = take(application::RecordWork::open(*tarnside.clinic, tarnside.id));
  const auto lines = application::timelineOf(*tarnside.clinic, work.entries());
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].kind == "checkIn");
  CHECK(lines[0].words == "Sessions done: 3; New symptoms: no; Note: likes it");
  CHECK(lines[1].kind == "screening");
  CHECK(contains(lines[1].words, "Action: none"));
  CHECK(contains(lines[1].words, "Aerobic: vigorous"));
  CHECK(lines[2].words == "sharing with the physician; Given: yes; How: signed");
  const std::string text = take(application::clientTimeline(*tarnside.clinic, tarnside.id, kTarnsideDay));
  CHECK(contains(text, "2026-12-09  How it goes: Sessions done: 3"));
}
