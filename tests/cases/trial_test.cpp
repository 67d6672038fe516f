// An answer tried out must give the same facts and the same two ends as settling and screening
// everything afresh, on the real content, and leave nothing behind when it is taken back.
#include <catch2/catch.hpp>
#include <random>

#include "case_file.h"
#include "facts/enablement_closure.h"
#include "interview/ladder.h"
#include "interview/plan_slots.h"
#include "screening/screening.h"

using namespace stile;
using expression::Truth;
using interview::PossibleAnswer;
using interview::QuestionRef;

using test::content;

namespace {

constexpr unsigned kSeed = 1125;

void giveSlowly(facts::FactSet& facts, const interview::FormQuestion& question, int repetition, const PossibleAnswer& answer,
                base::Date day) {
  const facts::Definition& fact = *question.fact;
  std::string codes;
  for (const std::string& code : answer.codes) codes += (codes.empty() ? "" : ", ") + code;
  for (const auto& option : fact.options) {
    if (option.slot < 0) continue;
    const bool isChosen = std::find(answer.codes.begin(), answer.codes.end(), option.code) != answer.codes.end();
    if (answer.isKnown())
      facts.give(option.slot, repetition, expression::Value::boolean(isChosen), day);
    else
      facts.forget(option.slot, repetition, answer.why);
  }
  if (answer.isKnown())
    facts.give(fact.slot, repetition, fact.isMultiple ? expression::Value::code(codes) : answer.value, day);
  else
    facts.forget(fact.slot, repetition, answer.why);
}

/// Takes away what no longer applies; true when there was something.
bool dropStale(facts::FactSet& facts) {
  bool any = false;
  for (const auto& entry : facts.plan()->entries()) {
    const int group = entry.group >= 0 ? entry.group : content().dictionary.at(entry.slot).groupIndex;
    if (entry.group >= 0) {
      if (facts.isOpenEnded(group) || facts::enablementOf(facts, entry, -1) == Truth::True) continue;
      const std::string& id = content().dictionary.groups()[static_cast<std::size_t>(group)];
      if (facts.repetitions(group) == 0 && facts::enablementOf(facts, entry, -1) == Truth::Unknown) continue;
      facts.setRepetitions(id, 0);
      facts.setRepetitions(id, 1);
      facts.setOpenEnded(id, true);
      any = true;
      continue;
    }
    for (int repetition = group < 0 ? -1 : 0; repetition < (group < 0 ? 0 : facts.repetitions(group)); ++repetition) {
      if (facts.at(entry.slot, repetition).givenReason == facts::UnknownReason::NotAsked) continue;
      if (facts::enablementOf(facts, entry, repetition) == Truth::True) continue;
      for (const int slot : entry.slots) facts.forget(slot, repetition, facts::UnknownReason::NotAsked);
      any = true;
    }
  }
  return any;
}

void settleSlowly(facts::FactSet& facts, base::Date day) {
  base::Issues ignored;
  facts::settle(facts, content().forms, day, ignored);
  for (int round = 0; round < 20 && dropStale(facts); ++round) facts::settle(facts, content().forms, day, ignored);
}

/// The first fact that differs, or "".
std::string difference(const facts::FactSet& a, const facts::FactSet& b) {
  for (std::size_t group = 0; group < content().dictionary.groups().size(); ++group)
    if (a.repetitions(static_cast<int>(group)) != b.repetitions(static_cast<int>(group)) ||
        a.isOpenEnded(static_cast<int>(group)) != b.isOpenEnded(static_cast<int>(group)))
      return "group " + content().dictionary.groups()[group];
  for (int slot = 0; slot < content().dictionary.size(); ++slot) {
    const auto& definition = content().dictionary.at(slot);
    const int repetitions = definition.groupIndex < 0 ? 0 : a.repetitions(definition.groupIndex);
    for (int repetition = definition.groupIndex < 0 ? -1 : 0; repetition < repetitions; ++repetition) {
      const auto& one = a.at(slot, repetition);
      const auto& other = b.at(slot, repetition);
      if (one.value != other.value || one.reason != other.reason)
        return definition.id + " " + std::to_string(repetition) + ": " + idOf(one.reason) + ", settled afresh " + idOf(other.reason) +
               (one.value == other.value ? "" : ", and another value");
    }
  }
  return {};
}

void compare(const interview::Position& position, const facts::FactSet& slow, base::Date day) {
  CHECK(difference(position.facts(), slow) == "");
  const auto screened = screening::screen(content(), slow, {}, day);
  const auto totals = position.totals();
  CHECK(totals.floor == interview::Decision::of(screened.floor.limits));
  CHECK(totals.reach == interview::Decision::of(screened.reach.limits));
  CHECK(totals.granted == interview::Decision::of(screened.ifGranted.limits));
  CHECK(totals.couldBecome == screened.couldBecome);
  CHECK(totals.isSettled() == screened.isSettled);
  const auto ladder = interview::ladderOf(position);
  REQUIRE(ladder.size() == screened.rungs.size());
  for (std::size_t i = 0; i < ladder.size(); ++i) {
    CHECK(ladder[i].state == screened.rungs[i].state);
    REQUIRE(ladder[i].reasons.size() == screened.rungs[i].reasons.size());
    for (std::size_t j = 0; j < ladder[i].reasons.size(); ++j)
      CHECK(ladder[i].reasons[j].rule == screened.findings[screened.rungs[i].reasons[j].finding].rule);
  }
}

}  // namespace

TEST_CASE("An answer that is tried gives what settling and screening afresh give, and is undone without a trace") {
  int tried = 0;
  std::mt19937 random(kSeed);
  for (const auto& path : test::jsonFiles("cases")) {
    const test::CaseFile file(path);
    if (!file.root().find("facts")) continue;
    base::Issues ignored;
    const auto told = test::parsed(file.facts(), path.filename().string());
    facts::FactSet start = facts::factsFromPlain(content().dictionary, content().forms, told->root(), file.date(), ignored);
    settleSlowly(start, file.date());
    const interview::Ground ground(content().dictionary, content().rules, *content().forms.byName("clinic"), start.plan(), file.date());
    interview::Position position(ground, start);
    REQUIRE(ground.dependents().canFollow());
    INFO(path.filename().string());
    compare(position, start, file.date());
    for (int round = 0; round < 3 * test::scale(); ++round) {
      facts::FactSet slow = start;
      int depth = 0;
      std::string path_taken;
      for (int step = 0; step < 3; ++step) {
        const int place = static_cast<int>(random() % ground.questions().all().size());
        const auto& question = ground.questions().at(place);
        const QuestionRef ref{place, question.group < 0 ? -1 : 0};
        if (question.group >= 0 && slow.repetitions(question.group) == 0) continue;
        auto answers = question.answers;
        answers.push_back({facts::UnknownReason::NotSure, {}, {}});
        const PossibleAnswer answer = answers[random() % answers.size()];
        if (!position.isEnabled(ref)) continue;
        path_taken += question.item->linkId + " ";
        giveSlowly(slow, question, ref.repetition, answer, file.date());
        settleSlowly(slow, file.date());
        position.push(ref, answer);
        ++depth;
        ++tried;
        INFO("after " << path_taken << ", differs at " << difference(position.facts(), slow));
        compare(position, slow, file.date());
      }
      for (; depth > 0; --depth) position.pop();
      CHECK(difference(position.facts(), start).empty());
    }
    compare(position, start, file.date());
  }
  WARN(tried << " answers tried from seed " << kSeed);
  CHECK(tried > 50);
}
