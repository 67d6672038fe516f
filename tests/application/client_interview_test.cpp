// An interview held from a clinic file: what was acknowledged is in the draft, on any later day, under
// any later form; and the screening is made from it.
#include <catch2/catch.hpp>

#include "../cases/case_answers.h"
#include "answers/response_writer.h"
#include "application/stored_inputs.h"
#include "records/body.h"
#include "tarnside.h"

using namespace stile;
using namespace stile::test;
using application::ClientInterview;
using interview::QuestionRef;

namespace {

const base::Date kNextDay = *base::Date::of(2026, 11, 26);

CaseAnswers well() {
  const CaseFile file(std::filesystem::path(STILE_SOURCE_DIR) / "tests/cases/healthy-all-known.json");
  base::Issues ignored;
  const auto told = parsed(file.facts(), "healthy-all-known");
  return CaseAnswers(facts::factsFromPlain(content().dictionary, content().forms, told->root(), kTarnsideDay, ignored));
}

std::unique_ptr<ClientInterview> begin(Tarnside& tarnside, base::Date day = kTarnsideDay, const std::string& form = {}) {
  return take(ClientInterview::open(*tarnside.clinic, tarnside.id, content(), form, day));
}

QuestionRef refOf(ClientInterview& interview, const char* id, int repetition = -1) {
  return {interview.session().ground().questions().placeOf(content().dictionary.find(id)->slot), repetition};
}

answers::Answer yesOrNo(bool yes) {
  answers::Answer answer;
  answer.boolean = yes;
  return answer;
}

answers::Answer words(const std::string& text) {
  answers::Answer answer;
  answer.text = text;
  return answer;
}

bool say(ClientInterview& interview, const char* id, answers::Answer answer, int repetition = -1) {
  base::Issues issues;
  return take(interview.answer(refOf(interview, id, repetition), {std::move(answer)}, issues));
}

std::string saidIn(ClientInterview& interview) { return answers::writeResponse(interview.session().response(), answers::Status::InProgress); }

}  // namespace

TEST_CASE("Every step of an interview is in the file before it is acknowledged, and a new session goes on from it") {
  Tarnside tarnside;
  const auto person = well();
  std::string said;
  {
    auto interview = begin(tarnside);
    CHECK(tarnside.due() == "");  // nothing is written before the first answer
    REQUIRE(interview->session().prompt() != nullptr);
    std::set<QuestionRef> none;
    REQUIRE(take(interview->answerList(none)));  // the six acute questions
    REQUIRE(say(*interview, "palpitations", yesOrNo(true)));
    REQUIRE(say(*interview, "palpitationsExplained", yesOrNo(true)));
    REQUIRE(say(*interview, "palpitations", yesOrNo(false)));  // the explanation applies no longer
    said = saidIn(*interview);
  }
  CHECK(tarnside.due() == "draft");
  tarnside.open("ines", kInes);
  auto interview = begin(tarnside);
  CHECK(saidIn(*interview) == said);
  CHECK(contains(said, "palpitationsExplained"));
  CHECK_FALSE(take(interview->back()));  // steps of an earlier sitting are not taken back, answers are changed
  REQUIRE(say(*interview, "palpitations", yesOrNo(true)));
  REQUIRE(take(interview->back()));
  CHECK(saidIn(*interview) == said);
  CHECK(saidIn(*begin(tarnside)) == said);
  person.drive(interview->session(), [] { return true; });
  take(interview->save());
  base::Issues issues;
  const auto filed = take(interview->complete(issues));
  for (const auto& issue : issues.all()) INFO(toText(issue));
  CHECK_FALSE(issues.hasErrors());
  // What applies no longer is in no fact.
  CHECK(filed.screening.facts.at(content().dictionary.find("palpitationsExplained")->slot).reason == facts::UnknownReason::NotApplicable);
  CHECK(filed.screening.facts.at(content().dictionary.find("birthDate")->slot).givenBy == "record");
  CHECK(filed.screening.planState == screening::PlanState::Made);
  CHECK(tarnside.due() == "signOff");
  CHECK(tarnside.clinic->file().verify().trouble == "");
}

TEST_CASE("On another day the acute questions and what is out of date are asked again; the rest keeps its day") {
  Tarnside tarnside;
  {
    auto interview = begin(tarnside);
    take(interview->answerList({}));
    say(*interview, "palpitations", yesOrNo(false));
    say(*interview, "feelsUnwell", yesOrNo(false));
  }
  auto interview = begin(tarnside, kNextDay);
  CHECK(interview->session().said(refOf(*interview, "acuteChestPressure")) == nullptr);
  const auto* kept = interview->session().said(refOf(*interview, "palpitations"));
  REQUIRE(kept != nullptr);
  CHECK(kept->date->toText() == "2026-11-25");
  const std::string first = interview->session().question(interview->session().prompt()->questions.front()).item->linkId;
  CHECK(first == "acuteChestPressure");
  // A week later the feeling of that day is gone as well.
  CHECK(begin(tarnside, *base::Date::of(2026, 12, 9))->session().said(refOf(*interview, "feelsUnwell")) == nullptr);
}

