// The ladder and the action strip in their states: words and rectangles, not pixels.
#include "documents/decision_drawing.h"

#include <catch2/catch.hpp>

#include "documents/decision_words.h"
#include "drawing/svg.h"
#include "drawing/text_width.h"
#include "sample_screenings.h"

using namespace stile;
using namespace stile::documents;
using limits::Action;
using limits::Bay;
using limits::Rung;
using screening::RungState;
using Words = std::vector<std::string>;

namespace {

Words wordsIn(const std::vector<drawing::Shape>& shapes) {
  drawing::Drawing drawing;
  drawing.shapes = shapes;
  Words words;
  for (const auto& run : textRunsOf(drawing)) words.push_back(run.text);
  return words;
}

Words wordsIn(const drawing::Drawing& drawing, const std::string& group) {
  const auto* found = findGroup(drawing, group);
  return found == nullptr ? Words{"(no group " + group + ")"} : wordsIn(found->shapes);
}

/// The first rectangle of a group.
drawing::Rectangle rectangleIn(const drawing::Drawing& drawing, const std::string& group) {
  for (const auto& shape : findGroup(drawing, group)->shapes)
    if (const auto* rectangle = std::get_if<drawing::Rectangle>(&shape.form)) return *rectangle;
  return {};
}

const char* const kRungs[] = {"aerobic-light",  "aerobic-moderate",  "aerobic-vigorous",
                              "strength-light", "strength-moderate", "strength-vigorous"};

screening::Screening settled(HandMade& made) {
  const auto cleared = made.finding("Type 2 diabetes", rules::KeyKind::Clearance, "a physician's reply");
  const auto eyes = made.finding("Eye check unknown", rules::KeyKind::Report, "an eye report");
  made.rung(Bay::Aerobic, Rung::Light, RungState::Open).rung(Bay::Aerobic, Rung::Moderate, RungState::Open);
  made.rung(Bay::Aerobic, Rung::Vigorous, RungState::Shut, {cleared})
      .rung(Bay::Strength, Rung::Light, RungState::Open);
  made.rung(Bay::Strength, Rung::Moderate, RungState::Shut, {eyes})
      .rung(Bay::Strength, Rung::Vigorous, RungState::Shut, {cleared, eyes});
  auto screening = made.make(Action::Routine, Action::Routine, {Rung::Moderate, Rung::Light},
                             {Rung::Moderate, Rung::Light});
  screening.isSettled = true;
  return screening;
}

}  // namespace

TEST_CASE("nothing known: six hatched rungs, each says so in words") {
  HandMade made;
  made.everyRung(RungState::NotYetKnown);
  const auto screening = made.make(Action::None, Action::Emergency, {}, {Rung::Vigorous, Rung::Vigorous});
  const auto ladder = ladderOf(screening);
  for (const char* rung : kRungs) {
    CHECK(wordsIn(ladder, rung) == Words{"not yet known"});
    CHECK(rectangleIn(ladder, rung).paint.isHatched);
    CHECK(rectangleIn(ladder, rung).paint.isDashed);
  }
  CHECK(wordsIn(ladder, "rest") == Words{"open: usual daily activity"});
  CHECK(decisionSentence(screening) == "Nothing can start yet: answers are missing.");
  CHECK(intervalSentence(screening) == "Sure so far: rest only. Still possible: up to vigorous.");

  const auto strip = actionStripOf(screening);
  for (const char* action : {"routine", "within days", "same day", "emergency"})
    CHECK(rectangleIn(strip, action).paint.isHatched);
  CHECK_FALSE(rectangleIn(strip, "none").paint.isHatched);
  CHECK(actionSentence(screening) == "Action today: none so far. Could still become: emergency.");
}

TEST_CASE("half known: shut rungs hang beside hatched ones") {
  HandMade made;
  const auto held = made.finding("Heart disease", rules::KeyKind::Clearance, "a physician's reply");
  for (const auto bay : limits::kBays)
    made.rung(bay, Rung::Light, RungState::NotYetKnown)
        .rung(bay, Rung::Moderate, RungState::NotYetKnown)
        .rung(bay, Rung::Vigorous, RungState::Shut, {held});
  const auto ladder =
      ladderOf(made.make(Action::None, Action::SameDay, {}, {Rung::Moderate, Rung::Moderate}));
  CHECK(wordsIn(ladder, "aerobic-vigorous") == Words{"shut", "after clearance"});
  CHECK(wordsIn(ladder, "aerobic-moderate") == Words{"not yet known"});
  const auto above = rectangleIn(ladder, "aerobic-moderate"), below = rectangleIn(ladder, "aerobic-light");
  CHECK(below.y - above.y == Approx(58));
  CHECK(above.x == Approx(below.x));
  const auto right = rectangleIn(ladder, "strength-moderate");
  CHECK(right.x > above.x + above.width);
  CHECK(right.x + right.width <= ladder.width);
}

