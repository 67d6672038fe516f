// From entries to who waits for whom, since when, and what is next.
#include <catch2/catch.hpp>

#include "sample_record.h"

using namespace stile;
using namespace stile::test;
using records::ClearanceState;

TEST_CASE("A letter is sent, chased on days 7, 14 and 28, answered, and ends") {
  SampleRecord record;
  const auto first = record.add("screening", "{'date': '2026-01-05', 'content': 'x', 'rules': ['heart-known']}");
  record.add("signOff", "{'date': '2026-01-05', 'screening': '" + first + "'}", "ines");
  const auto request = record.add("clearanceRequest", "{'date': '2026-01-05', 'screening': '" + first + "', 'rules': ['heart-known'], 'to': 'Dr Hale'}");
  const auto state = [&](const char* on) { return record.folded().clearances.front().stateOn(day(on)); };
  CHECK(record.told() == "sendLetter 2026-01-05; screenAgain 2026-07-05");
  CHECK(state("2026-01-06") == ClearanceState::Requested);
  record.add("clearanceSent", "{'date': '2026-01-06', 'request': '" + request + "', 'how': 'post'}");
  CHECK(record.told() == "chase 2026-01-13; screenAgain 2026-07-05");
  CHECK(record.tasks()[0].waitingFor == "Dr Hale");
  CHECK(nextOf(record.tasks()[0], SampleRecord::policy()) == "call");
  record.add("clearanceChase", "{'date': '2026-01-13', 'request': '" + request + "', 'how': 'call'}");
  CHECK(record.told() == "chase 2026-01-20; screenAgain 2026-07-05");
  record.add("clearanceChase", "{'date': '2026-01-20', 'request': '" + request + "', 'how': 'post'}");
  CHECK(record.told() == "chase 2026-02-03; screenAgain 2026-07-05");
  record.add("clearanceChase", "{'date': '2026-02-03', 'request': '" + request + "', 'how': 'call'}");
  CHECK(nextOf(record.tasks()[0], SampleRecord::policy()) == "decide");
  CHECK(state("2030-01-01") == ClearanceState::Sent);  // silence is never clearance
  record.add("clearanceReply", "{'date': '2026-02-04', 'request': '" + request + "', 'response': {}, 'until': '2027-02-04'}");
  CHECK(record.told() == "screenReply 2026-02-04; screenAgain 2026-07-05; clearanceEnds 2027-02-05");
  CHECK(state("2027-02-04") == ClearanceState::Answered);
  CHECK(state("2027-02-05") == ClearanceState::Expired);
  CHECK(records::planWaitsBecause(record.folded(), day("2027-02-05")) == "the reply of Dr Hale ended on 4 February 2027");
  const auto second = record.add("screening", "{'date': '2026-02-04', 'content': 'x', 'rules': []}");
  record.add("signOff", "{'date': '2026-02-04', 'screening': '" + second + "'}", "ines");
  CHECK(record.told() == "screenAgain 2026-08-04; clearanceEnds 2027-02-05");
  record.add("clearanceClosed", "{'date': '2026-03-01', 'request': '" + request + "', 'because': 'not needed'}");
  CHECK(state("2030-01-01") == ClearanceState::Closed);
}

TEST_CASE("Same-day action warns before all else until it is complete, also after discharge") {
  SampleRecord record;
  const auto screening = record.add("screening", "{'date': '2026-01-05', 'content': 'x', 'rules': []}");
  record.add("signOff", "{'date': '2026-01-05', 'screening': '" + screening + "'}", "ines");
  record.add("referralIn", "{'date': '2025-12-01'}");
  const auto action = record.add("actionRecord", "{'date': '2026-01-05', 'screening': '" + screening + "', 'action': 'sameDay'}");
  CHECK(record.tasks()[0].what == "actionRecord");
  CHECK(records::planWaitsBecause(record.folded(), day("2026-01-06")) == "the action record of 5 January 2026 is not complete");
  record.add("actionStep", "{'date': '2026-01-05', 'action': '" + action + "', 'done': 'called', 'complete': false}");
  record.add("state", "{'date': '2026-01-06', 'state': 'discharged', 'because': 'moved away'}");
  CHECK(record.told() == "actionRecord 2026-01-05");
  record.add("actionStep", "{'date': '2026-01-07', 'action': '" + action + "', 'done': 'seen', 'complete': true}");
  CHECK(record.told() == "");
}

