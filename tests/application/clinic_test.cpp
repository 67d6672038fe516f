// A client's way through a clinic file: asked, screened, held, answered for, opened, held again.
#include <catch2/catch.hpp>

#include "application/screen_again.h"
#include "records/body.h"
#include "tarnside.h"

using namespace stile;
using namespace stile::test;
using application::Clinic;
using limits::Rung;

namespace {

const base::Date kDay = kTarnsideDay;

/// The person of a paper test, with members replaced.
application::Input person(const std::string& name, const std::vector<std::pair<std::string, std::string>>& changes) {
  const auto facts = parsed(textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/documents/people" / (name + ".json")), name);
  json::Writer writer;
  writer.beginObject();
  for (std::size_t i = 0; i < facts->root().size(); ++i) {
    const std::string& key = facts->root().keyAt(i);
    if (std::none_of(changes.begin(), changes.end(), [&key](const auto& change) { return change.first == key; })) writer.key(key).copy(facts->root().at(i));
  }
  for (const auto& [key, value] : changes) writer.key(key).numberText(value);
  writer.endObject();
  return {"answers", writer.text()};
}

application::Input withPalpitations(bool isUnchanged) {
  return person("waiting", {{"palpitations", "true"}, {"palpitationsExplained", "true"}, {"palpitationsUnchanged", isUnchanged ? "true" : "false"}});
}

/// The slip filled in for one rule: no known reason against.
application::Input answered(const std::string& blank, const std::string& rule) {
  const auto slip = parsed(blank, "slip");
  json::Writer writer;
  writer.beginObject();
  for (const char* key : {"resourceType", "questionnaire"}) writer.member(key, slip->root().find(key)->string());
  writer.member("status", "completed").member("authored", "2026-11-25").key("item").beginArray();
  const auto plain = [&writer](const char* linkId, const char* kind, const std::string& value) {
    writer.beginObject().member("linkId", linkId).key("answer").beginArray().beginObject().member(kind, value).endObject().endArray().endObject();
  };
  plain("replyBy", "valueString", "Dr Hale");
  plain("replyDate", "valueDate", "2026-11-25");
  const auto items = *slip->root().find("item");
  for (std::size_t i = 0; i < items.size(); ++i) {
    const auto members = *items.at(i).find("item");
    if (members.at(0).find("answer")->at(0).find("valueString")->string() != rule) continue;
    writer.beginObject().member("linkId", "replyFinding").key("item").beginArray();
    for (std::size_t j = 0; j < members.size(); ++j) writer.copy(members.at(j));
    writer.beginObject().member("linkId", "replyAnswer").key("answer").beginArray().beginObject().key("valueCoding").beginObject();
    writer.member("system", "https://stile.example/option").member("code", "noKnownReason").endObject().endObject().endArray().endObject();
    writer.endArray().endObject();
  }
  writer.endArray().endObject();
  return {"reply.json", writer.text()};
}

}  // namespace

TEST_CASE("A reply that covers one of two findings opens what that one held and no more; a newer symptom closes it again") {
  Tarnside tarnside;
  Clinic& clinic = *tarnside.clinic;
  const auto first = tarnside.screen({withPalpitations(true)});
  CHECK(first.screening.planState == screening::PlanState::Held);
  CHECK_FALSE(application::askPhysician(clinic, tarnside.id, content(), "Dr Hale", kDay).ok());  // no consent yet
  take(tarnside.put("consent", "{'date': '2026-11-25', 'what': 'physician', 'given': true, 'how': 'signed'}"));
  take(tarnside.put("signOff", "{'date': '2026-11-25', 'screening': '" + first.entry + "'}"));
  const auto asked = take(application::askPhysician(clinic, tarnside.id, content(), "Dr Hale", kDay));
  CHECK(tarnside.due() == "sendLetter");
  take(tarnside.put("clearanceSent", "{'date': '2026-11-25', 'request': '" + asked.request + "', 'how': 'post'}"));
  CHECK(tarnside.due() == "");
  CHECK(tarnside.due(*base::Date::of(2026, 12, 2)) == "chase");

  base::Issues issues;
  const auto replied = [&](const std::string& rule) {
    take(application::fileReply(clinic, tarnside.id, asked.request, content(), answered(asked.blankReply, rule), kDay, issues));
  };
  const auto covered = [](const screening::Screening& screening) {
    std::string rules;
    for (const auto& one : screening.coverage)
      if (one.covers) rules += one.ruleId + " ";
    return rules;
  };
  replied("cardiovascular-not-active");
  CHECK(tarnside.due() == "screenReply");
  const auto second = tarnside.screen({withPalpitations(true)});
  CHECK(covered(second.screening) == "cardiovascular-not-active ");
  CHECK(second.screening.planState == screening::PlanState::Held);
  CHECK(second.screening.floor.usable.aerobic == Rung::None);
  // Without the palpitations nothing else holds: the one reply opened all that its finding held.
  CHECK(tarnside.screen({person("waiting", {})}).screening.floor.usable.aerobic == Rung::Moderate);

  replied("symptom-palpitations");
  const auto third = tarnside.screen({withPalpitations(true)});
  CHECK(covered(third.screening) == "cardiovascular-not-active symptom-palpitations ");
  CHECK(third.screening.planState == screening::PlanState::Made);
  CHECK(third.screening.floor.usable.aerobic == Rung::Moderate);
  const auto fourth = tarnside.screen({withPalpitations(false)});
  CHECK(covered(fourth.screening) == "cardiovascular-not-active ");
  CHECK(fourth.screening.floor.usable.aerobic == Rung::None);
  CHECK(fourth.screening.planState != screening::PlanState::Made);
  CHECK(contains(take(application::whatChanged(clinic, tarnside.id)), "palpitationsUnchanged"));
  CHECK(clinic.file().verify().trouble == "");
}

TEST_CASE("Answers are saved one by one, a wrong line is refused whole, and the draft becomes a screening") {
  Tarnside tarnside;
  auto session = take(application::AnswerSession::open(*tarnside.clinic, tarnside.id, content(), kDay));
  base::Issues issues;
  take(session.save(R"({"fallsLastYear": 2})", issues));
  take(session.save(R"({"desiredIntensity": "light"})", issues));
  CHECK_FALSE(session.save(R"({"fallsLastYear": 0, "noSuchFact": 1})", issues).ok());
  CHECK(contains(issues.all().front().message, "noSuchFact"));
  CHECK_FALSE(session.save("no json", issues).ok());
  CHECK(tarnside.due(*base::Date::of(2100, 1, 1)) == "draft");
  const auto filed = tarnside.screen();
  const auto value = [&](const char* fact) { return filed.screening.facts.at(content().dictionary.find(fact)->slot).value; };
  CHECK(value("fallsLastYear").low == base::Rational(2));
  CHECK(value("desiredIntensity").text == "light");
  CHECK(tarnside.due() == "signOff");
  take(application::prefill(*tarnside.clinic, tarnside.id, content().dictionary, kDay));
  const auto again = tarnside.screen();
  CHECK_FALSE(again.screening.facts.at(content().dictionary.find("fallsLastYear")->slot).value.isSettled());
}

TEST_CASE("Same-day action opens an action record that keeps warning, and an emergency is never overridden") {
  Tarnside tarnside;
  const auto filed = tarnside.screen({person("healthy", {{"acuteChestPressure", "true"}})});
  REQUIRE(filed.screening.reach.limits.action == limits::Action::Emergency);
  REQUIRE_FALSE(filed.actionRecord.empty());
  CHECK(contains(filed.text, "the action record of 25 November 2026 is not complete"));
  CHECK(tarnside.due() == "actionRecord signOff");
  const std::string step = "{'date': '2026-11-25', 'action': '" + filed.actionRecord + "', 'done': 'ambulance called', 'complete': ";
  take(tarnside.put("actionStep", step + "false}"));
  CHECK(tarnside.due() == "actionRecord signOff");
  take(tarnside.put("actionStep", step + "true}"));
  CHECK(tarnside.due() == "signOff");
  const auto refused = tarnside.put("override", "{'date': '2026-11-25', 'screening': '" + filed.entry + "', 'rule': 'start-moderate', 'instead': 'vigorous', 'reason': 'fit'}");
  CHECK(contains(refused.failure().message, "emergency"));
}

TEST_CASE("Overrides: absolute rules are refused, acute ones wait for another clinician's signature") {
  Tarnside tarnside;
  take(tarnside.clinic->file().addClinician({"rolf", "Rolf Anning", "physician", records::Role::Lead, false, false, {}}, kRolf));
  const auto filed = tarnside.screen({person("healthy", {})});
  std::string absolute, acute;
  for (const auto& rule : content().rules.rules) {
    if (rule.absolute) absolute = rule.id;
    if (rule.acute && !rule.absolute) acute = rule.id;
  }
  const auto body = [&](const std::string& rule) {
    return "{'date': '2026-11-25', 'screening': '" + filed.entry + "', 'rule': '" + rule + "', 'instead': 'light', 'reason': 'seen and examined'}";
  };
  CHECK(contains(tarnside.put("override", body("no-such-rule")).failure().message, "no rule"));
  REQUIRE_FALSE(absolute.empty());
  CHECK(contains(tarnside.put("override", body(absolute)).failure().message, "absolute"));
  REQUIRE_FALSE(acute.empty());
  const std::string entry = take(tarnside.put("override", body(acute)));
  CHECK(tarnside.due() == "secondSignature signOff");
  const std::string second = "{'date': '2026-11-25', 'override': '" + entry + "'}";
  CHECK(contains(tarnside.put("secondSignature", second).failure().message, "another clinician's"));
  tarnside.open("rolf", kRolf);
  take(tarnside.put("secondSignature", second));
  CHECK(tarnside.due() == "signOff");
  CHECK(contains(take(application::showClient(*tarnside.clinic, tarnside.id, kDay)), "second signature: Rolf Anning, physician"));
}

TEST_CASE("Two records of one person are merged, shown, undone; erasing takes both") {
  Tarnside tarnside;
  Clinic& clinic = *tarnside.clinic;
  base::Issues issues;
  const auto twin = take(application::addClient(clinic, R"({"given": "Marén", "family": "Oakshot", "born": "1963-03-14"})", "c.json", issues));
  REQUIRE(twin.couldBeSame.size() == 1);
  take(application::mergeClients(clinic, tarnside.id, twin.id, kDay));
  CHECK(contains(take(application::showClient(clinic, tarnside.id, kDay)), "Holds record " + twin.id));
  CHECK(clinic.client(twin.id)->card.mergedInto == tarnside.id);
  CHECK_FALSE(application::mergeClients(clinic, tarnside.id, twin.id, kDay).ok());
  take(application::undoMerge(clinic, tarnside.id, twin.id, kDay));
  CHECK(clinic.client(twin.id)->card.mergedInto == "");
  CHECK_FALSE(application::undoMerge(clinic, tarnside.id, twin.id, kDay).ok());
  take(application::mergeClients(clinic, tarnside.id, twin.id, kDay));
  CHECK(contains(take(application::exportClient(clinic, tarnside.id)), "\"family\": \"Oakshott\""));
  CHECK(take(application::eraseClient(clinic, tarnside.id)) == 2);
  CHECK(clinic.find("").empty());
  CHECK(clinic.file().verify().trouble == "");
}
