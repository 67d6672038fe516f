// What is typed at a question on its way into the interview.
#include "desktop/answer_steps.h"

#include <catch2/catch.hpp>

#include "../application/tarnside.h"

using namespace stile;
using namespace stile::test;
using interview::QuestionRef;

TEST_CASE("both numbers of a blood pressure can be typed at once; of anything else two are none") {
  Tarnside tarnside;
  auto begun = take(application::ClientInterview::open(*tarnside.clinic, tarnside.id, content(), "", kTarnsideDay));
  auto& session = begun->session();
  const auto refOf = [&](const char* id) {
    const auto* fact = content().dictionary.find(id);
    return QuestionRef{session.ground().questions().placeOf(fact->slot), fact->groupIndex < 0 ? -1 : 0};
  };
  const auto saidOf = [&](const char* id) {
    const auto* said = session.said(refOf(id));
    return said == nullptr || said->answers.empty() ? "" : said->answers.front().numberText;
  };
  auto step = desktop::takeTyped(*begun, refOf("readingSystolic"), "138/82 mmHg", false);
  CHECK(step.isTaken);
  CHECK(saidOf("readingSystolic") == "138");
  CHECK(saidOf("readingDiastolic") == "82");
  // The first that cannot be stops both; the second is told where it is asked.
  step = desktop::takeTyped(*begun, refOf("readingSystolic"), "1380/70", false);
  CHECK_FALSE(step.isTaken);
  CHECK(saidOf("readingDiastolic") == "82");
  step = desktop::takeTyped(*begun, refOf("readingSystolic"), "140/9000", false);
  CHECK(step.isTaken);
  CHECK(saidOf("readingSystolic") == "140");
  CHECK(saidOf("readingDiastolic") == "82");
  CHECK_FALSE(desktop::takeTyped(*begun, refOf("restingHeartRate"), "72/60", false).isTaken);
  CHECK_FALSE(desktop::takeTyped(*begun, refOf("readingDiastolic"), "82/70", false).isTaken);
}

TEST_CASE("what is taken back stands there again: marks of a list, what was said to a question") {
  Tarnside tarnside;
  auto begun = take(application::ClientInterview::open(*tarnside.clinic, tarnside.id, content(), "", kTarnsideDay));
  auto& session = begun->session();
  const auto list = session.prompt()->questions;
  REQUIRE(list.size() > 3);
  take(begun->answerList({list[1]}, {list[2]}));
  const auto said = session.response().answered;
  REQUIRE(take(begun->back()));
  auto view = desktop::questionViewOf(session);
  desktop::putBack(view, session, said);
  std::vector<int> wanted(list.size(), 0);
  wanted[1] = 1;
  wanted[2] = 2;
  CHECK(view.marks == wanted);
  auto fresh = desktop::questionViewOf(session);
  desktop::putBack(fresh, session, {});
  CHECK(fresh.marks == std::vector<int>(list.size(), 0));
  session.change({session.ground().questions().placeOf(content().dictionary.find("takesAnyMedicine")->slot), -1});
  auto one = desktop::takeRow(*begun, session.prompt()->questions.front(), {desktop::AnswerRow::Kind::Yes, "1", "Yes", 0, false});
  REQUIRE(one.isTaken);
  const auto saidYes = session.response().answered;
  REQUIRE(take(begun->back()));
  auto again = desktop::questionViewOf(session);
  desktop::putBack(again, session, saidYes);
  CHECK(again.before == "yes");
}
