// What follows an interview's answers step by step says exactly what working everything out afresh says:
// the decision with its findings and words, and how each rule stands. Random answers on the real forms,
// to whatever question, and back again.
#include <catch2/catch.hpp>
#include <random>

#include "../support/scale.h"
#include "case_answers.h"
#include "screening/decide_again.h"

using namespace stile;
using interview::QuestionRef;
using interview::Session;
using screening::Screening;

using test::content;
using test::formNamed;

namespace {

const base::Date kFollowedDay = *base::Date::of(2026, 11, 25);
constexpr int kBurstsEach = 17, kMostInABurst = 2, kCompletedEvery = 4;

using Random = std::mt19937;

int pick(Random& random, std::size_t count) {
  return static_cast<int>(random() % count);
}

bool isSame(const rules::Reason& a, const rules::Reason& b) {
  return a.slot == b.slot && a.factId == b.factId && a.label == b.label && a.value == b.value &&
         a.source == b.source && a.isUnknown == b.isUnknown && a.why == b.why;
}

bool isSame(const rules::Finding& a, const rules::Finding& b) {
  return a.rule == b.rule && a.repetition == b.repetition && a.where == b.where && a.standing == b.standing &&
         a.counted == b.counted && a.full == b.full && a.floor == b.floor && a.reach == b.reach &&
         a.unsureCall == b.unsureCall && a.basis == b.basis && a.say.clinician == b.say.clinician &&
         a.say.client == b.say.client &&
         std::equal(a.reasons.begin(), a.reasons.end(), b.reasons.begin(), b.reasons.end(),
                    [](const auto& x, const auto& y) { return isSame(x, y); });
}

void checkFindings(const Screening& followed, const Screening& afresh) {
  REQUIRE(followed.findings.size() == afresh.findings.size());
  for (std::size_t i = 0; i < afresh.findings.size(); ++i)
    if (!isSame(followed.findings[i], afresh.findings[i]))
      FAIL("the finding of " << afresh.findings[i].rule->id << " differs");
}

void checkDecision(const Screening& followed, const Screening& afresh) {
  checkFindings(followed, afresh);
  for (const auto end : {&Screening::floor, &Screening::reach, &Screening::ifGranted}) {
    CHECK((followed.*end).limits == (afresh.*end).limits);
    for (const limits::Bay bay : limits::kBays)
      CHECK((followed.*end).usable[bay] == (afresh.*end).usable[bay]);
  }
  CHECK(followed.coverage.size() == afresh.coverage.size());
  for (std::size_t i = 0; i < afresh.coverage.size(); ++i)
    CHECK((followed.coverage[i].covers == afresh.coverage[i].covers &&
           followed.coverage[i].because == afresh.coverage[i].because));
  CHECK(followed.planBecause == afresh.planBecause);
  CHECK((followed.planState == afresh.planState && followed.couldBecome == afresh.couldBecome &&
         followed.isSettled == afresh.isSettled));
}

/// The merged position, in a form that knows nothing of how keys were numbered.
void checkPosition(const interview::Position& followed) {
  const interview::Position afresh(followed.ground(), followed.facts());
  const auto a = followed.totals(), b = afresh.totals();
  CHECK((a.floor == b.floor && a.reach == b.reach && a.granted == b.granted && a.openInFull == b.openInFull &&
         a.couldBecome == b.couldBecome && a.differingParts == b.differingParts));
  for (std::size_t rule = 0; rule < afresh.states().size(); ++rule) {
    const auto &x = followed.states()[rule], &y = afresh.states()[rule];
    const bool isSameRule =
        std::equal(x.begin(), x.end(), y.begin(), y.end(), [](const auto& one, const auto& other) {
          return one.judgement.truth == other.judgement.truth &&
                 one.judgement.counted == other.judgement.counted &&
                 one.judgement.unsureCall == other.judgement.unsureCall &&
                 one.judgement.deciding == other.judgement.deciding && one.granted == other.granted &&
                 one.isOut() == other.isOut() &&
                 (one.isOut() || (one.floor->decision == other.floor->decision &&
                                  one.reach->decision == other.reach->decision &&
                                  one.floor->atoms.size() == other.floor->atoms.size()));
        });
    if (!isSameRule) FAIL("the rule " << followed.ground().rules().rules[rule].id << " stands otherwise");
  }
}

std::vector<answers::Answer> answersOf(const interview::FormQuestion& question,
                                       const interview::PossibleAnswer& possible) {
  std::vector<answers::Answer> all;
  for (const std::string& code : possible.codes) all.emplace_back().code = code;
  if (question.fact->isMultiple) return all;
  answers::Answer& answer = all.emplace_back();
  switch (possible.value.kind) {
    case expression::ValueKind::Boolean:
      answer.boolean = possible.value.truth == expression::Truth::True;
      break;
    case expression::ValueKind::Code:
      answer.code = possible.value.text;
      break;
    case expression::ValueKind::Text:
      answer.text = possible.value.text;
      break;
    case expression::ValueKind::Date:
      answer.date = possible.value.date;
      break;
    case expression::ValueKind::Number:
      answer.number = possible.value.low;
      answer.numberText = answer.number->toText(6);
      answer.unit = question.item->units.empty() ? "" : question.fact->valueType.unit.text;
      break;
  }
  return all;
}

/// One step to any question that applies, mostly one of the prompt.
void stepAnywhere(Session& session, Random& random) {
  const auto& questions = session.ground().questions();
  if (session.prompt() != nullptr && session.prompt()->anotherOf >= 0)
    return session.another(pick(random, 3) != 0);
  QuestionRef ref = session.prompt() != nullptr && pick(random, 3) == 0
                        ? session.prompt()->questions.front()
                        : QuestionRef{pick(random, questions.all().size()), -1};
  const auto& question = questions.at(ref);
  if (question.group >= 0) ref.repetition = std::max(ref.repetition, 0);
  if (!session.position().isEnabled(ref)) return;
  base::Issues issues;
  const auto& possible = question.answers;
  if (!possible.empty() && pick(random, 6) != 0) {
    const auto& one = possible[static_cast<std::size_t>(pick(random, possible.size()))];
    if (one.isKnown() && session.answer(ref, answersOf(question, one), issues, true)) return;
  }
  session.change(ref);
  session.skip(pick(random, 2) == 0 ? answers::Absence::NotSure : answers::Absence::Declined);
}

/// Replies to what an answered form lets a physician reply to.
std::vector<screening::ClearanceReply> repliesTo(const facts::FactSet& facts) {
  std::vector<screening::ClearanceReply> replies;
  const auto decision = screening::decide(content(), facts, {}, kFollowedDay);
  for (const auto& finding : decision.findings) {
    if (finding.standing != rules::Standing::Certain || finding.rule->until.key != rules::KeyKind::Clearance)
      continue;
    screening::ClearanceReply reply;
    reply.ruleId = finding.rule->id;
    reply.basis = finding.basis;
    reply.answer = "noKnownReason";
    reply.from = *base::Date::of(2026, 11, 1);
    replies.push_back(std::move(reply));
  }
  return replies;
}

struct Followed {
  int steps = 0, findings = 0;
};

/// Bursts of random steps from where the person's own answers lead, each taken back again before the next.
void follow(const char* form, const std::string& name, unsigned seed, bool hasReplies, Followed& followed) {
  INFO(name << " on " << form);
  const test::CaseFile file(std::filesystem::path(STILE_SOURCE_DIR) / "tests/cases" / (name + ".json"));
  base::Issues ignored;
  const auto told = test::parsed(file.facts(), name);
  const auto facts =
      facts::factsFromPlain(content().dictionary, content().forms, told->root(), kFollowedDay, ignored);
  const auto replies = hasReplies ? repliesTo(facts) : std::vector<screening::ClearanceReply>{};
  CHECK(replies.empty() != hasReplies);
  Session session(content(), formNamed(form), kFollowedDay, {}, replies);
  const test::CaseAnswers person(facts);
  Random random(seed);
  int left = pick(random, 30);
  if (left > 0) person.drive(session, [&] { return --left > 0; });
  Screening now = screening::decide(content(), session.position().facts(), replies, kFollowedDay);
  const auto check = [&] {
    const auto& said = session.position().facts();
    now = screening::decideAgain(content(), session.ground().findingReads(), std::move(now), said, replies);
    checkDecision(now, screening::decide(content(), said, replies, kFollowedDay));
    checkPosition(session.position());
    followed.findings += static_cast<int>(now.findings.size());
    if (++followed.steps % kCompletedEvery != 0) return;
    screening::complete(content(), now, replies);
    checkDecision(now, screening::screen(content(), said, replies, kFollowedDay));
  };
  for (int burst = 0; burst < kBurstsEach * test::scale(); ++burst) {
    int taken = 0;
    for (int i = 1 + pick(random, kMostInABurst); i > 0; --i, ++taken) stepAnywhere(session, random);
    check();
    // Back again; the next burst's decision follows from both.
    while (taken-- > 0 && session.back()) continue;
  }
}

}  // namespace

TEST_CASE("A decision that follows the answers is the one worked out afresh") {
  Followed followed;
  unsigned seed = 1;
  for (const char* form : {"clinic", "telephone"})
    for (const char* name : {"healthy-all-known", "pregnant-calf", "new-hip-and-worn-knee",
                             "kidney-three-medicines", "two-falls"})
      follow(form, name, ++seed, false, followed);
  for (const char* name : {"branch-n3", "heart-failure-and-kidneys"})
    follow("clinic", name, ++seed, true, followed);
  CHECK(followed.steps >= 200 * test::scale());
  CHECK(followed.findings > followed.steps);
}
