// The whole library against the limits of every invented person: nothing is offered, to them or to somebody
// able and equipped for everything under the same limits, that goes beyond a cap or a ban.
#include <catch2/catch.hpp>

#include "../support/plan_breaches.h"
#include "case_file.h"

using namespace stile;

namespace {

int check(const plan::Request& request) {
  const auto& library = test::content().library;
  const auto offers = test::everyOffer(library, request);
  for (const plan::Line& line : offers) {
    const std::string breaches = test::breachesOf(library, line, request.limits);
    INFO(line.exercise->id << " form " << line.form << " " << line.side << ": " << breaches);
    CHECK(breaches.empty());
  }
  return static_cast<int>(offers.size());
}

/// The same facts with every thing and ability there, so that only limits leave anything out.
facts::FactSet ableForEverything(facts::FactSet facts) {
  const auto makeTrue = [&facts](const std::vector<std::string>& ids) {
    for (const std::string& id : ids) {
      auto& fact = facts.change(facts.dictionary().find(id)->slot);
      fact.value = expression::Value::boolean(true);
      fact.reason = facts::UnknownReason::None;
    }
  };
  for (const plan::Exercise& exercise : test::content().library.exercises) {
    makeTrue(exercise.equipment), makeTrue(exercise.needs);
    for (const auto& setup : exercise.setups) makeTrue(setup.equipment), makeTrue(setup.needs);
    for (const auto& easing : exercise.easings) makeTrue(easing.equipment);
  }
  return facts;
}

}  // namespace

TEST_CASE(
    "No invented person is offered a form beyond their limits, nor is anybody else under the same limits") {
  int offers = 0, people = 0;
  for (const auto& path : test::jsonFiles("cases")) {
    const test::CaseFile file(path);
    base::Issues issues;
    const auto screened = application::screenClient(test::content(), file.inputs(), file.date(), issues);
    if (!screened) continue;
    const screening::Screening& screening = screened.value();
    INFO(file.name());
    for (const auto* end : {&screening.floor, &screening.ifGranted}) {
      offers += check({end->limits, end->usable, screening.facts, screening.findings, screening.date});
      const auto able = ableForEverything(screening.facts);
      const auto all = limits::Rung::Vigorous;
      offers += check({end->limits, {all, all}, able, screening.findings, screening.date});
    }
    ++people;
  }
  CHECK(people > 80);
  CHECK(offers > 10000);
}