TEST_CASE("Two weeks after a start we ask; pain, symptoms and events make the plan wait for a new screening") {
  SampleRecord record;
  const auto screening = record.add("screening", "{'date': '2026-01-05', 'content': 'x', 'rules': []}");
  record.add("signOff", "{'date': '2026-01-05', 'screening': '" + screening + "'}", "ines");
  record.add("started", "{'date': '2026-01-06', 'screening': '" + screening + "'}");
  CHECK(record.told() == "checkIn 2026-01-20; screenAgain 2027-01-05");
  record.add("checkIn", "{'date': '2026-01-20', 'painNextMorning': 4, 'symptoms': false}");
  CHECK(record.told() == "screenAgain 2027-01-05");
  CHECK(records::planWaitsBecause(record.folded(), day("2026-01-21")) == "");
  SampleRecord pain = record;
  pain.add("checkIn", "{'date': '2026-02-01', 'painNextMorning': 5, 'symptoms': false}");
  CHECK(pain.told() == "symptoms 2026-02-01; screenAgain 2027-01-05");
  CHECK(records::planWaitsBecause(pain.folded(), day("2026-02-01")) == "of the symptoms told on 1 February 2026, and no screening followed");
  record.add("event", "{'date': '2026-02-03', 'what': 'fall', 'doing': 'stairs', 'done': 'helped up'}");
  CHECK(record.told() == "event 2026-02-03; screenAgain 2027-01-05");
  const auto again = record.add("screening", "{'date': '2026-02-04', 'content': 'x', 'rules': ['falls-high']}");
  record.add("signOff", "{'date': '2026-02-04', 'screening': '" + again + "'}", "ines");
  CHECK(record.told() == "screenAgain 2026-08-04");
}

TEST_CASE("Attempts that fail count up, reaching the client ends them; the dead are not written to") {
  SampleRecord record;
  record.add("contact", "{'date': '2026-01-05', 'how': 'telephone', 'reached': false}");
  CHECK(nextOf(record.tasks()[0], SampleRecord::policy()) == "another means");
  record.add("contact", "{'date': '2026-01-06', 'how': 'email', 'reached': false}");
  record.add("contact", "{'date': '2026-01-07', 'how': 'telephone', 'reached': false}");
  CHECK(nextOf(record.tasks()[0], SampleRecord::policy()) == "letter");
  SampleRecord reached = record;
  reached.add("contact", "{'date': '2026-01-08', 'how': 'telephone', 'reached': true}");
  CHECK(reached.told() == "");
  record.add("state", "{'date': '2026-01-09', 'state': 'deceased', 'because': 'told by the family'}");
  CHECK(record.told() == "");
  CHECK(records::planWaitsBecause(record.folded(), day("2026-01-10")) == "the client has died");
}

TEST_CASE("Referrals wait for an answer, overrides for a second clinician who is another") {
  SampleRecord record;
  const auto referral = record.add("referralIn", "{'date': '2026-01-02', 'from': 'Dr Hale', 'reason': 'knee', 'urgency': 'routine'}");
  const auto screening = record.add("screening", "{'date': '2026-01-05', 'content': 'x', 'rules': []}");
  record.add("signOff", "{'date': '2026-01-05', 'screening': '" + screening + "'}", "ines");
  const auto line = record.add("override", "{'date': '2026-01-05', 'screening': '" + screening + "', 'rule': 'a', 'instead': 'b', 'reason': 'c', 'needsSecond': true}", "ines");
  CHECK(record.told() == "referralIn 2026-01-02; secondSignature 2026-01-05; screenAgain 2027-01-05");
  record.add("secondSignature", "{'date': '2026-01-06', 'override': '" + line + "'}", "ines");
  CHECK(record.tasks()[1].what == "secondSignature");
  record.add("secondSignature", "{'date': '2026-01-06', 'override': '" + line + "'}", "rolf");
  record.add("referralOutcome", "{'date': '2026-01-06', 'referral': '" + referral + "', 'outcome': 'accepted', 'because': 'fits'}");
  CHECK(record.told() == "screenAgain 2027-01-05");
}