TEST_CASE("Under a newer form, a question with other options is asked again, and one that is gone is left out") {
  Tarnside tarnside;
  {
    auto interview = begin(tarnside);
    answers::Answer male;
    male.code = "male";
    say(*interview, "sex", male);
    say(*interview, "palpitations", yesOrNo(false));
  }
  auto work = take(application::RecordWork::open(*tarnside.clinic, tarnside.id));
  std::string body = work.entries().back().body;
  const auto swap = [&body](const std::string& from, const std::string& to) {
    for (auto at = body.find(from); at != std::string::npos; at = body.find(from, at + to.size())) body.replace(at, from.size(), to);
  };
  const auto asked = application::StoredInputs(body).asked();
  swap(asked.at("sex"), asked.at("sex") + " unknown");       // it offered an option more
  swap("emergencyContact", "noLongerAsked");
  swap("|2026.11", "|2020.01");
  work.saveDraft(body);
  take(work.commit());
  auto interview = begin(tarnside);
  CHECK(interview->session().said(refOf(*interview, "sex")) == nullptr);
  CHECK(interview->session().said(refOf(*interview, "palpitations")) != nullptr);
}

TEST_CASE("A red flag is filed at once with its action record, and the interview goes on") {
  Tarnside tarnside;
  auto interview = begin(tarnside);
  base::Issues issues;
  CHECK_FALSE(interview->isUrgent());
  say(*interview, "acuteChestPressure", yesOrNo(true));
  REQUIRE(interview->isUrgent());
  const auto filed = take(interview->fileUrgent(issues));
  CHECK_FALSE(filed.actionRecord.empty());
  CHECK_FALSE(interview->isUrgent());
  CHECK(tarnside.due() == "actionRecord draft signOff");
  say(*interview, "palpitations", yesOrNo(false));
  const auto second = take(interview->complete(issues));
  CHECK(second.actionRecord.empty());  // the one of today is open
  CHECK(tarnside.due() == "actionRecord signOff");  // of the later screening, which holds what the earlier one does
}

TEST_CASE("Last time's answers are offered, also in groups, and are in no fact until they are confirmed") {
  Tarnside tarnside;
  {
    auto interview = begin(tarnside);
    say(*interview, "palpitations", yesOrNo(false));
    say(*interview, "takesAnyMedicine", yesOrNo(true));
    say(*interview, "medicineName", words("bisoprolol"), 0);
    say(*interview, "medicineName", words("apixaban"), 1);
    base::Issues issues;
    take(interview->complete(issues));
  }
  const base::Date later = *base::Date::of(2027, 5, 25);
  auto interview = begin(tarnside, later);
  const auto slotOf = [](const char* id) { return content().dictionary.find(id)->slot; };
  CHECK(interview->lastTime().day() == kTarnsideDay);
  REQUIRE(interview->lastTime().of("medicineName", 1) != nullptr);
  CHECK(*interview->lastTime().of("medicineName", 1)->answers.front().text == "apixaban");
  CHECK(interview->lastTime().of("medicineName", 2) == nullptr);
  CHECK(interview->session().position().facts().at(slotOf("palpitations")).value.isUnknown());
  CHECK(interview->session().position().facts().isOpenEnded("medicine"));
  base::Issues issues;
  CHECK(take(interview->confirm(refOf(*interview, "palpitations"), issues)));
  CHECK(take(interview->confirm(refOf(*interview, "takesAnyMedicine"), issues)));
  CHECK(take(interview->confirm(refOf(*interview, "medicineName", 0), issues)));
  CHECK_FALSE(take(interview->confirm(refOf(*interview, "medicineName", 2), issues)));
  CHECK(interview->session().position().facts().at(slotOf("palpitations")).value.truth == expression::Truth::False);
  // One confirmed is no complete list.
  CHECK(interview->session().position().facts().repetitions("medicine") == 2);
  CHECK(interview->session().position().facts().at(slotOf("medicineName"), 1).value.isUnknown());
}

TEST_CASE("A draft that is no interview is not written over, and a resting record is not interviewed") {
  Tarnside tarnside;
  base::Issues issues;
  take(application::saveDraft(*tarnside.clinic, tarnside.id, {"answers", "{\"fallsLastYear\": 2}"}, kTarnsideDay, issues));
  CHECK(contains(ClientInterview::open(*tarnside.clinic, tarnside.id, content(), "", kTarnsideDay).failure().message, "no interview"));
  // Plain facts of an earlier day are screened as such.
  const auto filed = tarnside.screen({}, *base::Date::of(2026, 12, 25));
  CHECK(filed.screening.facts.at(content().dictionary.find("fallsLastYear")->slot).date->toText() == "2026-11-25");
  CHECK(ClientInterview::open(*tarnside.clinic, tarnside.id, content(), "no-such-form", kTarnsideDay).failure().kind == base::FailureKind::Usage);
  const auto twin = take(application::addClient(*tarnside.clinic, R"({"given": "Maren", "family": "Oakshot", "born": "1963-03-14"})", "c.json", issues));
  take(application::mergeClients(*tarnside.clinic, twin.id, tarnside.id, kTarnsideDay));
  CHECK(contains(ClientInterview::open(*tarnside.clinic, tarnside.id, content(), "", kTarnsideDay).failure().message, "rests"));
}

