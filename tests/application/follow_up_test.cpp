// What happens after a screening: events, check-ins, referrals, and screening again.
#include <catch2/catch.hpp>

#include "application/client_events.h"
#include "application/screen_again.h"
#include "application/stored_inputs.h"
#include "tarnside.h"

using namespace stile;
using namespace stile::test;

namespace {

std::string quoted(std::string body) {
  std::replace(body.begin(), body.end(), '\'', '"');
  return body;
}

std::string personText(const std::string& name) { return textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/documents/people" / (name + ".json")); }

}  // namespace

TEST_CASE("The follow-up policy of the content: every scope of an event names rules that exist") {
  base::Issues issues;
  const auto policy = take(application::loadFollowUp(STILE_SOURCE_DIR, issues));
  REQUIRE(policy.events.size() == 7);
  for (const auto& [what, event] : policy.events) {
    for (const std::string& pattern : event.endsClearanceOf) {
      INFO(what << ": " << pattern);
      const auto& rules = content().rules.rules;
      CHECK(std::any_of(rules.begin(), rules.end(), [&](const auto& rule) { return records::matchesAny(rule.id, {pattern}); }));
    }
  }
}

TEST_CASE("An event holds the plan, ends replies of its scope, and drafts a letter; a wrong one drafts none") {
  Tarnside tarnside;
  auto& clinic = *tarnside.clinic;
  tarnside.screen({{"answers", personText("waiting")}});
  take(tarnside.put("consent", "{'date': '2026-11-25', 'what': 'physician', 'given': true, 'how': 'signed'}"));
  const auto asked = take(application::askPhysician(clinic, tarnside.id, content(), "Dr Hale", kTarnsideDay));
  const std::string reply = "{'date': '2026-11-25', 'request': '" + asked.request + "', 'until': '2027-11-25', 'response': {'resourceType': 'QuestionnaireResponse', 'item': ["
                            "{'linkId': 'replyFinding', 'item': [{'linkId': 'replyRule', 'answer': [{'valueString': 'metabolic-active'}]}]},"
                            "{'linkId': 'replyFinding', 'item': [{'linkId': 'replyRule', 'answer': [{'valueString': 'cardiovascular-not-active'}]}]}]}}";
  auto work = take(application::RecordWork::open(clinic, tarnside.id));
  work.add("clearanceReply", quoted(reply));
  const auto standing = [&](application::RecordWork& on) {
    std::string text;
    for (const auto& input : application::repliesOnRecord(on)) text += input.text;
    return text;
  };
  CHECK(contains(standing(work), "metabolic-active"));
  CHECK(contains(standing(work), "cardiovascular-not-active"));
  auto low = work;
  low.add("event", quoted("{'date': '2026-11-26', 'what': 'lowGlucose', 'doing': 'walking', 'done': 'juice'}"));
  CHECK_FALSE(contains(standing(low), "metabolic-active"));
  CHECK(contains(standing(low), "cardiovascular-not-active"));
  auto faint = work;
  faint.add("event", quoted("{'date': '2026-11-26', 'what': 'faint', 'doing': 'walking', 'done': 'lay down'}"));
  CHECK(standing(faint).empty());
  auto earlier = work;
  earlier.add("event", quoted("{'date': '2026-11-24', 'what': 'faint', 'doing': 'walking', 'done': 'lay down'}"));
  CHECK(contains(standing(earlier), "cardiovascular-not-active"));

  base::Issues issues;
  const auto filed = take(application::fileEvent(clinic, tarnside.id, quoted("{'date': '2026-11-26', 'what': 'faint', 'doing': 'climbing stairs', 'done': 'lay down'}"), "e", issues));
  CHECK(filed.mayBeSent);
  CHECK(contains(filed.letterText, "Maren Oakshott, born 14 March 1963, fainted on 26 November 2026 while climbing stairs"));
  CHECK(contains(filed.letterText, "Outcome: not told"));
  const base::Date next = *base::Date::of(2026, 11, 27);
  CHECK(contains(tarnside.due(next), "eventLetter"));
  CHECK(contains(take(application::showClient(clinic, tarnside.id, next)), "The plan waits because of the event of 26 November 2026"));
  CHECK_FALSE(application::fileEvent(clinic, tarnside.id, "{}", "e", issues).ok());
}

TEST_CASE("Check-ins move the week of a begun plan, and symptoms make it wait") {
  Tarnside tarnside;
  auto& clinic = *tarnside.clinic;
  const auto filed = tarnside.screen({{"answers", personText("healthy")}});
  REQUIRE(filed.screening.planState == screening::PlanState::Made);
  take(tarnside.put("started", "{'date': '2026-11-25', 'screening': '" + filed.entry + "'}"));
  const auto shown = [&](const char* day) { return take(application::showClient(clinic, tarnside.id, *base::Date::parse(day))); };
  CHECK(contains(shown("2026-11-25"), "Plan: week 1 of "));
  CHECK(contains(shown("2026-12-09"), "Plan: week 3 of "));
  take(tarnside.put("checkIn", "{'date': '2026-12-09', 'symptoms': false}"));
  CHECK(contains(shown("2026-12-09"), "Plan: week 2 of "));
  CHECK(contains(shown("2026-12-09"), "were not told"));
  take(tarnside.put("checkIn", "{'date': '2026-12-16', 'symptoms': false, 'sessionsDone': 7, 'effort': 3, 'painNextMorning': 0}"));
  CHECK(contains(shown("2026-12-16"), "Plan: week 3 of "));
  take(tarnside.put("checkIn", "{'date': '2026-12-23', 'symptoms': true}"));
  CHECK(contains(shown("2026-12-23"), "and waits"));
}

TEST_CASE("Screening again: every value is not confirmed, a list has room for more, and what changed is shown") {
  Tarnside tarnside;
  auto& clinic = *tarnside.clinic;
  const std::string first = R"({"fallsLastYear": 2, "heartConditions": ["none"], "medicine": [{"medicineName": "bisoprolol"}, {"medicineName": "apixaban"}]})";
  const std::string second = R"({"fallsLastYear": 0, "heartConditions": ["none"], "medicine": [{"medicineName": "apixaban"}, {"medicineName": "metformin"}]})";
  tarnside.screen({{"answers", first}});
  take(application::prefill(clinic, tarnside.id, content().dictionary, kTarnsideDay));
  CHECK_FALSE(application::prefill(clinic, tarnside.id, content().dictionary, kTarnsideDay).ok());
  const auto filed = tarnside.screen();
  const auto& facts = filed.screening.facts;
  const auto slotOf = [](const char* id) { return content().dictionary.find(id)->slot; };
  CHECK(facts.at(slotOf("fallsLastYear")).reason == facts::UnknownReason::NotConfirmed);
  CHECK(facts.at(slotOf("heartConditionsAngina")).value.isUnknown());
  REQUIRE(facts.repetitions("medicine") == 3);
  for (int i = 0; i < 3; ++i) CHECK(facts.at(slotOf("medicineName"), i).value.isUnknown());
  tarnside.screen({{"answers", first}});
  tarnside.screen({{"answers", second}});
  const std::string changes = take(application::whatChanged(clinic, tarnside.id));
  CHECK(contains(changes, "fallsLastYear: 2 -> 0"));
  CHECK(contains(changes, "bisoprolol"));
  CHECK(contains(changes, "metformin"));
  CHECK_FALSE(contains(changes, "apixaban ->"));  // only its place in the list is another
}

TEST_CASE("Medicines of a referral and of the client are compared by name") {
  Tarnside tarnside;
  auto& clinic = *tarnside.clinic;
  const auto referral = take(tarnside.put("referralIn", "{'date': '2026-11-20', 'from': 'Dr Hale', 'reason': 'knee', 'urgency': 'routine', 'medicines': ['Bisoprolol 2.5 mg', 'apixaban']}"));
  CHECK_FALSE(application::compareMedicines(clinic, tarnside.id, referral).ok());
  tarnside.screen({{"answers", R"({"medicine": [{"medicineName": "bisoprolol"}, {"medicineName": "metformin 500"}]})"}});
  const auto found = take(application::compareMedicines(clinic, tarnside.id, referral));
  CHECK(found.onlyReferred == std::vector<std::string>{"apixaban"});
  CHECK(found.onlyTold == std::vector<std::string>{"metformin 500"});
  take(tarnside.put("referralOutcome", "{'date': '2026-11-25', 'referral': '" + referral + "', 'outcome': 'accepted', 'because': 'fits'}"));
  CHECK(contains(tarnside.due(), "reconcile"));
  take(tarnside.put("referralReconciled", "{'date': '2026-11-25', 'referral': '" + referral + "', 'differences': ['apixaban'], 'settled': 'stopped in May'}"));
  CHECK_FALSE(contains(tarnside.due(), "reconcile"));
}