TEST_CASE("A referral's medicines are compared once the client was asked; a letter about an event waits until it is settled") {
  SampleRecord record;
  const auto referral = record.add("referralIn", "{'date': '2026-01-02', 'from': 'Dr Hale', 'reason': 'knee', 'urgency': 'routine', 'medicines': ['apixaban 5 mg']}");
  record.add("referralOutcome", "{'date': '2026-01-03', 'referral': '" + referral + "', 'outcome': 'accepted', 'because': 'fits'}");
  CHECK(record.told() == "");
  const auto screening = record.add("screening", "{'date': '2026-01-05', 'content': 'x', 'rules': []}");
  record.add("signOff", "{'date': '2026-01-05', 'screening': '" + screening + "'}", "ines");
  CHECK(record.told() == "reconcile 2026-01-05; screenAgain 2027-01-05");
  record.add("referralReconciled", "{'date': '2026-01-06', 'referral': '" + referral + "', 'settled': 'the client takes it'}");
  CHECK(record.told() == "screenAgain 2027-01-05");
  const auto event = record.add("event", "{'date': '2026-01-07', 'what': 'fall', 'doing': 'stairs', 'done': 'helped up'}");
  const auto letter = record.add("eventLetter", "{'date': '2026-01-07', 'event': '" + event + "', 'to': 'Dr Hale', 'text': 'x'}");
  CHECK(record.told() == "event 2026-01-07; eventLetter 2026-01-07; screenAgain 2027-01-05");
  record.add("eventLetterSettled", "{'date': '2026-01-07', 'letter': '" + letter + "', 'how': 'post'}");
  CHECK(record.told() == "event 2026-01-07; screenAgain 2027-01-05");
}

TEST_CASE("A consent stands until it is withdrawn, each by itself") {
  SampleRecord record;
  CHECK_FALSE(record.folded().hasConsent("physician"));
  record.add("consent", "{'date': '2026-01-05', 'what': 'physician', 'given': true, 'how': 'signed'}");
  record.add("consent", "{'date': '2026-01-05', 'what': 'screening', 'given': true, 'how': 'signed'}");
  CHECK(record.folded().hasConsent("physician"));
  record.add("consent", "{'date': '2026-02-05', 'what': 'physician', 'given': false, 'how': 'telephone'}");
  CHECK_FALSE(record.folded().hasConsent("physician"));
  CHECK(record.folded().hasConsent("screening"));
}

TEST_CASE("A merge is undone by another entry") {
  SampleRecord record;
  record.add("merged", "{'date': '2026-01-05', 'other': 'r2'}");
  CHECK(record.folded().mergedFrom == std::vector<std::string>{"r2"});
  record.add("unmerged", "{'date': '2026-01-06', 'other': 'r2'}");
  CHECK(record.folded().mergedFrom.empty());
  record.add("merged", "{'date': '2026-01-07', 'other': 'r3', 'into': true}");
}

TEST_CASE("A card is read back as it was written, also with odd signs in names") {
  SampleRecord record;
  record.add("contact", "{'date': '2026-01-05', 'how': 'telephone', 'reached': false}");
  record.add("referralIn", "{'date': '2026-01-02'}");
  records::Card card = cardOf(record.folded(), SampleRecord::policy());
  REQUIRE(card.tasks.size() == 2);
  const auto back = records::cardFrom(toText(card));
  REQUIRE(back);
  CHECK(back->name() == "Maren Oakshott");
  CHECK(back->tasks == card.tasks);
  card.given = "a\x1f" "b\x1e" "c\x1d";
  card.tasks.clear();
  CHECK(records::cardFrom(toText(card))->given == "abc");
  CHECK_FALSE(records::cardFrom("too few"));
  CHECK_FALSE(records::cardFrom(toText(card) + "\x1f"));
}