TEST_CASE("A yes to the letter in the interview is a consent, once; one that was withdrawn stays withdrawn") {
  Tarnside tarnside;
  const auto record = [&] { return take(application::RecordWork::open(*tarnside.clinic, tarnside.id)).folded(); };
  const auto consents = [&] { return record().consents; };
  const auto hasConsent = [&] { return record().hasConsent("physician"); };
  base::Issues issues;
  {
    auto interview = begin(tarnside);
    say(*interview, "palpitations", yesOrNo(false));
    take(interview->fileUrgent(issues));
    CHECK(consents().empty());  // nobody asked
    say(*interview, "consentToLetter", yesOrNo(false));
    take(interview->fileUrgent(issues));
    CHECK(consents().empty());
    say(*interview, "consentToLetter", yesOrNo(true));
    take(interview->fileUrgent(issues));
    REQUIRE(consents().size() == 1);
    CHECK(hasConsent());
    take(interview->fileUrgent(issues));
    CHECK(consents().size() == 1);
    // A slip of the hand, and back.
    say(*interview, "consentToLetter", yesOrNo(false));
    take(interview->fileUrgent(issues));
    CHECK_FALSE(hasConsent());
    say(*interview, "consentToLetter", yesOrNo(true));
    take(interview->fileUrgent(issues));
    CHECK(hasConsent());
  }
  take(application::fileEntry(*tarnside.clinic, tarnside.id, "consent", R"({"date": "2026-11-25", "what": "physician", "given": false, "how": "by telephone"})", "c.json", {}, issues));
  {
    auto interview = begin(tarnside);
    take(interview->fileUrgent(issues));
    CHECK_FALSE(hasConsent());
  }
  // A no on a later day ends a consent from before.
  take(application::fileEntry(*tarnside.clinic, tarnside.id, "consent", R"({"date": "2026-11-25", "what": "physician", "given": true, "how": "on paper"})", "c.json", {}, issues));
  CHECK(hasConsent());
  auto interview = begin(tarnside, kNextDay);
  say(*interview, "consentToLetter", yesOrNo(false));
  take(interview->fileUrgent(issues));
  CHECK_FALSE(hasConsent());
}

TEST_CASE("A step whose caller saves is on the disk once it has, and counts as unsaved until then") {
  Tarnside tarnside;
  auto interview = begin(tarnside);
  interview->setSaving(ClientInterview::Saving::ByCaller);
  REQUIRE(say(*interview, "palpitations", yesOrNo(true)));
  CHECK_FALSE(interview->isSaved());
  CHECK(tarnside.due() == "");
  CHECK(begin(tarnside)->session().said(refOf(*interview, "palpitations")) == nullptr);
  REQUIRE(take(interview->save()));
  CHECK(interview->isSaved());
  CHECK(tarnside.due() == "draft");
  CHECK(begin(tarnside)->session().said(refOf(*interview, "palpitations")) != nullptr);
  // A screening rests on everything that was said, saved or not.
  REQUIRE(say(*interview, "palpitations", yesOrNo(false)));
  base::Issues issues;
  const auto filed = take(interview->fileUrgent(issues));
  CHECK(filed.screening.facts.at(content().dictionary.find("palpitations")->slot).value.truth == expression::Truth::False);
}

TEST_CASE("While locked nothing is read or saved; the passphrase opens it again and what was said is not lost") {
  Tarnside tarnside;
  auto interview = begin(tarnside);
  say(*interview, "palpitations", yesOrNo(false));
  CHECK_FALSE(tarnside.clinic->lockIfIdle(1'000'000));
  tarnside.clinic->lock();
  CHECK(tarnside.clinic->isLocked());
  CHECK(tarnside.clinic->find("").empty());
  CHECK(tarnside.clinic->worklist(kTarnsideDay, true).empty());
  base::Issues issues;
  const auto unsaved = interview->answer(refOf(*interview, "feelsUnwell"), {yesOrNo(false)}, issues);
  CHECK(unsaved.failure().kind == base::FailureKind::Secret);
  CHECK_FALSE(interview->isSaved());
  CHECK(tarnside.clinic->unlock("not the right passphrase").failure().kind == base::FailureKind::Secret);
  CHECK(tarnside.clinic->isLocked());
  take(tarnside.clinic->unlock(kInes));
  CHECK(tarnside.clinic->find("").size() == 1);
  take(interview->save());
  CHECK(interview->isSaved());
  CHECK(begin(tarnside)->session().said(refOf(*interview, "feelsUnwell")) != nullptr);
}
