// The session on the real forms: the order of things, lists, ways back, lists that are not finished,
// going on with a draft, and the nearest other decision.
#include <catch2/catch.hpp>
#include <chrono>
#include <thread>

#include "answers/response_writer.h"
#include "case_answers.h"
#include "interview/nearest_change.h"
#include "screening/screening.h"

using namespace stile;
using interview::Closing;
using interview::QuestionRef;
using interview::Session;

using test::content;
using test::formNamed;

namespace {

const base::Date kDay = *base::Date::of(2026, 11, 25);

test::CaseAnswers person(const std::string& name) {
  const test::CaseFile file(std::filesystem::path(STILE_SOURCE_DIR) / "tests/cases" / (name + ".json"));
  base::Issues ignored;
  const auto told = test::parsed(file.facts(), name);
  return test::CaseAnswers(facts::factsFromPlain(content().dictionary, content().forms, told->root(), kDay, ignored));
}

QuestionRef refOf(const Session& session, const char* id, int repetition = -1) {
  return {session.ground().questions().placeOf(content().dictionary.find(id)->slot), repetition};
}

answers::Answer yesOrNo(bool yes) {
  answers::Answer answer;
  answer.boolean = yes;
  return answer;
}

void say(Session& session, const char* id, bool yes) {
  base::Issues issues;
  REQUIRE(session.answer(refOf(session, id), {yesOrNo(yes)}, issues));
}

const std::set<std::string> kAcute{"acuteChestPressure", "acuteBreathlessAtRest", "acuteCollapse",
                                   "acuteFaceArmSpeech", "acuteLegSwollenOrCold", "acuteSaddleOrBladder"};

}  // namespace

TEST_CASE("Every contact begins with the acute questions; by telephone with the number, the place, and whether alone") {
  const auto well = person("healthy-all-known");
  for (const char* form : {"clinic", "telephone"}) {
    Session session(content(), formNamed(form), kDay);
    std::vector<std::string> asked;
    const auto note = [&] {
      for (const auto& ref : session.prompt()->questions) asked.push_back(session.question(ref).item->linkId);
    };
    note();
    well.drive(session, [&] {
      if (session.prompt() && session.prompt()->anotherOf < 0) note();
      return asked.size() < 9;
    });
    const std::size_t before = std::string(form) == "telephone" ? 2 : 0;
    const std::set<std::string> six(asked.begin() + static_cast<std::ptrdiff_t>(before), asked.begin() + static_cast<std::ptrdiff_t>(before) + 6);
    CHECK(six == kAcute);
    if (before == 2) CHECK((asked[0] == "callbackNumber" && asked[1] == "currentAddress" && asked[8] == "aloneNow"));
  }
}

TEST_CASE("What kind of medicine it is, is asked of a name that is not known, and of no other") {
  const auto kindAskedOf = [](const std::string& name) {
    const auto well = person("healthy-all-known");
    Session session(content(), formNamed("clinic"), kDay);
    say(session, "takesAnyMedicine", true);
    base::Issues issues;
    answers::Answer called;
    called.text = name;
    REQUIRE(session.answer(refOf(session, "medicineName", 0), {called}, issues));
    bool isAsked = false;
    well.drive(session, [&] {
      if (session.prompt())
        for (const auto& ref : session.prompt()->questions) isAsked = isAsked || session.question(ref).item->linkId == "medicineLookedUp";
      return true;
    });
    return isAsked;
  };
  CHECK_FALSE(kindAskedOf("metformin"));
  CHECK_FALSE(kindAskedOf("bisoprolol"));
  CHECK(kindAskedOf("xyzolan"));
}

TEST_CASE("The minimum set is never passed over") {
  for (const char* name : {"healthy-all-known", "pre-eclampsia", "two-falls", "nothing-known"}) {
    Session session(content(), formNamed("clinic"), kDay);
    person(name).drive(session, [] { return true; });
    INFO(name);
    for (int place = 0; place < static_cast<int>(session.ground().questions().all().size()); ++place) {
      const auto& question = session.ground().questions().at(place);
      const QuestionRef ref{place, question.group < 0 ? -1 : 0};
      if (!question.item->isRequired || !session.position().isEnabled(ref)) continue;
      INFO(question.item->linkId);
      CHECK(session.said(ref) != nullptr);
    }
    CHECK(session.prompt() == nullptr);
    CHECK(session.closing() != Closing::Open);
  }
}

TEST_CASE("An answer is taken back with its prompt, and an earlier one can be changed") {
  Session session(content(), formNamed("clinic"), kDay);
  CHECK_FALSE(session.back());
  const auto first = session.prompt()->questions;
  REQUIRE(first.size() == 6);
  session.answerList({first[0]});
  CHECK(session.closing() == Closing::Emergency);
  CHECK(session.progress().shown == 1);
  REQUIRE(session.back());
  CHECK(session.prompt()->questions == first);
  CHECK(session.closing() == Closing::Open);
  CHECK(session.progress().shown == 0);
  session.answerList({}, {first[1]});
  CHECK(session.said(first[1])->absence == answers::Absence::NotSure);
  CHECK(session.stakes().totals().reach.action == limits::Action::SameDay);
  // Looked at and left as it is: no other answer is taken back.
  const auto next = session.prompt()->questions;
  session.change(first[1]);
  REQUIRE(session.back());
  CHECK(session.prompt()->questions == next);
  CHECK(session.said(first[1])->absence == answers::Absence::NotSure);
  session.change(first[1]);
  CHECK(session.prompt()->questions == std::vector{first[1]});
  say(session, "acuteBreathlessAtRest", false);
  CHECK(session.stakes().totals().reach.action == limits::Action::None);
}

