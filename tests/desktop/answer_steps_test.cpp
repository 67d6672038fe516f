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