TEST_CASE("settled: open bars reach into both uprights, shut rungs say what opens them") {
  HandMade made;
  const auto screening = settled(made);
  const auto ladder = ladderOf(screening);
  CHECK(wordsIn(ladder, "aerobic-moderate") == Words{"open"});
  CHECK(wordsIn(ladder, "strength-moderate") == Words{"shut", "after a report"});
  CHECK(wordsIn(ladder, "strength-vigorous") == Words{"shut", "after clearance", "and 1 more"});
  const auto bar = rectangleIn(ladder, "aerobic-moderate"), socket = rectangleIn(ladder, "strength-moderate");
  CHECK(bar.paint.fill == drawing::Colour::Open);
  CHECK(bar.height == 38);
  CHECK(socket.paint.fill == drawing::Colour::Sheet);
  CHECK(socket.height == 20);
  CHECK(decisionSentence(screening) == "Open to moderate. Strength: light for now.");
  CHECK(intervalSentence(screening) == "Settled. No unanswered question can change it.");
  CHECK(
      ladder.description.find("Moderate, strength: shut until: an eye report. Reason: Eye check unknown.") !=
      std::string::npos);
  const auto strip = actionStripOf(screening);
  CHECK(rectangleIn(strip, "routine").paint.strokeWidth == 3);
  CHECK(rectangleIn(strip, "within days").paint.stroke == drawing::Colour::Hair);
}

TEST_CASE("a label that does not fit the tag hangs below it and makes room, at its own size") {
  HandMade made;
  const auto ladder = ladderOf(settled(made));
  const auto lower = rectangleIn(ladder, "aerobic-light"), upper = rectangleIn(ladder, "aerobic-moderate");
  CHECK(lower.y - upper.y > 58);
  for (const auto& run : textRunsOf(ladder)) {
    CHECK(run.size >= 14);
    const double width = drawing::textWidth(run.text, run.size, run.isBold);
    if (run.align == drawing::Align::Middle) {
      CHECK(run.at.x - width / 2 >= 0);
      CHECK(run.at.x + width / 2 <= ladder.width);
    }
    CHECK(run.at.y <= ladder.height);
  }
}

TEST_CASE("held by one same reason: one large notice over both bays") {
  HandMade made;
  const auto pressure = made.finding("Resting pressure too high to start", rules::KeyKind::Measurement,
                                     "two readings under 180 over 110 after five minutes of rest");
  made.everyRung(RungState::Shut, {pressure});
  const auto screening = made.make(Action::WithinDays);
  const auto ladder = ladderOf(screening);
  const Words words = wordsIn(ladder, "held");
  REQUIRE(words.size() >= 3);
  CHECK(words.front() == "Shut");
  std::string rest;
  for (std::size_t i = 1; i < words.size(); ++i) rest += (rest.empty() ? "" : " ") + words[i];
  CHECK(rest == "until: two readings under 180 over 110 after five minutes of rest");
  for (const char* rung : kRungs) CHECK(findGroup(ladder, rung) == nullptr);
  CHECK(decisionSentence(screening) == "Shut for now.");
}

TEST_CASE("two reasons are two sets of notices, never one") {
  HandMade made;
  const auto one = made.finding("One", rules::KeyKind::Clearance, "a"),
             two = made.finding("Two", rules::KeyKind::Report, "b");
  for (const auto rung : {Rung::Light, Rung::Moderate, Rung::Vigorous})
    made.rung(Bay::Aerobic, rung, RungState::Shut, {one}).rung(Bay::Strength, rung, RungState::Shut, {two});
  const auto ladder = ladderOf(made.make());
  CHECK(findGroup(ladder, "held") == nullptr);
  CHECK(wordsIn(ladder, "strength-light") == Words{"shut", "after a report"});
}

TEST_CASE("emergency: the ladder lies on the ground and a slab of words stands in its place") {
  HandMade made;
  const auto chest = made.finding("Chest pressure now or in the last day", rules::KeyKind::Assessment,
                                  "the report", Action::Emergency);
  made.at(chest).reach.referrals["emergency"].meanwhile = {"No exercise. Stay with the client."};
  made.everyRung(RungState::Shut, {chest});
  const auto screening = made.make(Action::Emergency, Action::Emergency);
  const auto ladder = ladderOf(screening, "112");
  CHECK(wordsIn(ladder, "emergency") ==
        Words{"Chest pressure now or in the last day", "Call 112", "No exercise. Stay with the client."});
  CHECK(rectangleIn(ladder, "emergency").paint.fill == drawing::Colour::Slab);
  CHECK(rectangleIn(ladder, "emergency").width == ladder.width);
  CHECK(findGroup(ladder, "rest") == nullptr);
  const Words without = wordsIn(ladderOf(screening), "emergency");
  CHECK(without[1] + " " + without[2] == "Call the emergency number");
  CHECK(rectangleIn(actionStripOf(screening), "emergency").paint.fill == drawing::Colour::Slab);
  CHECK(ladderInText(screening, "112").front() == "*** Call 112 ***");
}

TEST_CASE("the ladder in text has a line a rung and names both bays") {
  HandMade made;
  const auto lines = ladderInText(settled(made));
  REQUIRE(lines.size() == 5);
  CHECK(lines[0].find("Aerobic") != std::string::npos);
  CHECK(lines[2] == "Moderate   | === open ===            | shut after a report");
  for (const auto& line : lines) CHECK(line.size() <= 80);
}

TEST_CASE("the ladder is the same bytes each time") {
  HandMade made;
  const auto screening = settled(made);
  CHECK(toSvg(ladderOf(screening)) == toSvg(ladderOf(screening)));
}