TEST_CASE("Answers to questions that no longer apply are in no fact, and come back when they apply again") {
  Session session(content(), formNamed("clinic"), kDay);
  say(session, "chestDiscomfort", true);
  say(session, "chestDiscomfortNew", true);
  const int slot = content().dictionary.find("chestDiscomfortNew")->slot;
  CHECK(session.position().facts().at(slot).value.truth == expression::Truth::True);
  say(session, "chestDiscomfort", false);
  CHECK(session.position().facts().at(slot).reason == facts::UnknownReason::NotApplicable);
  say(session, "chestDiscomfort", true);
  CHECK(session.position().facts().at(slot).value.truth == expression::Truth::True);
}

TEST_CASE("A list of medicines that breaks off is no complete list") {
  Session session(content(), formNamed("clinic"), kDay);
  say(session, "takesAnyMedicine", true);
  answers::Answer name;
  name.text = "bisoprolol";
  base::Issues issues;
  REQUIRE(session.answer(refOf(session, "medicineName", 0), {name}, issues));
  const int group = content().dictionary.groupIndex("medicine");
  const auto facts = [&] {
    const std::string text = answers::writeResponse(session.response(), answers::Status::InProgress);
    const auto document = test::parsed(text, "draft");
    auto response = answers::loadResponse(document->root(), content().forms, issues);
    REQUIRE(response);
    return facts::factsFromResponses(content().dictionary, content().forms, {*response}, kDay, issues);
  };
  CHECK(facts().repetitions(group) == 2);
  // Somebody who was asked for the reason and for another one has told all of them.
  for (int i = 0; i < 40 && !(session.prompt()->anotherOf == group); ++i) session.skip(answers::Absence::NotAnswered);
  REQUIRE(session.prompt()->anotherOf == group);
  session.another(false);
  CHECK(facts().repetitions(group) == 1);
  CHECK_FALSE(issues.hasErrors());
}

TEST_CASE("A draft goes on where it was left: the same next prompt, the same response") {
  const auto well = person("two-falls");
  Session session(content(), formNamed("clinic"), kDay);
  int step = 0;
  well.drive(session, [&] {
    if (++step % 7 != 0 || !session.prompt()) return true;
    const std::string text = answers::writeResponse(session.response(), answers::Status::InProgress);
    const auto document = test::parsed(text, "draft");
    base::Issues issues;
    const auto response = answers::loadResponse(document->root(), content().forms, issues);
    REQUIRE(response);
    const Session again(content(), formNamed("clinic"), kDay, {}, {}, &*response);
    INFO("after " << step << " steps");
    REQUIRE(again.prompt());
    CHECK(again.prompt()->questions == session.prompt()->questions);
    CHECK(again.prompt()->anotherOf == session.prompt()->anotherOf);
    CHECK(answers::writeResponse(again.response(), answers::Status::InProgress) == text);
    return true;
  });
  CHECK(step > 20);
}

TEST_CASE("What is on record is not asked again while it counts") {
  const auto well = person("healthy-all-known");
  Session first(content(), formNamed("telephone"), kDay);
  well.drive(first, [] { return true; });
  Session second(content(), formNamed("clinic"), kDay, {first.response()});
  std::set<std::string> asked;
  for (int i = 0; i < 100 && second.prompt(); ++i) {
    for (const auto& ref : second.prompt()->questions) asked.insert(second.question(ref).item->linkId);
    if (second.prompt()->anotherOf >= 0)
      second.another(false);
    else
      second.skip(answers::Absence::NotAnswered);
  }
  CHECK(asked.count("heartConditions") == 0);
  CHECK(asked.count("chestDiscomfort") == 0);
  CHECK(asked.count("chairStandCount") == 1);
}

TEST_CASE("The nearest other decision is found on the real content, and a search can be stopped") {
  Session session(content(), formNamed("clinic"), kDay);
  person("pre-eclampsia").drive(session, [] { return true; });
  const auto given = session.given();
  const auto milder = interview::nearestChange(session.position(), given, interview::Direction::Milder);
  REQUIRE(milder.kind == interview::NearestChange::Kind::Found);
  std::string words;
  for (const auto& change : milder.changes) words += session.question(change.question).item->linkId + " ";
  WARN("pre-eclampsia, milder by " << milder.changes.size() << ": " << words);
  Session well(content(), formNamed("clinic"), kDay);
  person("healthy-all-known").drive(well, [] { return true; });
  const auto stricter = interview::nearestChange(well.position(), well.given(), interview::Direction::Stricter);
  REQUIRE(stricter.kind == interview::NearestChange::Kind::Found);
  CHECK(stricter.changes.size() == 1);
  std::stop_source source;
  std::jthread stopper([&] {
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
    source.request_stop();
  });
  // Nothing is milder than nothing: this one searches until it is stopped, or ends without a find.
  CHECK(interview::nearestChange(well.position(), well.given(), interview::Direction::Milder, source.get_token()).kind !=
        interview::NearestChange::Kind::Found);
}
