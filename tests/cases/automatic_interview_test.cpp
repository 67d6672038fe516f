// Every invented person is interviewed: answers come from the case as they are asked for, and the
// interview must end with exactly the decision and limits of the fully answered form.
#include <catch2/catch.hpp>
#include <cstdio>
#include <map>
#include <set>
#include <string>

#include "../support/scale.h"
#include "case_answers.h"
#include "facts/enablement_closure.h"
#include "screening/screening.h"

using namespace stile;
using interview::QuestionRef;
using interview::Session;

using test::content;
using test::formNamed;

namespace {

/// Screens until a well adult's decision is settled, date of birth and sex counted though a record has them.
constexpr int kMostOfAWellAdult = 25;
constexpr std::size_t kMostOfAList = 9;  ///< more than these nobody takes in at once


/// What is true of the person of a case, by plain facts or by its responses; nullopt when it has neither.
facts::FactSet factsOf(const test::CaseFile& file, std::vector<screening::ClearanceReply>& replies) {
  base::Issues issues;
  std::vector<answers::Response> responses;
  for (const auto& input : file.inputs()) {
    const auto document = test::parsed(input.text, input.name);
    const auto root = document->root();
    if (root.isObject() && !root.find("resourceType"))
      return facts::factsFromPlain(content().dictionary, content().forms, root, file.date(), issues);
    const std::size_t count = root.isArray() ? root.size() : 1;
    for (std::size_t i = 0; i < count; ++i) {
      auto response = answers::loadResponse(root.isArray() ? root.at(i) : root, content().forms, issues);
      if (response) responses.push_back(std::move(*response));
    }
  }
  replies.clear();
  return facts::factsFromResponses(content().dictionary, content().forms, responses, file.date(), issues);
}

screening::Screening screened(const answers::Response& response, base::Date day) {
  base::Issues issues;
  auto facts = facts::factsFromResponses(content().dictionary, content().forms, {response}, day, issues);
  return screening::screen(content(), std::move(facts), {}, day);
}

/// The whole form in its order, every question that applies, answered where the case knows the answer.
answers::Response fullForm(const questionnaire::Form& form, const test::CaseAnswers& person, base::Date day, int& asked) {
  const interview::Questions questions(form, content().dictionary);
  interview::Draft draft(form, day);
  base::Issues issues;
  const auto factsNow = [&] {
    return facts::factsFromResponses(content().dictionary, content().forms, {draft.response()}, day, issues);
  };
  facts::FactSet facts = factsNow();
  const facts::Dependents dependents(content().dictionary, facts.plan());
  asked = 0;
  for (int place = 0; place < static_cast<int>(questions.all().size()); ++place) {
    const auto& question = questions.at(place);
    const int group = question.group;
    for (int repetition = group < 0 ? -1 : 0; repetition < (group < 0 ? 0 : person.repetitions(group)); ++repetition) {
      const bool isConditional = dependents.entryOf(question.fact->slot) >= 0 || group >= 0;
      if (isConditional) facts = factsNow();
      const auto isOn = [&](int entry) {
        return entry < 0 || facts::enablementOf(facts, facts.plan()->entries()[static_cast<std::size_t>(entry)], repetition) == expression::Truth::True;
      };
      if (!isOn(dependents.entryOf(question.fact->slot)) || (group >= 0 && !isOn(dependents.entryOfGroup(group)))) continue;
      ++asked;
      answers::Absence why = answers::Absence::NotAnswered;
      const auto said = person.to(question, repetition, why);
      if (said)
        draft.put(questions, {place, repetition}, *said, std::nullopt);
      else if (why != answers::Absence::NotAnswered)
        draft.put(questions, {place, repetition}, {}, why);
    }
    if (group >= 0 && draft.begun(question.fact->group) > 0 && draft.begun(question.fact->group) == person.repetitions(group))
      draft.finish(question.fact->group);
  }
  return draft.response();
}

std::string planOf(const screening::Screening& screening) {
  std::string text = std::to_string(static_cast<int>(screening.planState));
  for (const auto* plan : {screening.plan ? &*screening.plan : nullptr, screening.heldPlan ? &*screening.heldPlan : nullptr}) {
    if (!plan) continue;
    for (const auto& line : plan->lines) text += ";" + line.exercise->id + ":" + line.dose.words + ":" + line.place + ":" + line.changed;
    for (const auto& week : plan->weeks) text += ";" + week.words;
  }
  return text;
}

struct Told {
  int shown = 0, untilDecision = 0, untilPlan = 0, answered = 0, ofForm = 0;
  interview::Closing closing = interview::Closing::Open;
};

Told interviewOf(const test::CaseFile& file, const char* formName) {
  std::vector<screening::ClearanceReply> replies;
  const test::CaseAnswers person(factsOf(file, replies));
  Told told;
  const auto full = fullForm(formNamed(formName), person, file.date(), told.ofForm);
  Session session(content(), formNamed(formName), file.date());
  std::vector<std::pair<int, answers::Response>> after;
  int steps = 0;
  bool isSettled = false;
  person.drive(session, [&] {
    const auto closing = session.closing();
    const bool settled = closing == interview::Closing::Settled || closing == interview::Closing::Emergency;
    if (settled && !isSettled) told.untilDecision = session.progress().shown;
    isSettled = settled;
    after.emplace_back(session.progress().shown, session.response());
    return ++steps < 400;
  });
  CHECK(steps < 400);
  told.shown = session.progress().shown;
  told.answered = session.progress().answered;
  told.closing = session.closing();
  if (!isSettled) told.untilDecision = told.shown;
  const auto result = screened(session.response(), file.date());
  const auto reference = screened(full, file.date());
  CHECK(interview::Decision::of(result.floor.limits) == interview::Decision::of(reference.floor.limits));
  CHECK(interview::Decision::of(result.reach.limits) == interview::Decision::of(reference.reach.limits));
  CHECK(result.floor.limits == reference.floor.limits);
  CHECK(result.reach.limits == reference.reach.limits);
  CHECK(result.ifGranted.limits == reference.ifGranted.limits);
  CHECK(planOf(result) == planOf(reference));
  // From the end backwards: the last answer that changed the plan.
  for (std::size_t i = after.size(); i-- > 1 && told.untilPlan == 0;)
    if (planOf(screened(after[i - 1].second, file.date())) != planOf(result)) told.untilPlan = after[i].first;
  return told;
}

const char* wordFor(interview::Closing closing) {
  switch (closing) {
    case interview::Closing::Open: return "open";
    case interview::Closing::Settled: return "settled";
    case interview::Closing::AsFarAsItGoes: return "as far as it goes";
    case interview::Closing::Emergency: return "emergency";
  }
  return "";
}

std::size_t longestList(const questionnaire::Form& form) {
  const interview::Questions questions(form, content().dictionary);
  std::map<const questionnaire::Item*, std::size_t> lists;
  for (const auto& question : questions.all())
    if (question.isListable && question.item->parent) ++lists[question.item->parent];
  std::size_t longest = 0;
  for (const auto& [group, count] : lists) longest = std::max(longest, count);
  return longest;
}

/// People whose emergency a reading shows; readings are asked last.
const std::set<std::string> kEmergencyByReading{"after-birth-headache-pressure", "asthma-low-saturation",
                                                "low-pressure-with-fever", "pregnant-headache-pressure",
                                                "type1-vomiting-ketones"};

void interviewEverybody(const char* form) {
  std::string table;
  // Every twentieth person and those with a number of their own; all of them in the long run.
  const std::size_t step = test::scale() > 1 ? 1 : 20;
  std::size_t at = 0;
  for (const auto& path : test::jsonFiles("cases")) {
    const std::string name = path.stem().string();
    if (at++ % step != 0 && name != "chest-pressure-now" && name != "healthy-all-known") continue;
    const test::CaseFile file(path);
    INFO(form << ", " << file.name());
    const Told told = interviewOf(file, form);
    char row[200];
    std::snprintf(row, sizeof row, "%-9s %-32s decision %3d  plan %3d  end %3d screens, %3d answers of %3d questions  %s\n", form,
                  path.stem().string().c_str(), told.untilDecision, told.untilPlan, told.shown, told.answered, told.ofForm, wordFor(told.closing));
    table += row;
    // Red flags among the acute questions settle it at once; one among the follow-ups a little later, by
    // telephone after the number, the place and whether alone. What a reading shows comes with the readings.
    if (name == "chest-pressure-now") CHECK(told.untilDecision <= 5);
    const int before = form == std::string("telephone") ? 3 : 0;
    if (told.closing == interview::Closing::Emergency && !kEmergencyByReading.contains(name))
      CHECK(told.untilDecision <= before + 15);
    if (name == "healthy-all-known") CHECK(told.untilDecision <= kMostOfAWellAdult);
  }
  WARN("A list answered with one keystroke and a measurement with its repeats count one screen each.\n" << table);
}

}  // namespace

TEST_CASE("Every invented person's interview in the clinic ends as the fully answered form does") { interviewEverybody("clinic"); }

TEST_CASE("Every invented person's interview by telephone ends as the fully answered form does") { interviewEverybody("telephone"); }

TEST_CASE("A list that is answered at once stays short enough to be taken in") {
  for (const char* form : {"clinic", "telephone"}) CHECK(longestList(formNamed(form)) <= kMostOfAList);
}
